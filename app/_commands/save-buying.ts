import type { BuyingInput } from '@/lib/contracts/stock-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { DONE, type Done, type Refusal } from './command-result';

/** Writes down how a material is bought. Its figures stay, and with them every clock. */
export function saveBuying(
  database: Db,
  materialId: string,
  input: BuyingInput,
  nowAt: Instant,
): Promise<Done | Refusal<'no-material'>> {
  return writeTx(database, async (tx): Promise<Done | Refusal<'no-material'>> => {
    const data = { ...input, updatedAt: new Date(nowAt) };
    const { count } = await tx.material.updateMany({ where: { id: materialId }, data });
    return count === 1 ? DONE : { ok: false, code: 'no-material', message: 'This material is not in Stock any more.' };
  });
}
