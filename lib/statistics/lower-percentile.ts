import { centre, summary } from '@/lib/statistics/summary';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';

/** Which scale readings scatter evenly on. */
export type ScatterForm = 'lognormal' | 'normal';

export interface LowerPercentileOptions {
  readonly form?: ScatterForm;
  readonly content?: number;
  readonly confidence?: number;
  /** Least scatter that is believed: of logarithms, or as a share of the mean. 0 for none. */
  readonly leastScatter?: number;
}

export type LowerPercentile =
  | {
      readonly ok: true;
      /** With the confidence, the share `content` holds more than this. May be negative for the normal form. */
      readonly load: number;
      readonly k: number;
      /** The scatter used: of logarithms, or in units of load. */
      readonly scatter: number;
      /** True where the readings scatter less than is believed. */
      readonly isFloored: boolean;
    }
  | { readonly ok: false; readonly code: 'too-few' | 'not-positive' };

/** Least scatter of EN 14358:2016, 3.2.2: 0.05 (seen in a transcription of the clause). */
export const LEAST_SCATTER = 0.05;

/**
 * Lower percentile of a sample of loads at a confidence: by default the 5th at 75 %, lognormal, with the least scatter
 * of EN 14358. ASTM D2915 uses the same factor without a least scatter (`leastScatter: 0`).
 *
 * Refuses fewer than 2 loads and loads of 0 or less. {3.1, 2.7, 3.6}: 1.977 lognormal, 1.712 normal.
 * Source: EN 14358:2016, 3.2.2, m - k s on logarithms or on loads; k exact instead of its printed table.
 */
export function lowerPercentile(loads: readonly number[], options: LowerPercentileOptions = {}): LowerPercentile {
  const { form = 'lognormal', content = 0.95, confidence = 0.75, leastScatter = LEAST_SCATTER } = options;
  if (loads.length < 2) return { ok: false, code: 'too-few' };
  if (!loads.every((load) => load > 0)) return { ok: false, code: 'not-positive' };
  const values = form === 'lognormal' ? loads.map(Math.log) : loads;
  const sd = summary(values)?.sd ?? 0;
  const floor = form === 'lognormal' ? leastScatter : leastScatter * centre(loads);
  const scatter = Math.max(sd, floor);
  const k = toleranceFactor(loads.length, content, confidence);
  const bound = centre(values) - k * scatter;
  return { ok: true, load: form === 'lognormal' ? Math.exp(bound) : bound, k, scatter, isFloored: sd < floor };
}

/**
 * The factor by the shortcut formula (10) of EN 14358:2016 for the 5th percentile at 75 %, to show beside the exact
 * one: up to 1 % too small for n from 8 to 30.
 */
export function shortcutFactor(n: number): number {
  return (6.5 * n + 6) / (3.7 * n - 3);
}
