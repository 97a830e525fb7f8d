import { fUpperQuantile } from '@/lib/statistics/f-distribution';
import { noncentralTQuantile } from '@/lib/statistics/noncentral-t';
import { normalQuantile } from '@/lib/statistics/normal-distribution';
import { studentUpperQuantile } from '@/lib/statistics/student-t';

/** A straight line through points. */
export interface LineFit {
  readonly n: number;
  readonly xMean: number;
  /** Height of the line at xMean. */
  readonly yMean: number;
  readonly slope: number;
  readonly intercept: number;
  /** Sum of squared deviations of x. */
  readonly xSquares: number;
  readonly rss: number;
  /** n - 2. */
  readonly freedom: number;
  /** Scatter about the line; null where freedom is 0. */
  readonly scatter: number | null;
  /** Share of the variation of y that the line takes; null where y does not vary. */
  readonly rSquared: number | null;
}

export type LineResult = LineFit | null;

/**
 * The straight line of least squares, from deviations about the means. Null where fewer than 2 different x are given.
 *
 * Throws RangeError for arrays of unequal length. Source: textbook formulas, centred.
 */
export function lineFit(x: readonly number[], y: readonly number[]): LineResult {
  const n = x.length;
  if (y.length !== n) throw new RangeError(`lineFit needs as many y as x, got ${y.length} and ${n}`);
  if (n < 2) return null;
  const xMean = mean(x);
  const yMean = mean(y);
  let xSquares = 0;
  let products = 0;
  let ySquares = 0;
  for (let i = 0; i < n; i++) {
    const dx = (x[i] ?? 0) - xMean;
    const dy = (y[i] ?? 0) - yMean;
    xSquares += dx * dx;
    products += dx * dy;
    ySquares += dy * dy;
  }
  const size = x.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (!(xSquares > n * (1e-12 * size) ** 2)) return null;
  const slope = products / xSquares;
  let rss = 0;
  for (let i = 0; i < n; i++) rss += ((y[i] ?? 0) - yMean - slope * ((x[i] ?? 0) - xMean)) ** 2;
  const freedom = n - 2;
  return {
    n,
    xMean,
    yMean,
    slope,
    intercept: yMean - slope * xMean,
    xSquares,
    rss,
    freedom,
    scatter: freedom > 0 ? Math.sqrt(rss / freedom) : null,
    rSquared: ySquares > 0 ? Math.max(0, 1 - rss / ySquares) : null,
  };
}

function mean(values: readonly number[]): number {
  const rough = values.reduce((sum, value) => sum + value, 0) / values.length;
  return rough + values.reduce((sum, value) => sum + (value - rough), 0) / values.length;
}

/** Height of the line at x. */
export function lineAt(fit: LineFit, x: number): number {
  return fit.yMean + fit.slope * (x - fit.xMean);
}

/** Variance of the line's height at x in units of the scatter's variance. */
export function lineLeverage(fit: LineFit, x: number): number {
  return 1 / fit.n + (x - fit.xMean) ** 2 / fit.xSquares;
}

/** Half-widths about the line at one x, at a two-sided confidence. */
export interface LineBands {
  /** For the mean at this x alone. */
  readonly mean: number;
  /** For the whole line at once. Source: Working and Hotelling (1929), sqrt(2 F). */
  readonly wholeLine: number;
  /** For one more reading at this x. */
  readonly oneMore: number;
}

/**
 * Bands of a line at x; null where its scatter is not known. They take every reading as independent: readings that
 * share a mix need `futureMixBound`.
 */
export function lineBands(fit: LineFit, x: number, confidence = 0.95): LineBands | null {
  if (fit.scatter === null) return null;
  const t = studentUpperQuantile(0.5 * (1 - confidence), fit.freedom);
  const wide = Math.sqrt(2 * fUpperQuantile(1 - confidence, 2, fit.freedom));
  const h = lineLeverage(fit, x);
  return {
    mean: t * fit.scatter * Math.sqrt(h),
    wholeLine: wide * fit.scatter * Math.sqrt(h),
    oneMore: t * fit.scatter * Math.sqrt(1 + h),
  };
}

/** The y at x that one more reading exceeds with the chance `content`; null where the scatter is not known. */
export function lowOneMore(fit: LineFit, x: number, content = 0.95): number | null {
  if (fit.scatter === null) return null;
  const t = studentUpperQuantile(1 - content, fit.freedom);
  return lineAt(fit, x) - t * fit.scatter * Math.sqrt(1 + lineLeverage(fit, x));
}

/**
 * Lower tolerance limit at x: with `confidence`, a share `content` of readings there lies above. Null where the
 * scatter is not known. Only for readings that are independent of each other: a line through several mixes needs
 * `futureMixBound`.
 * Source: k = sqrt(h) t'(confidence; n - 2, z / sqrt(h)), exact under normal scatter.
 */
export function lineToleranceLimit(fit: LineFit, x: number, content = 0.95, confidence = 0.75): number | null {
  if (fit.scatter === null) return null;
  const root = Math.sqrt(lineLeverage(fit, x));
  const k = root * noncentralTQuantile(confidence, fit.freedom, normalQuantile(content) / root);
  return lineAt(fit, x) - k * fit.scatter;
}
