import type { BodyInput } from '@/lib/contracts/model-forms';
import type { Instant } from '@/lib/units/instant';
import { type Db, JSON_NULL } from '@/prisma/client';
import type { Done, Refusal } from './command-result';
import { DONE } from './command-result';
import { type DraftRefusal, missingMaterials, NO_MATERIAL, takeDraft } from './draft-revision';
import { draftTx } from './draft-tx';

export type SaveBodyResult = Done | DraftRefusal | Refusal<'no-material'>;

/** Saves the body of a draft revision. Heights and widths come whole and are kept as halves. */
export function saveRevisionBody(
  database: Db,
  revisionId: string,
  input: BodyInput,
  nowAt: Instant,
): Promise<SaveBodyResult> {
  return draftTx(database, async (tx): Promise<SaveBodyResult> => {
    const draft = await takeDraft(tx, { revisionId, seenAt: input.seenAt, nowAt });
    if (!draft.ok) return draft;
    if ((await missingMaterials(tx, [input.woodMaterialId])).length > 0) {
      return { ...NO_MATERIAL, field: 'woodMaterialId' };
    }
    const profile = input.stations.map(({ x, height, width }) => ({
      xMm: x,
      halfHeightMm: height / 2,
      halfWidthMm: width / 2,
    }));
    await tx.revision.update({
      where: { id: revisionId },
      data: {
        woodMaterialId: input.woodMaterialId,
        lengthMm: input.length,
        weighedDensityKgM3: input.weighedDensity,
        moisturePercent: input.moisture,
        ballast:
          input.ballast.length === 0 && input.hasNoBallast === undefined
            ? JSON_NULL
            : input.ballast.map((item) => ({ ...item })),
        lineLabelN: input.lineLabel,
        lineType: input.lineType,
        knotShare: input.knotShare,
        dragShare: input.dragShare,
        fishMassG: input.fishMass,
        note: input.note,
        profile,
      },
    });
    return DONE;
  });
}
