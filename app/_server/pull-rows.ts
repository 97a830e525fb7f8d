import type { PullRow } from '@/lib/exchange/pull-row';
import type { PullSeries, SeriesSpecimen } from '@/prisma/data/pull-series';

/** A series as the rows of a file: every pull, and every specimen that was not pulled with its load left empty. */
export function pullRowsOf({ specimens, mixes, pulls }: PullSeries): PullRow[] {
  const mixNames = new Map(mixes.map(({ id, name }) => [id, name]));
  const row = ({ code, mixId, condition, depthMm }: SeriesSpecimen, line: number): PullRow => ({
    line,
    specimen: code,
    mix: mixNames.get(mixId) ?? null,
    condition,
    embedmentMm: depthMm,
    loadN: null,
    isLowerBound: false,
    mode: null,
    angleDeg: null,
    pulledAt: null,
    note: '',
  });
  return specimens.flatMap((specimen, index) => {
    const own = pulls.filter(({ specimenId }) => specimenId === specimen.id);
    const empty = row(specimen, index + 2);
    if (own.length === 0) return [empty];
    return own.map(({ loadN, isLowerBound, mode, angleDeg, pulledAt, note }) => {
      return { ...empty, loadN, isLowerBound, mode, angleDeg, pulledAt, note };
    });
  });
}
