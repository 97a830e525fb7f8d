import type { FigureSource } from '@/lib/materials/figure-source';
import { censoredLognormalFit } from '@/lib/statistics/censored-lognormal';
import { LEAST_LOG_SD } from '@/lib/statistics/lognormal-sample';
import { studentQuantile } from '@/lib/statistics/student-t';
import type { BondBelief } from '@/lib/strength/bond-belief';
import type { LowerShare } from '@/lib/strength/estimate';
import { type KappaReading, kappaPosterior, type NormalPrior } from '@/lib/strength/kappa-posterior';
import type { KappaPrior } from '@/lib/strength/kappa-prior';

/** Bond failures from which on the scatter of the readings themselves replaces the assumed one. */
export const OWN_SCATTER_FROM = 8;

/**
 * What is believed of a bond after the shop's pulls of the same wood, adhesive and wire; null where neither the prior
 * nor the pulls speak yet.
 *
 * The scatter of one joint is taken as known (0.18 for slow epoxy) until eight pulls failed in the bond; from then on
 * it is that of the readings, at least 0.05, and the lower value follows Student's t. It is a value for the next joint
 * of the same kind, not a tolerance limit, and says nothing of a mix that differs from those pulled.
 */
export function updatedBelief(
  prior: KappaPrior,
  readings: readonly KappaReading[],
  lower: LowerShare,
): BondBelief | null {
  const exactPulls = readings.filter((reading) => !reading.isLowerBound).length;
  const boundPulls = readings.length - exactPulls;
  if (exactPulls < prior.leastPulls) return null;
  const own = exactPulls >= OWN_SCATTER_FROM ? scatterOf(readings) : null;
  const normal: NormalPrior = { mean: Math.log(prior.median), sd: prior.groupLogSd, jointSd: own ?? prior.jointLogSd };
  const { mean, sd, predictiveQuantile } = kappaPosterior(normal, readings);
  const logSd = Math.hypot(sd, normal.jointSd);
  const lowest =
    own === null ? predictiveQuantile(lower.share) : mean + studentQuantile(lower.share, exactPulls - 1) * logSd;
  return {
    median: Math.exp(mean),
    lower: Math.exp(lowest),
    logSd,
    exactPulls,
    boundPulls,
    source: readings.length === 0 ? prior.source : ownSource(exactPulls, boundPulls),
  };
}

/** Sample scatter of the readings' logarithms, lower bounds counted as such; null if it cannot be had. */
function scatterOf(readings: readonly KappaReading[]): number | null {
  const fit = censoredLognormalFit(readings.map(({ logKappa, isLowerBound }) => ({ y: logKappa, isLowerBound })));
  if (!fit.ok) return fit.code === 'no-scatter' ? LEAST_LOG_SD : null;
  const n = readings.length;
  return Math.max(LEAST_LOG_SD, fit.logSd * Math.sqrt(n / (n - 1)));
}

function ownSource(exactPulls: number, boundPulls: number): FigureSource {
  const bounds = boundPulls === 0 ? '' : `, ${boundPulls} more that carried at least their load`;
  return { kind: 'own', text: `The shop's pulls: ${exactPulls} that failed in the bond${bounds}` };
}
