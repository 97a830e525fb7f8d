import { cholesky, choleskySolved } from '@/lib/statistics/cholesky';
import { logNormalUpperTail, normalHazard } from '@/lib/statistics/normal-distribution';

/** A reading, or a bound below it, about to be explained by z = precision y - group - slopes x. */
export interface ClimbPoint {
  readonly y: number;
  readonly isLowerBound: boolean;
  readonly group: number;
  readonly covariates: readonly number[];
}

/** Groups and slopes in units of the scatter, and the precision, 1 over the scatter. */
export interface ClimbState {
  readonly groups: readonly number[];
  readonly slopes: readonly number[];
  readonly precision: number;
}

/** How a standard deviate z scatters: its log-density, its log upper tail, and their first and second derivatives. */
export interface ScatterLaw {
  readonly exact: (z: number) => readonly [value: number, slope: number, curvature: number];
  readonly bound: (z: number) => readonly [value: number, slope: number, curvature: number];
}

const HALF_LOG_TWO_PI = 0.9189385332046727;

export const NORMAL_LAW: ScatterLaw = {
  exact: (z) => [-0.5 * z * z - HALF_LOG_TWO_PI, -z, -1],
  bound: (z) => {
    const hazard = normalHazard(z);
    return [logNormalUpperTail(z), -hazard, -hazard * (hazard - z)];
  },
};

/** Smallest extreme value: the logarithm of a Weibull load. */
export const EXTREME_LAW: ScatterLaw = {
  exact: (z) => [z - Math.exp(z), 1 - Math.exp(z), -Math.exp(z)],
  bound: (z) => [-Math.exp(z), -Math.exp(z), -Math.exp(z)],
};

/**
 * Newton's method with halved steps to the summit of a likelihood that is concave in this state; null where it is not
 * reached. The groups are eliminated from each step, so that hundreds of them cost no more than their readings.
 */
export function censoredClimb(
  points: readonly ClimbPoint[],
  law: ScatterLaw,
  start: ClimbState,
): { readonly state: ClimbState; readonly logLikelihood: number } | null {
  let state = start;
  let height = logLikelihood(points, law, state);
  for (let turn = 0; turn < 200; turn++) {
    const step = newtonStep(points, law, state);
    if (step === null) return null;
    if (step.promise < 1e-12 * points.length) {
      // From here one more step squares the error, whether the likelihood can show it or not.
      const last = moved(state, step.change, 1);
      return { state: last, logLikelihood: logLikelihood(points, law, last) };
    }
    let share = 1;
    let next = moved(state, step.change, share);
    let nextHeight = logLikelihood(points, law, next);
    while (!(nextHeight >= height - 1e-13 * Math.abs(height)) && share > 1e-12) {
      share *= 0.5;
      next = moved(state, step.change, share);
      nextHeight = logLikelihood(points, law, next);
    }
    if (!Number.isFinite(nextHeight)) return null;
    state = next;
    height = nextHeight;
  }
  return null;
}

function deviate(point: ClimbPoint, state: ClimbState): number {
  let z = state.precision * point.y - (state.groups[point.group] ?? 0);
  for (let k = 0; k < state.slopes.length; k++) z -= (state.slopes[k] ?? 0) * (point.covariates[k] ?? 0);
  return z;
}

function logLikelihood(points: readonly ClimbPoint[], law: ScatterLaw, state: ClimbState): number {
  if (!(state.precision > 0)) return Number.NEGATIVE_INFINITY;
  const logPrecision = Math.log(state.precision);
  return points.reduce((sum, point) => {
    const z = deviate(point, state);
    return sum + (point.isLowerBound ? law.bound(z)[0] : law.exact(z)[0] + logPrecision);
  }, 0);
}

function moved(state: ClimbState, change: ClimbState, share: number): ClimbState {
  return {
    groups: state.groups.map((value, g) => value + share * (change.groups[g] ?? 0)),
    slopes: state.slopes.map((value, k) => value + share * (change.slopes[k] ?? 0)),
    precision: state.precision + share * change.precision,
  };
}

/** The full step and what the likelihood would rise by if it were a parabola; null where the curvature is flat. */
function newtonStep(points: readonly ClimbPoint[], law: ScatterLaw, state: ClimbState) {
  const size = state.slopes.length + 1;
  const groupSlope = new Float64Array(state.groups.length);
  const groupCurve = new Float64Array(state.groups.length);
  const cross = new Float64Array(state.groups.length * size);
  const slope = new Float64Array(size);
  const curve = new Float64Array(size * size);
  const v = new Float64Array(size);
  for (const point of points) {
    const z = deviate(point, state);
    const [, first, second] = point.isLowerBound ? law.bound(z) : law.exact(z);
    for (let k = 0; k < size - 1; k++) v[k] = -(point.covariates[k] ?? 0);
    v[size - 1] = point.y;
    const g = point.group;
    groupSlope[g] = (groupSlope[g] ?? 0) - first;
    groupCurve[g] = (groupCurve[g] ?? 0) - second;
    for (let i = 0; i < size; i++) {
      const vi = v[i] ?? 0;
      slope[i] = (slope[i] ?? 0) + first * vi;
      cross[g * size + i] = (cross[g * size + i] ?? 0) + second * vi;
      for (let j = 0; j <= i; j++) curve[i * size + j] = (curve[i * size + j] ?? 0) - second * vi * (v[j] ?? 0);
    }
    if (!point.isLowerBound) {
      slope[size - 1] = (slope[size - 1] ?? 0) + 1 / state.precision;
      curve[size * size - 1] = (curve[size * size - 1] ?? 0) + 1 / state.precision ** 2;
    }
  }
  const right = slope.slice();
  for (let g = 0; g < groupCurve.length; g++) {
    const own = groupCurve[g] ?? 0;
    if (!(own > 1e-300)) return null;
    for (let i = 0; i < size; i++) {
      const share = (cross[g * size + i] ?? 0) / own;
      right[i] = (right[i] ?? 0) - share * (groupSlope[g] ?? 0);
      for (let j = 0; j <= i; j++)
        curve[i * size + j] = (curve[i * size + j] ?? 0) - share * (cross[g * size + j] ?? 0);
    }
  }
  const factor = cholesky(curve, size);
  if (factor === null) return null;
  const dense = choleskySolved(factor, right);
  const groups = Array.from(groupCurve, (own, g) => {
    let value = groupSlope[g] ?? 0;
    for (let i = 0; i < size; i++) value -= (cross[g * size + i] ?? 0) * (dense[i] ?? 0);
    return value / own;
  });
  const promise =
    groups.reduce((sum, value, g) => sum + value * (groupSlope[g] ?? 0), 0) +
    dense.reduce((sum, value, i) => sum + value * (slope[i] ?? 0), 0);
  const change: ClimbState = { groups, slopes: [...dense.subarray(0, size - 1)], precision: dense[size - 1] ?? 0 };
  return { change, promise };
}
