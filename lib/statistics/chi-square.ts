import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { gammaTails } from '@/lib/statistics/incomplete-gamma';

/**
 * Share of the chi-square distribution above x >= 0; relative error below 1e-12 in the far tail. Throws RangeError for
 * negative x or freedom that is not positive.
 */
export function chiSquareUpperTail(x: number, freedom: number): number {
  return gammaTails(0.5 * x, 0.5 * freedom).upper;
}

/** Share of the chi-square distribution below x >= 0; accuracy and errors as above. */
export function chiSquareProbability(x: number, freedom: number): number {
  return gammaTails(0.5 * x, 0.5 * freedom).lower;
}

/**
 * The x that a share `probability` of the chi-square distribution lies below. Relative error below 1e-12 for
 * probabilities in [1e-9, 1 - 1e-9]. Throws RangeError unless 0 < probability < 1 and freedom > 0.
 */
export function chiSquareQuantile(probability: number, freedom: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`chiSquareQuantile needs a probability between 0 and 1, got ${probability}`);
  }
  const isLow = probability <= 0.5;
  const goal = Math.log(isLow ? probability : 1 - probability);
  const excess = (logX: number) => {
    const tails = gammaTails(0.5 * Math.exp(logX), 0.5 * freedom);
    return isLow ? Math.log(tails.lower) - goal : goal - Math.log(tails.upper);
  };
  let low = Math.log(freedom) - 1;
  while (excess(low) > 0) low -= 2;
  let high = Math.log(freedom) + 1;
  while (excess(high) < 0) high += 1;
  return Math.exp(bracketedRoot(excess, low, high));
}
