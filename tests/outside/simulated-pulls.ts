import type { SeriesReading, SeriesReadings } from '@/lib/pulltest/series-readings';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { PLAIN_PULL } from '../lib/pulltest/make-series';

/** Standard normal numbers from a seed. Source: G. E. P. Box, M. E. Muller (1958), from memory. */
export function seededNormal(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Depths of the reference's series, mm; the middle load is the depth itself. */
export const DEPTHS_MM = [6.35, 9.525, 12.7, 15.875, 19.05];

/** Scatter of one joint of a future mix, of logarithms. */
export const TOTAL_SD = 0.12;

export interface Simulated {
  readonly mixes: number;
  /** Share of the variance that lies between mixes. */
  readonly betweenShare: number;
  /** Cells that are missing. */
  readonly isMissing?: (mix: number, level: number) => boolean;
  /** The scale tops out here. */
  readonly capN?: number;
}

/** A series as `lowerModel` takes it: load in proportion to depth, mixes and joints scattering in percent. */
export function simulatedSeries(normal: () => number, options: Simulated): SeriesReadings {
  const { mixes, betweenShare, isMissing, capN = Number.POSITIVE_INFINITY } = options;
  const readings: SeriesReading[] = [];
  for (let mix = 0; mix < mixes; mix++) {
    const effect = TOTAL_SD * Math.sqrt(betweenShare) * normal();
    for (const [level, depth] of DEPTHS_MM.entries()) {
      if (isMissing?.(mix, level)) continue;
      const y = Math.log(depth) + effect + TOTAL_SD * Math.sqrt(1 - betweenShare) * normal();
      const isLowerBound = y >= Math.log(capN);
      readings.push({
        record: PLAIN_PULL,
        level,
        mix,
        x: Math.log(depth),
        y: Math.min(y, Math.log(capN)),
        isLowerBound,
      });
    }
  }
  const mixIds = Array.from({ length: mixes }, (_, mix) => String(mix));
  return { readings, depthsMm: DEPTHS_MM, mixIds, fellOut: 0 };
}
