import type { RuleFigures } from '@/lib/spec/rule-figures';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { saveShop } from '@/prisma/data/shop';

/** Saves what the shop asks of a spec. Models are judged by it from now on; batches keep what they took along. */
export function saveRuleFigures(database: Db, ruleFigures: RuleFigures, nowAt: Instant): Promise<void> {
  return writeTx(database, (tx) => saveShop(tx, { ruleFigures }, nowAt));
}
