import { exactDifference } from '@/lib/statistics/exact-sum';

/** A linear model fitted by least squares. */
export interface LinearFit {
  readonly ok: true;
  /** One per column. */
  readonly coefficients: readonly number[];
  /** y less fitted, unweighted, one per row. */
  readonly residuals: readonly number[];
  /** Weighted residual sum of squares. */
  readonly rss: number;
  /** Rows less columns. */
  readonly freedom: number;
  /** Upper triangle of the decomposition, row by row, of the scaled columns; for leverages and standard errors. */
  readonly triangle: readonly (readonly number[])[];
  readonly columnScale: readonly number[];
}

export type LinearResult =
  | LinearFit
  /** Fewer rows than columns, or columns of which one follows from the others. */
  | { readonly ok: false; readonly code: 'too-few-rows' | 'dependent-columns' };

/** Share of a column that must be its own for it to count as independent of those before it. */
const LEAST_OWN_SHARE = 1e-13;

/** Squares and split products of anything smaller do not overflow. */
const LARGEST = 1e140;

/**
 * Coefficients that make the (weighted) sum of squared residuals least, by Householder's decomposition of columns
 * scaled to lengths near 1.
 *
 * `columns`: one array a column, all as long as y. `weights` >= 0, one a row, default 1. Throws RangeError for unequal
 * lengths or values that are not finite and below
 * 1e140.
 * Source: G. H. Golub, Numerische Mathematik 7 (1965), from memory. Digits reached on the NIST StRD sets are in
 * tests/outside.
 */
export function leastSquares(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  weights?: readonly number[],
): LinearResult {
  const n = y.length;
  const p = columns.length;
  if (p === 0) throw new RangeError('leastSquares needs at least one column');
  if (columns.some((column) => column.length !== n) || (weights !== undefined && weights.length !== n)) {
    throw new RangeError('leastSquares needs columns and weights as long as y');
  }
  if (n < p) return { ok: false, code: 'too-few-rows' };
  const roots = weights === undefined ? null : weights.map((w) => Math.sqrt(w));
  // Powers of two, so that scaling rounds nothing.
  const columnScale = columns.map((column) => 2 ** Math.round(Math.log2(norm(column, roots))));
  if (!columnScale.every((scale) => scale < LARGEST) || !y.every((value) => Math.abs(value) < LARGEST)) {
    throw new RangeError('leastSquares needs finite values below 1e140');
  }
  if (columnScale.some((scale) => scale === 0)) return { ok: false, code: 'dependent-columns' };
  const a = columns.map((column, j) => weighted(column, roots, columnScale[j] ?? 1));
  const reflectors = triangularise(a);
  if (reflectors === null) return { ok: false, code: 'dependent-columns' };
  const triangle = Array.from({ length: p }, (_, i) => a.map((column) => column[i] ?? 0));
  const coefficients = new Array<number>(p).fill(0);
  let residuals = [...y];
  let rss = 0;
  // The second turn fits what rounding left of the first.
  for (let turn = 0; turn < 3; turn++) {
    const c = weighted(residuals, roots, 1);
    for (const [k, reflector] of reflectors.entries()) reflect(c, reflector.vector, k, reflector.half);
    if (turn === 0) for (let i = p; i < n; i++) rss += (c[i] ?? 0) ** 2;
    backSubstitution(triangle, c).forEach((value, j) => {
      coefficients[j] = (coefficients[j] ?? 0) + value / (columnScale[j] ?? 1);
    });
    residuals = y.map((value, i) =>
      exactDifference(
        value,
        columns.map((column) => column[i] ?? 0),
        coefficients,
      ),
    );
  }
  return { ok: true, coefficients, residuals, rss, freedom: n - p, triangle, columnScale };
}

/** x'(X'WX)^-1 x: the variance of the fitted value at x in units of the scatter's variance. */
export function leverage(fit: LinearFit, x: readonly number[]): number {
  const p = x.length;
  const solved: number[] = [];
  for (let j = 0; j < p; j++) {
    let value = (x[j] ?? 0) / (fit.columnScale[j] ?? 1);
    for (let i = 0; i < j; i++) value -= (fit.triangle[i]?.[j] ?? 0) * (solved[i] ?? 0);
    solved.push(value / (fit.triangle[j]?.[j] ?? 1));
  }
  return solved.reduce((sum, value) => sum + value * value, 0);
}

/** Variance of each coefficient in units of the scatter's variance. */
export function coefficientVariances(fit: LinearFit): number[] {
  return fit.coefficients.map((_, j) =>
    leverage(
      fit,
      fit.coefficients.map((__, k) => (k === j ? 1 : 0)),
    ),
  );
}

function weighted(column: readonly number[], roots: readonly number[] | null, scale: number): Float64Array {
  return Float64Array.from(column, (value, i) => (value * (roots?.[i] ?? 1)) / scale);
}

function norm(column: readonly number[], roots: readonly number[] | null): number {
  const largest = column.reduce((most, value, i) => Math.max(most, Math.abs(value * (roots?.[i] ?? 1))), 0);
  if (largest === 0 || !Number.isFinite(largest)) return largest;
  return largest * Math.sqrt(column.reduce((sum, value, i) => sum + ((value * (roots?.[i] ?? 1)) / largest) ** 2, 0));
}

interface Reflector {
  readonly vector: Float64Array;
  /** Half the squared length of the vector. */
  readonly half: number;
}

/** Turns the columns into an upper triangle in place; null where one is dependent on those before it. */
function triangularise(a: readonly Float64Array[]): Reflector[] | null {
  const reflectors: Reflector[] = [];
  for (const [k, column] of a.entries()) {
    let square = 0;
    for (let i = k; i < column.length; i++) square += (column[i] ?? 0) ** 2;
    const length = Math.sqrt(square);
    if (!(length > LEAST_OWN_SHARE)) return null;
    const head = column[k] ?? 0;
    const diagonal = head > 0 ? -length : length;
    const vector = column.slice(k);
    vector[0] = head - diagonal;
    const half = square - head * diagonal;
    for (const target of a.slice(k + 1)) reflect(target, vector, k, half);
    column[k] = diagonal;
    reflectors.push({ vector, half });
  }
  return reflectors;
}

function reflect(target: Float64Array, reflector: Float64Array, k: number, half: number): void {
  let dot = 0;
  for (let i = 0; i < reflector.length; i++) dot += (reflector[i] ?? 0) * (target[k + i] ?? 0);
  const factor = dot / half;
  for (let i = 0; i < reflector.length; i++) target[k + i] = (target[k + i] ?? 0) - factor * (reflector[i] ?? 0);
}

function backSubstitution(triangle: readonly (readonly number[])[], c: Float64Array): number[] {
  const p = triangle.length;
  const solved = new Array<number>(p).fill(0);
  for (let i = p - 1; i >= 0; i--) {
    let value = c[i] ?? 0;
    for (let j = i + 1; j < p; j++) value -= (triangle[i]?.[j] ?? 0) * (solved[j] ?? 0);
    solved[i] = value / (triangle[i]?.[i] ?? 1);
  }
  return solved;
}
