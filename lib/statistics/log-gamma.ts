const COEFFICIENTS = [
  57.15623566586292, -59.59796035547549, 14.136097974741746, -0.4919138160976202, 3.399464998481189e-5,
  4.652362892704858e-5, -9.837447530487956e-5, 0.0001580887032249125, -0.00021026444172410488, 0.00021743961811521265,
  -0.0001643181065367639, 8.441822398385275e-5, -2.6190838401581408e-5, 3.6899182659531625e-6,
] as const;

/**
 * Natural logarithm of the gamma function of x > 0; relative error about 1e-14. Throws RangeError for other x.
 * Source: Lanczos's series with g = 671/128 (from memory, checked against factorials and another library).
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`logGamma needs a positive number, got ${x}`);
  const shifted = x + 5.2421875;
  let series = 0.9999999999999971;
  COEFFICIENTS.forEach((coefficient, i) => {
    series += coefficient / (x + 1 + i);
  });
  return (x + 0.5) * Math.log(shifted) - shifted + Math.log((2.5066282746310007 * series) / x);
}
