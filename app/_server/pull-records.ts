import type { PullRecord } from '@/lib/pulltest/pull-record';
import type { PullSeries, SeriesPull } from '@/prisma/data/pull-series';

/** The readings of a series in the form that they are analysed in, in the order they were written down. */
export function pullRecords({ specimens, pulls }: Pick<PullSeries, 'specimens' | 'pulls'>): PullRecord[] {
  const byId = new Map(specimens.map((specimen) => [specimen.id, specimen]));
  return pulls.flatMap((pull): PullRecord[] => {
    const specimen = byId.get(pull.specimenId);
    if (specimen === undefined) return [];
    return [
      {
        id: pull.id,
        specimenId: specimen.id,
        mixId: specimen.mixId,
        embedmentMm: specimen.depthMm,
        condition: specimen.condition,
        pulledAt: pull.pulledAt,
        loadN: pull.loadN,
        isLowerBound: pull.isLowerBound,
        mode: pull.mode,
        leftDamage: pull.leftDamage,
        angleDeg: pull.angleDeg,
        releasedAt: pull.releasedAt,
        scale: scaleOf(pull),
        exclusion: pull.exclusion,
      },
    ];
  });
}

function scaleOf({ scale }: SeriesPull): PullRecord['scale'] {
  if (scale === null) return null;
  const { name, greatestN, checkedOn } = scale;
  // A day counts from its noon, which is right to half a day wherever the shop is.
  return { name, greatestN, checkedAt: checkedOn === null ? null : Date.parse(`${checkedOn}T12:00:00Z`) };
}
