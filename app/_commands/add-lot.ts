import type { LotInput } from '@/lib/contracts/material-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import type { Refusal } from './command-result';
import { LOT_TAKEN, lotColumns, lotRefusal } from './lot-columns';

export type AddLotResult =
  | { readonly ok: true; readonly lotId: string }
  | Refusal<'no-material' | 'code-taken' | 'part-not-whole'>;

/** Takes a container or bundle into Stock. */
export function addLot(database: Db, materialId: string, input: LotInput, nowAt: Instant): Promise<AddLotResult> {
  return writeTx(database, async (tx): Promise<AddLotResult> => {
    const refusal = await lotRefusal(tx, materialId, input);
    if (refusal !== null) return refusal;
    const { code, part } = input;
    const twin = await tx.lot.findUnique({ where: { materialId_code_part: { materialId, code, part } } });
    if (twin !== null) return LOT_TAKEN;
    const { id } = await tx.lot.create({ data: { ...lotColumns(input), materialId, createdAt: new Date(nowAt) } });
    return { ok: true, lotId: id };
  });
}
