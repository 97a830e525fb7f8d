import { type FTest, fTest } from '@/lib/statistics/one-way-anova';

/** What a model and the pure error beside it leave unexplained, each with its degrees of freedom. */
export interface Unexplained {
  readonly squares: number;
  readonly freedom: number;
}

/**
 * Whether a model misses more than the scatter between like readings explains. Null where it cannot be asked: no
 * freedom between model and pure error, or none in the pure error, or no scatter in it.
 *
 * For plain repeats `pure` is the scatter within equal x; where every mix holds one reading of each x, it is what the
 * additive model of x and mix leaves, and `model` must contain the mix too.
 * Source: NIST/SEMATECH e-Handbook 4.6.1.5 for plain repeats.
 */
export function lackOfFit(model: Unexplained, pure: Unexplained): FTest | null {
  return fTest(Math.max(0, model.squares - pure.squares), model.freedom - pure.freedom, pure.squares, pure.freedom);
}
