import type { CostRatesInput } from '@/lib/contracts/cost-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { saveShop } from '@/prisma/data/shop';
import { DONE, type Done } from './command-result';

/** Writes down what an hour costs and what is to remain of a price. No clock follows from it. */
export function saveCostRates(database: Db, input: CostRatesInput, nowAt: Instant): Promise<Done> {
  return writeTx(database, async (tx): Promise<Done> => {
    if ((await tx.shop.count()) === 0) await saveShop(tx, {}, nowAt);
    await tx.shop.updateMany({ data: { ...input, updatedAt: new Date(nowAt) } });
    return DONE;
  });
}
