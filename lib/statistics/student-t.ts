import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { incompleteBeta } from '@/lib/statistics/incomplete-beta';
import { normalQuantile } from '@/lib/statistics/normal-distribution';

/** Share of Student's distribution with `freedom` > 0 degrees of freedom below t; absolute error below 1e-13. */
export function studentProbability(t: number, freedom: number): number {
  if (!(freedom > 0)) throw new RangeError(`studentProbability needs positive degrees of freedom, got ${freedom}`);
  const tail = 0.5 * incompleteBeta(freedom / (freedom + t * t), 0.5 * freedom, 0.5);
  return t > 0 ? 1 - tail : tail;
}

/**
 * The t that a share `probability` of Student's distribution lies below. Relative error below 1e-10 for
 * probabilities in [1e-6, 1 - 1e-6].
 *
 * Throws RangeError unless 0 < probability < 1 and freedom > 0.
 */
export function studentQuantile(probability: number, freedom: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`studentQuantile needs a probability between 0 and 1, got ${probability}`);
  }
  if (probability === 0.5) return 0;
  if (probability > 0.5) return -studentQuantile(1 - probability, freedom);
  let low = normalQuantile(probability) - 1;
  while (studentProbability(low, freedom) > probability) low *= 2;
  return bracketedRoot((t) => studentProbability(t, freedom) - probability, low, 0);
}
