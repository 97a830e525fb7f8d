import type { StrengthFormInput } from '@/lib/contracts/strength-form';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { findMaterial } from '@/prisma/data/materials';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export type SaveStrengthResult = Done | Refusal<'no-material' | 'other-kind' | 'changed-meanwhile'>;

/** Saves the figures of a material's strength. Findings that batches took stay as they were; models are judged anew. */
export function saveStrength(
  database: Db,
  materialId: string,
  { figures, seenVersion }: StrengthFormInput,
  nowAt: Instant,
): Promise<SaveStrengthResult> {
  return writeTx(database, async (tx): Promise<SaveStrengthResult> => {
    const material = await findMaterial(tx, materialId);
    if (material === null) {
      return { ok: false, code: 'no-material', message: 'This material is not in Stock any more.' };
    }
    if (material.kind !== figures.kind) {
      return { ok: false, code: 'other-kind', message: 'These are figures of another kind of material.' };
    }
    if (material.version !== seenVersion) {
      const message =
        'Somebody else just changed this material. What you typed is still here: look at it in another window, then reload and save again.';
      return { ok: false, code: 'changed-meanwhile', message };
    }
    // Only plain JSON values are in a sheet. An adhesive keeps its clocks' figures in the other column.
    const sheet = JSON.parse(JSON.stringify(figures.sheet));
    await tx.material.update({
      where: { id: materialId },
      data: {
        ...(figures.kind === 'adhesive' ? { bondFigures: sheet } : { figures: sheet }),
        version: { increment: 1 },
        updatedAt: new Date(nowAt),
      },
    });
    return DONE;
  });
}
