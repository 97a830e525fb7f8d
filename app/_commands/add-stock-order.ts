import type { StockOrderInput } from '@/lib/contracts/stock-forms';
import type { StockUnit } from '@/lib/stock/ledger';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { DONE, type Done, type Refusal } from './command-result';

/** Writes down what is ordered of a material, in the unit it is counted in, and when it is expected. */
export function addStockOrder(
  database: Db,
  materialId: string,
  unit: StockUnit,
  { milli, expectedOn, note }: StockOrderInput,
  nowAt: Instant,
): Promise<Done | Refusal<'no-material'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-material'>> => {
    if ((await tx.material.count({ where: { id: materialId } })) === 0) {
      return { ok: false, code: 'no-material', message: 'This material is not in Stock any more.' };
    }
    const quantity = { quantityMilli: BigInt(milli), quantityUnit: unit };
    await tx.stockOrder.create({ data: { materialId, ...quantity, expectedOn, note, createdAt: new Date(nowAt) } });
    return DONE;
  });
}
