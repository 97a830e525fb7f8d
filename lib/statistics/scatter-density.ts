import { logOnePlusLess, stirlingRest } from '@/lib/statistics/log-gamma';

/** How s / sigma, a sample's standard deviation over the true one, is spread for a number of degrees of freedom. */
export interface ScatterDensity {
  /** Density at s > 0. */
  readonly at: (s: number) => number;
  /** All but 1e-16 of it lies between these. */
  readonly low: number;
  readonly high: number;
  /** A width over which it is smooth: about two of its own standard deviations. */
  readonly width: number;
}

/**
 * Density of sqrt(chi-square / freedom). Throws RangeError unless freedom >= 1.
 * Source: the gamma density of s^2, written as a deviance so that large freedoms lose no digits.
 */
export function scatterDensity(freedom: number): ScatterDensity {
  if (!(freedom >= 1)) throw new RangeError(`scatterDensity needs freedom of at least 1, got ${freedom}`);
  const shape = 0.5 * freedom;
  const front = 2 * Math.sqrt(shape / (2 * Math.PI)) * Math.exp(-stirlingRest(shape));
  const sd = 1 / Math.sqrt(2 * freedom);
  const at = (s: number): number => {
    const off = (s - 1) * (s + 1);
    const deviance = off < -0.4 || off > 0.4 ? 2 * Math.log(s) - off : logOnePlusLess(off);
    return (front / s) * Math.exp(shape * deviance);
  };
  return { at, low: Math.max(0, 1 - 11 * sd), high: 1 + 12 * sd, width: 2 * sd };
}
