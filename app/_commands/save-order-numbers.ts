import type { OrderNumbersInput } from '@/lib/contracts/cost-forms';
import { type Db, writeTx } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';
import { DONE, type Done, type Refusal } from './command-result';

/** Writes down which buyer's order the pieces of a batch belong to. */
export function saveOrderNumbers(
  database: Db,
  batchId: string,
  { orderNumber, pieces }: OrderNumbersInput,
): Promise<Done | Refusal<'no-batch' | 'no-piece'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-batch' | 'no-piece'>> => {
    const batch = await tx.batch.findUnique({ where: { id: batchId }, select: { quantity: true } });
    if (batch === null) return { ok: false, code: 'no-batch', message: 'This batch is not there any more.' };
    const beyond = pieces.find((range) => range.to > batch.quantity);
    if (beyond !== undefined) {
      const message = `There is no piece ${beyond.to}: the batch has ${batch.quantity}.`;
      return { ok: false, code: 'no-piece', message, field: 'pieces' };
    }
    await tx.batch.update({ where: { id: batchId }, data: { orderNumber } });
    await tx.piece.updateMany({ where: { batchId }, data: { orderNumber: null } });
    for (const { from, to, orderNumber: own } of pieces) {
      const numbers = Array.from({ length: to - from + 1 }, (_, index) => from + index);
      for (const part of chunked(numbers)) {
        await tx.piece.updateMany({ where: { batchId, number: { in: part } }, data: { orderNumber: own } });
      }
    }
    return DONE;
  });
}
