/** Lower triangle L of a symmetric positive definite matrix A = L L', row by row in one array. */
export interface Cholesky {
  readonly size: number;
  readonly lower: Float64Array;
}

/** Share of a diagonal element that must be left for the matrix to count as of full rank. */
const LEAST_LEFT = 1e-11;

/**
 * Cholesky's decomposition of `size` x `size` numbers, row by row; null where the matrix is not clearly positive
 * definite.
 */
export function cholesky(matrix: Float64Array, size: number): Cholesky | null {
  const lower = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let value = matrix[i * size + j] ?? 0;
      for (let k = 0; k < j; k++) value -= (lower[i * size + k] ?? 0) * (lower[j * size + k] ?? 0);
      if (i === j) {
        if (!(value > LEAST_LEFT * (matrix[i * size + i] ?? 0))) return null;
        lower[i * size + i] = Math.sqrt(value);
      } else {
        lower[i * size + j] = value / (lower[j * size + j] ?? 1);
      }
    }
  }
  return { size, lower };
}

/** L^-1 b: its squared length is b' A^-1 b. */
export function forwardSolved({ size, lower }: Cholesky, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let value = b[i] ?? 0;
    for (let k = 0; k < i; k++) value -= (lower[i * size + k] ?? 0) * (x[k] ?? 0);
    x[i] = value / (lower[i * size + i] ?? 1);
  }
  return x;
}

/** A^-1 b. */
export function choleskySolved(factor: Cholesky, b: ArrayLike<number>): Float64Array {
  const { size, lower } = factor;
  const x = forwardSolved(factor, b);
  for (let i = size - 1; i >= 0; i--) {
    let value = x[i] ?? 0;
    for (let k = i + 1; k < size; k++) value -= (lower[k * size + i] ?? 0) * (x[k] ?? 0);
    x[i] = value / (lower[i * size + i] ?? 1);
  }
  return x;
}
