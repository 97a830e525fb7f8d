const HALF_LOG_TWO_PI = 0.9189385332046727;

/** Coefficients of 1/x, 1/x^3, ... in Stirling's series: Bernoulli numbers B(2k) / (2k (2k - 1)). */
const STIRLING = [
  1 / 12,
  -1 / 360,
  1 / 1260,
  -1 / 1680,
  1 / 1188,
  -691 / 360360,
  1 / 156,
  -3617 / 122400,
  43867 / 244188,
] as const;

/**
 * What Stirling's formula leaves out: ln gamma(x) - [(x - 1/2) ln x - x + ln(2 pi)/2], for x > 0; absolute error below
 * 1e-15 from x = 1 on. Distributions use it in place of differences of large logarithms.
 * Source: DLMF 5.11.1 (from memory) from x = 12 on; below that by ln gamma(x + 1) = ln gamma(x) + ln x.
 */
export function stirlingRest(x: number): number {
  if (!(x > 0)) throw new RangeError(`stirlingRest needs a positive number, got ${x}`);
  let rest = 0;
  let y = x;
  while (y < 12) {
    rest += (y + 0.5) * Math.log1p(1 / y) - 1;
    y += 1;
  }
  const inverse = 1 / (y * y);
  let series = 0;
  for (let i = STIRLING.length - 1; i >= 0; i--) series = series * inverse + (STIRLING[i] ?? 0);
  return rest + series / y;
}

/**
 * Natural logarithm of the gamma function of x > 0; error below 1e-14 of the larger of 1 and the result. Throws
 * RangeError for other x.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`logGamma needs a positive number, got ${x}`);
  return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingRest(x);
}

/** ln(1 + x) - x for x > -1 without the loss of digits near 0; relative error below 1e-14. */
export function logOnePlusLess(x: number): number {
  if (Math.abs(x) > 0.4) return Math.log1p(x) - x;
  const r = x / (2 + x);
  const square = r * r;
  let series = 0;
  for (let k = 33; k >= 3; k -= 2) series = series * square + 1 / k;
  return 2 * r * square * series - x * r;
}
