import { noncentralTQuantile } from '@/lib/statistics/noncentral-t';
import { normalQuantile } from '@/lib/statistics/normal-distribution';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';

/** Scatter of readings that came in mixes, on the scale of logarithms. */
export interface MixScatter {
  readonly mixes: number;
  /** Readings in a mix; for unequal mixes (N - sum n_i^2 / N) / (mixes - 1). */
  readonly perMix: number;
  /** Degrees of freedom of the model that ignores the mixes. */
  readonly freedom: number;
  /** Mean square between mixes. */
  readonly mixMean: number;
  /** Mean square within them; null where every mix holds a single reading, so that both are one. */
  readonly errorMean: number | null;
}

export interface Certainty {
  /** Share of specimens that shall hold more, e.g. 0.95. */
  readonly content: number;
  /** Confidence in that, e.g. 0.75. */
  readonly confidence: number;
}

/** Scatter of one specimen of a future mix: within its mix and between mixes together. */
export function futureScatter({ perMix, mixMean, errorMean }: MixScatter): number {
  if (errorMean === null || perMix <= 1) return Math.sqrt(mixMean);
  return Math.sqrt((mixMean + (perMix - 1) * errorMean) / perMix);
}

/** Mean square between mixes over that within, at least 1; null where there is none within. */
export function mixRatio({ mixMean, errorMean }: MixScatter): number | null {
  if (errorMean === null) return null;
  // Mixes that differ while nothing scatters within them count as all the scatter there is.
  if (!(errorMean > 1e-12 * mixMean)) return mixMean > 0 ? 1e12 : 1;
  return Math.max(1, mixMean / errorMean);
}

/**
 * The factor T of a lower limit fitted - T x scatter for one specimen of a FUTURE mix.
 *
 * `leverage`: variance of the fitted value in units of the scatter's variance, as if all readings were independent.
 * Between two ends: mixes alike (every reading counts, k from `leverage` and `freedom`), and mixes so different that
 * only their number counts (k of that many readings). Needs 2 mixes or more; refuse fewer than 3 before.
 * Source: the one-way random-batch factor of CMH-17-1G 8.3.5, carried over to a line or to level means; formula from
 * memory, confirmed by its published examples (63.2, 34.6, 93.2) and by simulation (tests/outside).
 */
export function interpolatedFactor(scatter: MixScatter, leverage: number, certainty: Certainty): number {
  const alike = leverageFactor(leverage, scatter.freedom, certainty);
  const ratio = mixRatio(scatter);
  if (ratio === null || scatter.perMix <= 1 + 1e-9) return alike;
  const apart = toleranceFactor(scatter.mixes, certainty.content, certainty.confidence);
  const least = 1 / Math.sqrt(scatter.perMix);
  const share = (Math.sqrt(ratio / (ratio + scatter.perMix - 1)) - least) / (1 - least);
  return alike + (apart - alike) * share;
}

/**
 * The exact factor for a fitted value of variance `leverage` and a scatter with `freedom` degrees of freedom:
 * sqrt(h) t'(confidence; freedom, z / sqrt(h)). For a mean of n readings the leverage is 1 / n.
 */
export function leverageFactor(leverage: number, freedom: number, { content, confidence }: Certainty): number {
  const root = Math.sqrt(leverage);
  return root * noncentralTQuantile(confidence, freedom, normalQuantile(content) / root);
}
