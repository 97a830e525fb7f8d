import { logNormalUpperTail, normalHazard } from '@/lib/statistics/normal-distribution';

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
 * of the logarithms. Newton's method with halved steps until the gradient is below 1e-10.
 * Source: density for exact readings, upper tail for censored ones, e.g. NIST/SEMATECH e-Handbook 8.4.1 (from memory).
 */
export function censoredLognormalFit(readings: readonly LogReading[]): CensoredFit {
  const exact = readings.filter((reading) => !reading.isLowerBound).map((reading) => reading.y);
  if (exact.length < 2) return { ok: false, code: 'too-few-exact' };
  const mean = exact.reduce((sum, y) => sum + y, 0) / exact.length;
  const sd = Math.sqrt(exact.reduce((sum, y) => sum + (y - mean) ** 2, 0) / exact.length);
  if (!(sd > 1e-12)) return { ok: false, code: 'no-scatter' };
  let m = mean;
  let u = Math.log(sd);
  let now = likelihood(readings, m, u);
  for (let turn = 0; turn < 200; turn++) {
    const { gm, gu, hmm, hmu, huu } = derivatives(readings, m, u);
    if (Math.abs(gm) * Math.exp(u) + Math.abs(gu) < 1e-10 * readings.length) {
      return { ok: true, logMean: m, logSd: Math.exp(u), logLikelihood: now };
    }
    const determinant = hmm * huu - hmu * hmu;
    const isSummit = hmm < 0 && determinant > 0;
    // Away from the summit the curvature may mislead: climb the gradient instead, scaled to the scatter.
    let stepM = isSummit ? -(huu * gm - hmu * gu) / determinant : (gm * Math.exp(2 * u)) / readings.length;
    let stepU = isSummit ? -(hmm * gu - hmu * gm) / determinant : gu / (2 * readings.length);
    let next = likelihood(readings, m + stepM, u + stepU);
    for (let halving = 0; halving < 60 && !(next >= now); halving++) {
      stepM *= 0.5;
      stepU *= 0.5;
      next = likelihood(readings, m + stepM, u + stepU);
    }
    m += stepM;
    u += stepU;
    now = next;
  }
  return { ok: false, code: 'did-not-converge' };
}

function likelihood(readings: readonly LogReading[], m: number, u: number): number {
  const s = Math.exp(u);
  return readings.reduce((sum, { y, isLowerBound }) => {
    const z = (y - m) / s;
    return sum + (isLowerBound ? logNormalUpperTail(z) : -0.5 * z * z - u - 0.5 * Math.log(2 * Math.PI));
  }, 0);
}

/** First and second derivatives of the log-likelihood in the mean m and u = ln(scatter). */
function derivatives(readings: readonly LogReading[], m: number, u: number) {
  const s = Math.exp(u);
  let gm = 0;
  let gu = 0;
  let hmm = 0;
  let hmu = 0;
  let huu = 0;
  for (const { y, isLowerBound } of readings) {
    const z = (y - m) / s;
    if (isLowerBound) {
      const hazard = normalHazard(z);
      const slope = hazard * (hazard - z);
      gm += hazard / s;
      gu += hazard * z;
      hmm -= slope / (s * s);
      hmu -= (hazard + z * slope) / s;
      huu -= z * hazard + z * z * slope;
    } else {
      gm += z / s;
      gu += z * z - 1;
      hmm -= 1 / (s * s);
      hmu -= (2 * z) / s;
      huu -= 2 * z * z;
    }
  }
  return { gm, gu, hmm, hmu, huu };
}
