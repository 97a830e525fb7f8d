import { studentUpperQuantile } from '@/lib/statistics/student-t';
import { contrastVariance, type TableReading, type TwoWayFit } from '@/lib/statistics/two-way-fit';

/** A reading against what all the others say of it. */
export interface StudentisedResidual {
  /** In standard errors of the difference. */
  readonly t: number;
  /** The reading less what the others let expect. */
  readonly difference: number;
}

/**
 * How far each reading of a table lies from what the others say of it, in standard errors of that difference
 * (externally studentised residuals). Null for a reading that alone decides its own level, and for all where fewer than
 * 2 degrees of freedom or no scatter is left.
 */
export function studentisedResiduals(
  readings: readonly TableReading[],
  fit: TwoWayFit,
): (StudentisedResidual | null)[] {
  if (fit.freedom < 2 || fit.rss === 0) return readings.map(() => null);
  const known = new Map<string, number>();
  return readings.map(({ treatment, block }, i) => {
    const cell = `${treatment}:${block}`;
    const own = known.get(cell) ?? 1 - contrastVariance(fit.design, new Map([[treatment, 1]]), new Map([[block, 1]]));
    known.set(cell, own);
    if (own < 1e-9) return null;
    const e = fit.residuals[i] ?? 0;
    const others = (fit.rss - (e * e) / own) / (fit.freedom - 1);
    // Without this reading the rest would fit to the last digit: no scatter to measure it by.
    if (!(others > 1e-12 * (fit.rss / fit.freedom))) return null;
    return { t: e / Math.sqrt(others * own), difference: e / own };
  });
}

/**
 * What the largest of n studentised residuals exceeds with the chance alpha in a table without outliers. 15 readings,
 * 8 degrees of freedom of error, 0.05: 4.355.
 * Source: Student's t at alpha / (2 n) with one freedom less than the error's (Bonferroni), which simulation confirms
 * to 0.003 at 5 x 3 (4.358).
 */
export function largestResidualCritical(n: number, errorFreedom: number, alpha = 0.05): number | null {
  return errorFreedom < 2 ? null : studentUpperQuantile(alpha / (2 * n), errorFreedom - 1);
}
