import type { StoredCalibration } from '@/lib/contracts/pull-plan';
import { resolveWood } from '@/lib/materials/resolved-wood';
import { type CalibrationKey, strengthReadings } from '@/lib/pulltest/calibration';
import { type PulledBond, pulledBond } from '@/lib/spec/bond-book';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import type { DbReader } from '@/prisma/client';
import { listAcceptedCalibrations } from '@/prisma/data/calibrations';
import type { StrengthShelf } from '@/prisma/data/strength-shelf';

/** Test boards are pulled in the room. Chosen. */
const ROOM_C = 20;

/** A calibration as far as the strength of bonds rests on it. */
export interface CalibrationBasis {
  readonly key: CalibrationKey;
  readonly body: Pick<StoredCalibration, 'pulls' | 'adhesiveLotCodes'>;
}

/**
 * What a calibration says of its bond; null where the figures of its wood or glue are missing, or no pull counts.
 * Specimens are taken as of the wood's own figures with ample wood all round, as in a test board.
 */
export function calibratedBond(
  { key, body }: CalibrationBasis,
  shelf: StrengthShelf,
  settings: StrengthSettings,
): PulledBond | null {
  const wood = shelf.get(key.woodId)?.figures;
  const adhesive = shelf.get(key.adhesiveId)?.figures;
  if (wood?.kind !== 'wood' || adhesive?.kind !== 'adhesive') return null;
  const resolved = resolveWood(wood.sheet, { weighedDensityKgM3: null, moisturePercent: null });
  if (!resolved.ok) return null;
  const specimens = new Map(body.pulls.map((pull) => [pull.pullId, pull]));
  const counted = body.pulls.filter(({ excludedReason }) => excludedReason === null);
  const pulls = strengthReadings(body, (pullId) => {
    const made = specimens.get(pullId);
    if (made === undefined) return null;
    const { wireDiameterMm, bitDiameterMm, embedmentMm } = made;
    return {
      wood: resolved.wood,
      wireDiameterMm,
      bitDiameterMm,
      embedmentMm,
      voidMm: 0,
      cover: null,
      temperatureC: ROOM_C,
    };
  });
  return pulledBond(
    {
      woodMaterialId: key.woodId,
      adhesiveMaterialId: key.adhesiveId,
      wireMaterialId: key.wireId,
      bondClass: adhesive.sheet.bondClass,
      pulls,
      latestPulledAt: Math.max(0, ...counted.map(({ pulledAt }) => pulledAt)),
      adhesiveLotCodes: body.adhesiveLotCodes,
    },
    settings,
  );
}

/** The bonds that the shop has pulled and accepted. */
export async function listPulledBonds(
  reader: DbReader,
  shelf: StrengthShelf,
  settings: StrengthSettings,
): Promise<PulledBond[]> {
  const calibrations = await listAcceptedCalibrations(reader);
  return calibrations.flatMap((calibration) => calibratedBond(calibration, shelf, settings) ?? []);
}
