/**
 * The x between `low` and `high` at which f is zero, by Brent's method.
 *
 * f must be continuous and have different signs at the two ends, or be zero at one: otherwise RangeError, never a
 * number that only looks like a root. `tolerance` is the half-width of the final bracket (default: as fine as doubles
 * allow at that size). Throws RangeError where f is not a finite number.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4 (from memory).
 */
export function bracketedRoot(f: (x: number) => number, low: number, high: number, tolerance = 0): number {
  const value = (x: number): number => {
    const y = f(x);
    if (!Number.isFinite(y)) throw new RangeError(`bracketedRoot needs a finite function, got ${y} at ${x}`);
    return y;
  };
  let a = low;
  let fa = value(a);
  let b = high;
  let fb = value(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) {
    throw new RangeError(`bracketedRoot needs a change of sign between ${low} and ${high}, got ${fa} and ${fb}`);
  }
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (let turn = 0; turn < 200; turn++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      before = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const middle = 0.5 * (c - b);
    if (Math.abs(middle) <= least || fb === 0) return b;
    const jump = Math.abs(before) >= least && Math.abs(fa) > Math.abs(fb) ? interpolated(a, b, c, fa, fb, fc) : null;
    if (
      jump !== null &&
      2 * jump.top < Math.min(3 * middle * jump.bottom - Math.abs(least * jump.bottom), Math.abs(before * jump.bottom))
    ) {
      before = step;
      step = jump.top / jump.bottom;
    } else {
      step = middle;
      before = middle;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > least ? step : Math.sign(middle) * least;
    fb = value(b);
  }
  return b;
}

/** Secant or inverse quadratic step as a fraction with a positive numerator. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number) {
  const s = fb / fa;
  let top: number;
  let bottom: number;
  if (a === c) {
    top = (c - b) * s;
    bottom = 1 - s;
  } else {
    const q = fa / fc;
    const r = fb / fc;
    top = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
    bottom = (q - 1) * (r - 1) * (s - 1);
  }
  return top > 0 ? { top, bottom: -bottom } : { top: -top, bottom };
}
