import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { betaTails } from '@/lib/statistics/incomplete-beta';

/**
 * Share of the F distribution above f: the p of a ratio of mean squares. Relative error below 1e-12 in the far tail.
 *
 * `top` and `bottom` are the degrees of freedom of numerator and denominator. Throws RangeError for negative f or
 * freedoms that are not positive.
 */
export function fUpperTail(f: number, top: number, bottom: number): number {
  if (!(f >= 0 && top > 0 && bottom > 0)) {
    throw new RangeError(`fUpperTail needs f >= 0 and positive freedoms, got ${f}, ${top}, ${bottom}`);
  }
  if (f === Number.POSITIVE_INFINITY) return 0;
  const ratio = (top * f) / bottom;
  return betaTails(1 / (1 + ratio), ratio === 0 ? 0 : 1 / (1 + 1 / ratio), 0.5 * bottom, 0.5 * top).lower;
}

/**
 * The f that a share `tail` of the F distribution lies above, e.g. 0.05 for a band at 95 %. Relative error below 1e-12
 * for tails in [1e-12, 1 - 1e-9]. Throws RangeError unless 0 < tail < 1 and both freedoms are positive.
 */
export function fUpperQuantile(tail: number, top: number, bottom: number): number {
  if (!(tail > 0 && tail < 1)) throw new RangeError(`fUpperQuantile needs a share between 0 and 1, got ${tail}`);
  const goal = Math.log(tail);
  const excess = (logF: number) => Math.log(fUpperTail(Math.exp(logF), top, bottom)) - goal;
  let low = -1;
  while (excess(low) < 0) low *= 2;
  let high = 1;
  while (excess(high) > 0) high *= 2;
  return Math.exp(bracketedRoot(excess, low, high));
}
