import { LEAST_SCATTER } from '@/lib/statistics/lower-percentile';
import { studentQuantile } from '@/lib/statistics/student-t';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';

/** Mean and scatter of the logarithms of a sample of loads. */
export interface LognormalSample {
  readonly n: number;
  readonly logMean: number;
  /** Sample standard deviation of the logarithms; null for a single reading, which shows no scatter. */
  readonly logSd: number | null;
}

/** Least scatter of logarithms that a lower value is computed with: that of EN 14358. */
export const LEAST_LOG_SD = LEAST_SCATTER;

/**
 * Mean and scatter of ln(load). Throws RangeError for no loads, or one that is not positive and finite: a load of
 * zero is either an invalid test or a joint that fell out, and the caller must know which.
 */
export function lognormalSample(loads: readonly number[]): LognormalSample {
  if (loads.length === 0) throw new RangeError('lognormalSample needs at least one load');
  const logs = loads.map((load) => {
    if (!(load > 0 && Number.isFinite(load))) throw new RangeError(`lognormalSample needs positive loads, got ${load}`);
    return Math.log(load);
  });
  const n = logs.length;
  const rough = logs.reduce((sum, y) => sum + y, 0) / n;
  const logMean = rough + logs.reduce((sum, y) => sum + (y - rough), 0) / n;
  if (n === 1) return { n, logMean, logSd: null };
  const squares = logs.reduce((sum, y) => sum + (y - logMean) ** 2, 0);
  return { n, logMean, logSd: Math.sqrt(squares / (n - 1)) };
}

/**
 * The characteristic load of a sample: with `confidence`, a share `content` of the population holds more.
 * 112, 128, 121, 99, 135 give 87.75 at 0.95 and 0.75.
 *
 * Throws RangeError for fewer than 2 loads.
 * Source: EN 14358 and ASTM D2915, exp(m - k s) on logarithms, s at least 0.05 (from memory).
 */
export function characteristicLoad(loads: readonly number[], content = 0.95, confidence = 0.75): number {
  const { n, logMean, logSd } = lognormalSample(loads);
  if (logSd === null) throw new RangeError('characteristicLoad needs at least 2 loads, got 1');
  return Math.exp(logMean - toleranceFactor(n, content, confidence) * Math.max(logSd, LEAST_LOG_SD));
}

/**
 * The load that one more specimen exceeds with the chance `content`: a prediction limit, not a tolerance limit.
 *
 * Throws RangeError for fewer than 2 loads.
 * Source: EN 1990 Annex D, k = t sqrt(1 + 1/n) for unknown scatter (from memory).
 */
export function predictedLowLoad(loads: readonly number[], content = 0.95): number {
  const { n, logMean, logSd } = lognormalSample(loads);
  if (logSd === null) throw new RangeError('predictedLowLoad needs at least 2 loads, got 1');
  const factor = studentQuantile(content, n - 1) * Math.sqrt(1 + 1 / n);
  return Math.exp(logMean - factor * Math.max(logSd, LEAST_LOG_SD));
}
