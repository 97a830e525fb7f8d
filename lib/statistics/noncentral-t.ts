import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { integral } from '@/lib/statistics/integral';
import { logGamma } from '@/lib/statistics/log-gamma';
import { normalProbability } from '@/lib/statistics/normal-distribution';

/**
 * Share of the noncentral t distribution below t: the chance that (Z + shift) / sqrt(chi-square / freedom) < t.
 * Absolute error below 1e-12 for freedom >= 1 and |shift| <= 40.
 *
 * Throws RangeError unless freedom >= 1.
 * Source: the definition, integrated over the scatter s = sqrt(chi-square / freedom).
 */
export function noncentralTProbability(t: number, freedom: number, shift: number): number {
  if (!(freedom >= 1)) throw new RangeError(`noncentralTProbability needs freedom of at least 1, got ${freedom}`);
  const half = 0.5 * freedom;
  const front = Math.LN2 + half * Math.log(half) - logGamma(half);
  const density = (s: number) => {
    if (s === 0) return freedom === 1 ? Math.exp(front) : 0;
    return Math.exp(front + (freedom - 1) * Math.log(s) - half * s * s);
  };
  // Ten standard deviations of s round its centre hold all but 1e-20 of it; s itself is never negative.
  const spread = 10 / Math.sqrt(2 * freedom);
  const low = Math.max(0, 1 - spread);
  const high = 1 + spread;
  const share = (s: number) => normalProbability(t * s - shift) * density(s);
  const turn = shift / t;
  const cuts = [low, turn - 4 / Math.abs(t), turn, turn + 4 / Math.abs(t), 1, high]
    .filter((cut) => cut >= low && cut <= high)
    .sort((a, b) => a - b);
  return cuts.slice(1).reduce((sum, cut, i) => sum + integral(share, cuts[i] ?? cut, cut, 1e-15), 0);
}

/**
 * The t that a share `probability` of the noncentral t distribution lies below; relative error below 1e-10 for
 * probabilities in [0.001, 0.999].
 *
 * Throws RangeError unless 0 < probability < 1 and freedom >= 1.
 */
export function noncentralTQuantile(probability: number, freedom: number, shift: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`noncentralTQuantile needs a probability between 0 and 1, got ${probability}`);
  }
  const excess = (t: number) => noncentralTProbability(t, freedom, shift) - probability;
  let width = 1;
  while (excess(shift - width) > 0) width *= 2;
  const low = shift - width;
  width = 1;
  while (excess(shift + width) < 0) width *= 2;
  return bracketedRoot(excess, low, shift + width);
}
