/** What a few readings say of themselves. */
export interface Summary {
  readonly n: number;
  readonly mean: number;
  /** Sample standard deviation (divisor n - 1); null for one reading, which shows no scatter. */
  readonly sd: number | null;
  readonly least: number;
  readonly greatest: number;
}

/**
 * Number, mean, standard deviation, least and greatest of a sample; null where there is none.
 *
 * Two passes, each corrected by the rounding left in the sum of the deviations, so that readings that agree in their
 * leading digits keep the others. Throws RangeError for a value that is not finite.
 * Source: T. F. Chan, G. H. Golub, R. J. LeVeque, Algorithms for computing the sample variance (1983), from memory.
 * {3.1, 2.7, 3.6}: mean 3.133333, sd 0.450925.
 */
export function summary(values: readonly number[]): Summary | null {
  const n = values.length;
  if (n === 0) return null;
  for (const value of values) {
    if (!Number.isFinite(value)) throw new RangeError(`summary needs finite values, got ${value}`);
  }
  const mean = centre(values);
  const least = values.reduce((a, b) => Math.min(a, b));
  const greatest = values.reduce((a, b) => Math.max(a, b));
  if (n === 1) return { n, mean, sd: null, least, greatest };
  return { n, mean, sd: Math.sqrt(sumOfSquares(values) / (n - 1)), least, greatest };
}

/** Mean of at least one value, with the mean of the deviations added; divided first, so that huge values do not overflow. */
export function centre(values: readonly number[]): number {
  const n = values.length;
  let rough = 0;
  for (const value of values) rough += value / n;
  let rest = 0;
  for (const value of values) rest += (value - rough) / n;
  return rough + rest;
}

/** Sum of squared deviations from the mean. */
export function sumOfSquares(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const mean = centre(values);
  let sum = 0;
  let squares = 0;
  for (const value of values) {
    const d = value - mean;
    sum += d;
    squares += d * d;
  }
  return Math.max(0, squares - (sum * sum) / values.length);
}
