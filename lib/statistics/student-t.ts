import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { betaTails } from '@/lib/statistics/incomplete-beta';
import { normalQuantile } from '@/lib/statistics/normal-distribution';

/**
 * Share of Student's distribution with `freedom` > 0 degrees of freedom above t: the one-sided p of a t of that size.
 * Relative error below 1e-12 in the far tail. Throws RangeError for freedom that is not positive.
 */
export function studentUpperTail(t: number, freedom: number): number {
  if (!(freedom > 0)) throw new RangeError(`studentUpperTail needs positive degrees of freedom, got ${freedom}`);
  if (Number.isNaN(t)) throw new RangeError('studentUpperTail needs a number, got NaN');
  if (t < 0) return 1 - studentUpperTail(-t, freedom);
  // Written with ratios, so that the square of a huge t overflows late; beyond 1e150 the tail counts as empty.
  const ratio = t / Math.sqrt(freedom);
  if (ratio > 1e150) return 0;
  const sum = 1 + ratio * ratio;
  return 0.5 * betaTails(1 / sum, (ratio * ratio) / sum, 0.5 * freedom, 0.5).lower;
}

/** Share of Student's distribution below t. Relative error below 1e-12 in the far tail; throws as above. */
export function studentProbability(t: number, freedom: number): number {
  return studentUpperTail(-t, freedom);
}

/** The two-sided p of a t of that size: the share further from 0. */
export function studentTwoSided(t: number, freedom: number): number {
  return 2 * studentUpperTail(Math.abs(t), freedom);
}

/**
 * The t that a share `tail` of Student's distribution lies above. Relative error below 1e-13 for tails from 1e-100 to
 * 1/2.
 *
 * Throws RangeError unless 0 < tail < 1 and freedom > 0.
 */
export function studentUpperQuantile(tail: number, freedom: number): number {
  if (!(tail > 0 && tail < 1)) throw new RangeError(`studentUpperQuantile needs a share between 0 and 1, got ${tail}`);
  if (tail === 0.5) return 0;
  if (tail > 0.5) return -studentUpperQuantile(1 - tail, freedom);
  const goal = Math.log(tail);
  const excess = (t: number) => Math.log(studentUpperTail(t, freedom)) - goal;
  // Student's tails are heavier than the normal ones, so the normal quantile is never beyond.
  const low = 0.999 * -normalQuantile(tail);
  let high = 2 * low;
  while (excess(high) > 0) high *= 2;
  return bracketedRoot(excess, low, high);
}

/** The t that a share `probability` of Student's distribution lies below; accuracy and errors as above. */
export function studentQuantile(probability: number, freedom: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`studentQuantile needs a probability between 0 and 1, got ${probability}`);
  }
  return probability <= 0.5
    ? -studentUpperQuantile(probability, freedom)
    : studentUpperQuantile(1 - probability, freedom);
}
