import { complementaryError, scaledComplementaryError } from '@/lib/statistics/error-function';

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution at z. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_TWO_PI;
}

/** Share of a standard normal population below z; relative error below 1e-14 in both tails down to 1e-300. */
export function normalProbability(z: number): number {
  return 0.5 * complementaryError(-z / Math.SQRT2);
}

/**
 * Natural logarithm of the share of a standard normal population above z. Made for the far tail, where the share
 * itself would round to 0: finite for every finite z.
 */
export function logNormalUpperTail(z: number): number {
  if (z < 1) return Math.log1p(-normalProbability(z));
  return Math.log(0.5 * scaledComplementaryError(z / Math.SQRT2)) - 0.5 * z * z;
}

/** Density over upper tail at z (the hazard of the standard normal), finite for every finite z. */
export function normalHazard(z: number): number {
  if (z < 1) return normalDensity(z) / (1 - normalProbability(z));
  return 2 / (ROOT_TWO_PI * scaledComplementaryError(z / Math.SQRT2));
}

/**
 * The z that a share `probability` of a standard normal population lies below; relative error below 1e-14 for
 * probabilities in [1e-300, 1 - 1e-16].
 *
 * Throws RangeError unless 0 < probability < 1.
 * Source: starting value by the rational approximation 26.2.23 of Abramowitz and Stegun (from memory), then Halley's
 * method on the probability itself, so that the accuracy is that of `normalProbability`.
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`normalQuantile needs a probability between 0 and 1, got ${probability}`);
  }
  if (probability > 0.5) return -lowerQuantile(1 - probability);
  return lowerQuantile(probability);
}

function lowerQuantile(probability: number): number {
  if (probability === 0.5) return 0;
  const t = Math.sqrt(-2 * Math.log(probability));
  let z = (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let step = 0; step < 4; step++) {
    const relativeError = (normalProbability(z) - probability) / normalDensity(z);
    z -= relativeError / (1 + 0.5 * z * relativeError);
  }
  return z;
}
