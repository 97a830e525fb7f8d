import { type FigureSource, fromMemory } from '@/lib/materials/figure-source';
import { normalProbability } from '@/lib/statistics/normal-distribution';

/**
 * Factor between the two ends it must name: the lower value of what an anchor carries, over the greatest load the line
 * can put on it. 1.3 on the strength (EN 1995 for connections) times 1.5 on the load (EN 1990), from memory.
 */
export const USUAL_FACTOR = 1.95;
export const FACTOR_SOURCE: FigureSource = fromMemory(
  '1.3 on strength (EN 1995, connections) times 1.5 on load (EN 1990)',
);
export const FACTOR_WORDS = 'Lower value of the anchor over the greatest load of the line';

/** Strengths and loads as mean and coefficient of variation. */
export interface UncertainLoad {
  readonly mean: number;
  readonly cov: number;
}

/**
 * Reliability index of a strength over a load, both lognormal, and the chance that the load wins.
 * 117 with 0.20 over 30 with 0.25: 4.341 and 7.1e-6. Not to be claimed from three pulls.
 */
export function reliability(strength: UncertainLoad, load: UncertainLoad): { index: number; failureShare: number } {
  const r = 1 + strength.cov ** 2;
  const s = 1 + load.cov ** 2;
  const index = Math.log((strength.mean / load.mean) * Math.sqrt(s / r)) / Math.sqrt(Math.log(r * s));
  return { index, failureShare: normalProbability(-index) };
}
