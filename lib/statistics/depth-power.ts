import { noncentralTUpperTail } from '@/lib/statistics/noncentral-t';
import { studentUpperQuantile } from '@/lib/statistics/student-t';

/** Two levels of a series in which every mix holds one specimen of each level. */
export interface DepthComparison {
  /** Expected load at the stronger level over that at the weaker, > 1. */
  readonly ratio: number;
  /** Expected scatter within a mix as a coefficient of variation, > 0: 0.2 for 20 %. */
  readonly variation: number;
  /** Levels in the series, >= 2. */
  readonly levels: number;
  /** Share of series that may see a difference where there is none; default 0.05, one-sided. */
  readonly alpha?: number;
}

/**
 * The chance that a series with that many mixes shows the difference between the two levels. Ratio 1.5, variation 0.2,
 * 5 levels, 3 mixes: 0.7399.
 *
 * Throws RangeError for a ratio of 1 or less, variation that is not positive, fewer than 2 levels or mixes.
 * Source: noncentral t with (levels - 1)(mixes - 1) degrees of freedom and shift ln(ratio) / (sigma sqrt(2 / mixes)),
 * sigma^2 = ln(1 + variation^2).
 */
export function comparisonPower({ ratio, variation, levels, alpha = 0.05 }: DepthComparison, mixes: number): number {
  if (!(ratio > 1 && variation > 0 && Number.isInteger(levels) && levels >= 2)) {
    throw new RangeError(
      `comparisonPower needs ratio > 1, variation > 0, 2 levels, got ${ratio}, ${variation}, ${levels}`,
    );
  }
  if (!(Number.isInteger(mixes) && mixes >= 2))
    throw new RangeError(`comparisonPower needs 2 mixes or more, got ${mixes}`);
  const freedom = (levels - 1) * (mixes - 1);
  const shift = Math.log(ratio) / Math.sqrt((Math.log1p(variation * variation) * 2) / mixes);
  // Far beyond this the chance is 1 to every digit.
  return shift > 900 ? 1 : noncentralTUpperTail(studentUpperQuantile(alpha, freedom), freedom, shift);
}

/** The fewest mixes, from 2 to `most`, with which the difference shows with the chance `power`; null beyond `most`. */
export function mixesNeeded(comparison: DepthComparison, power = 0.8, most = 200): number | null {
  let enough = 2;
  while (enough <= most && comparisonPower(comparison, enough) < power) enough += 1;
  return enough <= most ? enough : null;
}
