import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { findMaterial, hasSheet } from '@/prisma/data/materials';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';

export interface SheetToSave {
  readonly sheet: AdhesiveSheet;
  /** What the sheet calls itself: revision or number. */
  readonly sheetRevision: string;
  /** YYYY-MM-DD. */
  readonly sheetOn: string | null;
  /** Version of the material as the form showed it. */
  readonly seenVersion: number;
}

export type SaveSheetResult = Done | Refusal<'no-material' | 'no-sheet-kind' | 'changed-meanwhile'>;

/** Saves the data sheet of an adhesive or a coating. Mixes carry their own copy, so clocks that run do not move. */
export function saveSheet(
  database: Db,
  materialId: string,
  input: SheetToSave,
  nowAt: Instant,
): Promise<SaveSheetResult> {
  return writeTx(database, async (tx): Promise<SaveSheetResult> => {
    const material = await findMaterial(tx, materialId);
    if (material === null) {
      return { ok: false, code: 'no-material', message: 'This material is not in Stock any more.' };
    }
    if (!hasSheet(material.kind)) {
      return { ok: false, code: 'no-sheet-kind', message: 'Only adhesives and coatings have a data sheet of cure.' };
    }
    if (material.version !== input.seenVersion) {
      const message =
        'Somebody else just changed this material. What you typed is still here: look at it in another window, then reload and save again.';
      return { ok: false, code: 'changed-meanwhile', message };
    }
    await tx.material.update({
      where: { id: materialId },
      data: {
        // Only plain JSON values are in a sheet.
        figures: JSON.parse(JSON.stringify(input.sheet)),
        sheetRevision: input.sheetRevision,
        sheetOn: input.sheetOn,
        version: { increment: 1 },
        updatedAt: new Date(nowAt),
      },
    });
    return DONE;
  });
}
