import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { writeTx } from '@/prisma/client';
import { saveShop } from '@/prisma/data/shop';
import { insertMaterials } from './load-starting-materials';
import { STARTING_MATERIALS } from './starting-materials';

/**
 * Gives a new shop its settings and the starting materials. A shop that has settings already is left as it is.
 * True when it was new.
 */
export function prepareShop(database: Db, nowAt: Instant): Promise<boolean> {
  return writeTx(database, async (tx) => {
    if ((await tx.shop.count()) > 0) return false;
    await saveShop(tx, {}, nowAt);
    await insertMaterials(tx, STARTING_MATERIALS, nowAt);
    return true;
  });
}
