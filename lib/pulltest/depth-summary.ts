import type { SeriesReadings } from '@/lib/pulltest/series-readings';
import { isotonicRegression } from '@/lib/statistics/isotonic-regression';
import { centre } from '@/lib/statistics/summary';

/** What was read at one depth. */
export interface DepthSummary {
  readonly depthMm: number;
  /** Pulls that failed in the joint, and pulls that only say "at least". */
  readonly exactPulls: number;
  readonly boundPulls: number;
  /** Geometric mean of the exact ones; null where there is none. */
  readonly middleN: number | null;
  readonly leastN: number;
  /** The middle, pooled with its neighbours where a deeper one read weaker; null as above. */
  readonly risingN: number | null;
}

export interface DepthSummaries {
  readonly depths: readonly DepthSummary[];
  /** Depths, mm, whose middle lies below that of a shallower one. */
  readonly weakerThanShallowerMm: readonly number[];
}

/** The readings depth by depth, and where a longer embedment tested weaker. For display: bounds are never smoothed so. */
export function depthSummaries({ readings, depthsMm }: SeriesReadings): DepthSummaries {
  const rows = depthsMm.map((depthMm, level) => {
    const own = readings.filter((reading) => reading.level === level);
    const exact = own.filter(({ isLowerBound }) => !isLowerBound).map(({ y }) => y);
    return { depthMm, own, exact, middle: exact.length > 0 ? centre(exact) : null };
  });
  const judged = rows.flatMap(({ middle, exact }) => (middle === null ? [] : [{ middle, weight: exact.length }]));
  const rising = isotonicRegression(
    judged.map(({ middle }) => middle),
    judged.map(({ weight }) => weight),
  );
  const weakerThanShallowerMm: number[] = [];
  let highest = Number.NEGATIVE_INFINITY;
  let next = 0;
  const depths = rows.map(({ depthMm, own, exact, middle }): DepthSummary => {
    if (middle !== null && middle < highest) weakerThanShallowerMm.push(depthMm);
    if (middle !== null) highest = Math.max(highest, middle);
    const pooled = middle === null ? null : (rising[next++] ?? middle);
    return {
      depthMm,
      exactPulls: exact.length,
      boundPulls: own.length - exact.length,
      middleN: middle === null ? null : Math.exp(middle),
      leastN: Math.exp(Math.min(...own.map(({ y }) => y))),
      risingN: pooled === null ? null : Math.exp(pooled),
    };
  });
  return { depths, weakerThanShallowerMm };
}
