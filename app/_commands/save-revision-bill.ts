import type { BillInput } from '@/lib/contracts/bill-forms';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { type DraftRefusal, missingMaterials, NO_MATERIAL, takeDraft } from './draft-revision';
import { draftTx } from './draft-tx';

export type SaveBillResult = Done | DraftRefusal | Refusal<'no-material'>;

/** Replaces the bill of a draft revision: what goes into one piece. */
export function saveRevisionBill(
  database: Db,
  revisionId: string,
  input: BillInput,
  nowAt: Instant,
): Promise<SaveBillResult> {
  return draftTx(database, async (tx): Promise<SaveBillResult> => {
    const draft = await takeDraft(tx, { revisionId, seenAt: input.seenAt, nowAt });
    if (!draft.ok) return draft;
    if (
      (
        await missingMaterials(
          tx,
          input.lines.map((line) => line.materialId),
        )
      ).length > 0
    )
      return NO_MATERIAL;
    await tx.billLine.deleteMany({ where: { revisionId } });
    await tx.billLine.createMany({
      data: input.lines.map((line, index) => ({
        revisionId,
        position: index + 1,
        materialId: line.materialId,
        quantity: line.quantity,
        quantityUnit: line.unit,
        note: line.note,
      })),
    });
    return DONE;
  });
}
