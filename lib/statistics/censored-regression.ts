import { censoredClimb, EXTREME_LAW, NORMAL_LAW } from '@/lib/statistics/censored-climb';
import { leastSquares } from '@/lib/statistics/least-squares';
import { centre } from '@/lib/statistics/summary';

/** A reading on the scale of logarithms, in one of several groups (mixes), with the values of the covariates. */
export interface CensoredReading {
  readonly y: number;
  /** True where the true value is at least y. */
  readonly isLowerBound: boolean;
  /** Numbered from 0; all 0 where there is one group only. */
  readonly group: number;
  /** As many as there are slopes. */
  readonly covariates: readonly number[];
}

/** How logarithms scatter about the model: normal for lognormal loads, smallest extreme value for Weibull loads. */
export type CensoredForm = 'lognormal' | 'weibull';

export type CensoredRegression =
  | {
      readonly ok: true;
      /** Height of each group where all covariates are 0. */
      readonly groups: readonly number[];
      readonly slopes: readonly number[];
      /** Scale of the logarithms by maximum likelihood (divisor n): sigma, or 1 over Weibull's shape. */
      readonly scale: number;
      /** Of the logarithms; that of the loads is less by the sum of the logarithms of the exact readings. */
      readonly logLikelihood: number;
    }
  /**
   * The exact readings do not determine every group, slope and the scatter; they fit without any scatter; or no summit
   * was reached.
   */
  | { readonly ok: false; readonly code: 'not-determined' | 'no-scatter' | 'did-not-converge' };

/**
 * Groups, slopes and scatter by maximum likelihood, with lower bounds counted as such: the density of exact readings,
 * the upper tail of bounds. Throws RangeError for values that are not finite.
 *
 * In height / scale and 1 / scale the likelihood has one summit, which Newton's method climbs from the line through the
 * exact readings.
 * Source: R. J. Olsen, Econometrica 46 (1978) for the parameters, from memory; example NIST/SEMATECH e-Handbook 8.4.1.3.
 */
export function censoredRegression(readings: readonly CensoredReading[], form: CensoredForm): CensoredRegression {
  if (!readings.every(({ y, covariates }) => Number.isFinite(y) && covariates.every(Number.isFinite))) {
    throw new RangeError('censoredRegression needs finite values');
  }
  const start = exactFit(readings);
  if (!start.ok) return start;
  const { middle, size, centres } = start;
  const points = readings.map(({ y, isLowerBound, group, covariates }) => ({
    y: (y - middle) / size,
    isLowerBound,
    group,
    covariates: covariates.map((value, k) => value - (centres[k] ?? 0)),
  }));
  const first = { groups: start.groups, slopes: start.slopes, precision: 1 };
  const summit = censoredClimb(points, form === 'lognormal' ? NORMAL_LAW : EXTREME_LAW, first);
  if (summit === null) return { ok: false, code: 'did-not-converge' };
  const { state } = summit;
  const scale = size / state.precision;
  const slopes = state.slopes.map((value) => value * scale);
  const shift = slopes.reduce((sum, slope, k) => sum + slope * (centres[k] ?? 0), 0);
  const exactCount = readings.filter((reading) => !reading.isLowerBound).length;
  return {
    ok: true,
    groups: state.groups.map((value) => middle + value * scale - shift),
    slopes,
    scale,
    logLikelihood: summit.logLikelihood - exactCount * Math.log(size),
  };
}

interface ExactFit {
  readonly ok: true;
  readonly middle: number;
  readonly size: number;
  readonly centres: readonly number[];
  /** In units of size, about the middle and the centres. */
  readonly groups: readonly number[];
  readonly slopes: readonly number[];
}

/** Least squares through the exact readings alone, with the groups taken out first. */
function exactFit(
  readings: readonly CensoredReading[],
): ExactFit | { readonly ok: false; readonly code: 'not-determined' | 'no-scatter' } {
  const exact = readings.filter((reading) => !reading.isLowerBound);
  const groupCount = readings.reduce((most, { group }) => Math.max(most, group), -1) + 1;
  const slopeCount = readings[0]?.covariates.length ?? 0;
  const members = Array.from({ length: groupCount }, (): CensoredReading[] => []);
  for (const reading of exact) members[reading.group]?.push(reading);
  if (members.some((group) => group.length === 0)) return { ok: false, code: 'not-determined' };
  if (exact.length <= groupCount + slopeCount) return { ok: false, code: 'not-determined' };
  const yMeans = members.map((group) => centre(group.map(({ y }) => y)));
  const xMeans = members.map((group) =>
    Array.from({ length: slopeCount }, (_, k) => centre(group.map(({ covariates }) => covariates[k] ?? 0))),
  );
  const within = exact.map(({ y, group }) => y - (yMeans[group] ?? 0));
  const columns = Array.from({ length: slopeCount }, (_, k) =>
    exact.map(({ covariates, group }) => (covariates[k] ?? 0) - (xMeans[group]?.[k] ?? 0)),
  );
  const fit = slopeCount > 0 ? leastSquares(columns, within) : null;
  if (fit !== null && (!fit.ok || isNearlyFlat(columns, exact))) return { ok: false, code: 'not-determined' };
  const slopes = fit?.ok ? fit.coefficients : [];
  const rss = fit?.ok ? fit.rss : within.reduce((sum, e) => sum + e * e, 0);
  const size = Math.sqrt(rss / exact.length);
  const largest = exact.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0);
  if (!(size > 1e-12 * Math.max(1, largest))) return { ok: false, code: 'no-scatter' };
  const middle = centre(exact.map(({ y }) => y));
  const centres = Array.from({ length: slopeCount }, (_, k) =>
    centre(exact.map(({ covariates }) => covariates[k] ?? 0)),
  );
  const groups = yMeans.map(
    (mean, g) =>
      slopes.reduce((sum, slope, k) => sum - slope * ((xMeans[g]?.[k] ?? 0) - (centres[k] ?? 0)), mean - middle) / size,
  );
  return { ok: true, middle, size, centres, groups, slopes: slopes.map((slope) => slope / size) };
}

/** Whether a covariate hardly varies within the groups, so that its slope would be rounding. */
function isNearlyFlat(columns: readonly (readonly number[])[], exact: readonly CensoredReading[]): boolean {
  return columns.some((column, k) => {
    const size = exact.reduce((most, { covariates }) => Math.max(most, Math.abs(covariates[k] ?? 0)), 0);
    return !column.some((value) => Math.abs(value) > 1e-9 * size);
  });
}
