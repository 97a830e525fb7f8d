import type { LaneRate } from '@/lib/cure/lane-rate';
import { rateOn } from '@/lib/cure/lane-rate';
import type { RateCurve } from '@/lib/cure/rate-curve';

/**
 * Equivalent time of a stretch over which the temperature runs in a straight line, exact to 1e-9 relative.
 *
 * Rule: Hermite quadrature with rate, slope and curvature at both ends,
 * `h (r0 + r1)/2 + h^2 (r0' - r1')/10 + h^3 (r0'' + r1'')/120`, error `-h^7 r''''''/100800`. A rate that grows by
 * `exp(u)` over a step makes the relative error about `u^6 / 100800`; steps are cut so that `u <= 0.15`, 1.2e-10.
 * One exponential a step, none where temperatures repeat, and neighbouring steps share theirs.
 * Source: two-point Hermite interpolation, e.g. Davis and Rabinowitz, Methods of Numerical Integration (from memory);
 * checked against adaptive quadrature in the tests.
 */
export const MAX_LOG_STEP = 0.15;

/**
 * Equivalent time, in the unit of `span`, of a ramp from `startC` to `endC` (degC) that lasts `span >= 0`.
 * Cut exactly where the ramp crosses the temperature below which nothing cures, and the one where curves change.
 */
export function rampAge(rate: LaneRate, startC: number, endC: number, span: number): number {
  if (startC === endC) return span * rateOn(rate, startC);
  const lowC = Math.min(startC, endC);
  const highC = Math.max(startC, endC);
  const countsFromC = Math.max(lowC, rate.stopBelowC);
  const splitC = Math.min(Math.max(rate.splitC, countsFromC), highC);
  // Shares of the span, not time per degree: the ramp may rise by next to nothing.
  const shareBelow = (splitC - countsFromC) / (highC - lowC);
  const shareAbove = (highC - splitC) / (highC - lowC);
  const below = shareBelow > 0 ? shareBelow * meanRate(rate.below, countsFromC, splitC) : 0;
  const above = shareAbove > 0 ? shareAbove * meanRate(rate.above, splitC, highC) : 0;
  return span * (below + above);
}

/** Mean of a rate over the temperatures from `lowC` to `highC`, `lowC < highC`. */
function meanRate(curve: RateCurve, lowC: number, highC: number): number {
  const steepest = Math.max(curve.logSlopeAt(lowC), curve.logSlopeAt(highC));
  const steps = Math.max(1, Math.ceil((steepest * (highC - lowC)) / MAX_LOG_STEP));
  const stepC = (highC - lowC) / steps;
  let sum = 0;
  let rate = curve.rateAt(lowC);
  let slope = rate * curve.logSlopeAt(lowC);
  let curvature = rate * curve.logCurvatureAt(lowC);
  for (let step = 1; step <= steps; step++) {
    const temperatureC = step === steps ? highC : lowC + step * stepC;
    const nextRate = curve.rateAt(temperatureC);
    const nextSlope = nextRate * curve.logSlopeAt(temperatureC);
    const nextCurvature = nextRate * curve.logCurvatureAt(temperatureC);
    sum += (rate + nextRate) / 2 + stepC * ((slope - nextSlope) / 10 + (stepC * (curvature + nextCurvature)) / 120);
    rate = nextRate;
    slope = nextSlope;
    curvature = nextCurvature;
  }
  return sum / steps;
}
