import { type FTest, fTest } from '@/lib/statistics/one-way-anova';
import { type TableReading, type TwoWayFit, twoWayFit } from '@/lib/statistics/two-way-fit';

export interface NonAdditivity {
  /** What the product of the effects explains of the residuals. */
  readonly squares: number;
  readonly test: FTest;
}

/**
 * Tukey's one degree of freedom for non-additivity: whether blocks differ in percent rather than in amount. Clear on
 * the loads and gone on their logarithms is what makes logarithms the right scale.
 *
 * Null where it cannot be tested: either factor without effect, fewer than 2 degrees of freedom of error, or no
 * scatter left beside it. With missing cells the product is fitted after the additive model.
 * Source: J. W. Tukey, Biometrics 5 (1949), from memory; examples with sources in tests/outside.
 */
export function nonAdditivity(readings: readonly TableReading[], fit: TwoWayFit): NonAdditivity | null {
  const products = readings.map(({ treatment, block }) => ({
    treatment,
    block,
    y: (fit.treatmentEffects[treatment] ?? 0) * (fit.blockEffects[block] ?? 0),
  }));
  const own = twoWayFit(products);
  if (!own.ok || own.rss === 0) return null;
  const cross = own.residuals.reduce((sum, z, i) => sum + z * (fit.residuals[i] ?? 0), 0);
  const squares = (cross * cross) / own.rss;
  const test = fTest(squares, 1, fit.rss - squares, fit.freedom - 1);
  return test === null ? null : { squares, test };
}
