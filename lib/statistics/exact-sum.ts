const SPLITTER = 134217729; // 2^27 + 1

/**
 * start - a1 b1 - a2 b2 - ..., computed as with twice the digits and rounded once at the end.
 *
 * Made for residuals, where large terms cancel. Factors must stay below 1e290, their products too.
 * Source: T. Ogita, S. Rump, S. Oishi, Accurate sum and dot product (2005), algorithms 3.3 and 5.3, from memory.
 */
export function exactDifference(start: number, a: readonly number[], b: readonly number[]): number {
  let sum = start;
  let rest = 0;
  for (let i = 0; i < a.length; i++) {
    const x = -(a[i] ?? 0);
    const y = b[i] ?? 0;
    const product = x * y;
    const xHigh = SPLITTER * x - (SPLITTER * x - x);
    const yHigh = SPLITTER * y - (SPLITTER * y - y);
    const xLow = x - xHigh;
    const yLow = y - yHigh;
    const productRest = xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
    const next = sum + product;
    const bulk = next - sum;
    rest += productRest + (sum - (next - bulk) + (product - bulk));
    sum = next;
  }
  return sum + rest;
}
