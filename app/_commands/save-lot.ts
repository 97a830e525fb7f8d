import type { LotInput } from '@/lib/contracts/material-forms';
import { toMilli } from '@/lib/stock/ledger';
import { type Db, writeTx } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { LOT_TAKEN, lotColumns, lotRefusal } from './lot-columns';

export type SaveLotResult = Done | Refusal<'no-lot' | 'no-material' | 'code-taken' | 'part-not-whole' | 'has-moved'>;

const HAS_MOVED: Refusal<'has-moved'> = {
  ok: false,
  code: 'has-moved',
  message: 'Stock of this lot has moved since it came, so this stays as it was. Count the lot to put it right.',
  field: 'quantity',
};

/** Changes what is written of a lot. Mixes go on naming it. */
export function saveLot(database: Db, lotId: string, input: LotInput): Promise<SaveLotResult> {
  return writeTx(database, async (tx): Promise<SaveLotResult> => {
    const lot = await findLot(tx, lotId);
    if (lot === null) return { ok: false, code: 'no-lot', message: 'This lot is not in Stock any more.' };
    const { materialId } = lot;
    const refusal = await lotRefusal(tx, materialId, input);
    if (refusal !== null) return refusal;
    const isSameReceipt = toMilli(input.quantity) === toMilli(lot.quantity) && input.unit === lot.quantityUnit;
    if (lot.movementCount > 0 && !isSameReceipt) return HAS_MOVED;
    const { code, part } = input;
    const twin = await tx.lot.findUnique({ where: { materialId_code_part: { materialId, code, part } } });
    if (twin !== null && twin.id !== lotId) return LOT_TAKEN;
    await tx.lot.update({ where: { id: lotId }, data: lotColumns(input) });
    return DONE;
  });
}
