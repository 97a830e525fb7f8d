import { censoredRegression } from '@/lib/statistics/censored-regression';

/** A reading on the scale of logarithms; `isLowerBound`: the true value is at least this. */
export interface LogReading {
  readonly y: number;
  readonly isLowerBound: boolean;
}

export type CensoredFit =
  | { readonly ok: true; readonly logMean: number; readonly logSd: number; readonly logLikelihood: number }
  /** Fewer than 2 exact readings, all of them equal, or a likelihood without a summit. */
  | { readonly ok: false; readonly code: 'too-few-exact' | 'no-scatter' | 'did-not-converge' };

/**
 * Mean and scatter of logarithms by maximum likelihood, with readings that are only lower bounds counted as such.
 *
 * The standard deviation is the maximum-likelihood one (divisor n without lower bounds); the log-likelihood is that
 * of the logarithms. See `censoredRegression`.
 */
export function censoredLognormalFit(readings: readonly LogReading[]): CensoredFit {
  const fit = censoredRegression(
    readings.map(({ y, isLowerBound }) => ({ y, isLowerBound, group: 0, covariates: [] })),
    'lognormal',
  );
  if (!fit.ok) return { ok: false, code: fit.code === 'not-determined' ? 'too-few-exact' : fit.code };
  return { ok: true, logMean: fit.groups[0] ?? 0, logSd: fit.scale, logLikelihood: fit.logLikelihood };
}
