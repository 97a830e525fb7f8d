import { visitPanels } from '@/lib/statistics/gauss-panels';
import { normalDensity, normalProbability, normalQuantile } from '@/lib/statistics/normal-distribution';
import { type ScatterDensity, scatterDensity } from '@/lib/statistics/scatter-density';

/** Beyond this many standard deviations the normal share is 0 or 1 to every digit. */
const FULL = 9;

/**
 * Share of the noncentral t distribution below t: the chance that (Z + shift) / sqrt(chi-square / freedom) < t.
 * Absolute error below 1e-14 for whole freedom >= 1 and |shift| up to 1000. 2, 2, 1.5 gives 0.566060.
 *
 * Throws RangeError unless freedom >= 1 and t and shift are finite.
 * Source: the definition, integrated over the scatter s = sqrt(chi-square / freedom).
 */
export function noncentralTProbability(t: number, freedom: number, shift: number): number {
  return Math.min(
    1,
    overScatter(t, shift, scatterDensity(freedom), (s) => normalProbability(t * s - shift)),
  );
}

/** Share of the noncentral t distribution above t: the power of a one-sided test. Accuracy and errors as above. */
export function noncentralTUpperTail(t: number, freedom: number, shift: number): number {
  return Math.min(
    1,
    overScatter(t, shift, scatterDensity(freedom), (s) => normalProbability(shift - t * s)),
  );
}

/** Integral of value(s) times the density of the scatter. */
function overScatter(t: number, shift: number, density: ScatterDensity, value: (s: number) => number): number {
  let sum = 0;
  visitScatter(t, shift, density, (s, weight) => {
    sum += weight * value(s);
  });
  return sum;
}

/** Visits the scatter with the weights of its density, with finer panels where t s crosses the shift. */
function visitScatter(
  t: number,
  shift: number,
  density: ScatterDensity,
  visit: (s: number, weight: number) => void,
): void {
  if (!Number.isFinite(t) || !Number.isFinite(shift)) {
    throw new RangeError(`the noncentral t distribution needs finite t and shift, got ${t}, ${shift}`);
  }
  const { low, high, width } = density;
  const dense = (s: number, weight: number) => visit(s, weight * density.at(s));
  const crossing = t === 0 ? 0 : shift / t;
  const reach = t === 0 ? 0 : FULL / Math.abs(t);
  const from = Math.min(high, Math.max(low, crossing - reach));
  const to = Math.min(high, Math.max(low, crossing + reach));
  const fine = t === 0 ? width : Math.min(width, 3 / Math.abs(t));
  visitPanels(low, from, width, dense);
  visitPanels(from, to, fine, dense);
  visitPanels(to, high, width, dense);
}

/**
 * The t that a share `probability` of the noncentral t distribution lies below; relative error below 1e-12 for
 * probabilities in [0.001, 0.999].
 *
 * Newton's method on the normal score of the share, in which the distribution is nearly a straight line, kept inside
 * the bracket found so far. Throws RangeError unless 0 < probability < 1, freedom >= 1 and the shift is finite.
 */
export function noncentralTQuantile(probability: number, freedom: number, shift: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`noncentralTQuantile needs a probability between 0 and 1, got ${probability}`);
  }
  const density = scatterDensity(freedom);
  const score = normalQuantile(probability);
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let t = startingT(score, freedom, shift);
  for (let turn = 0; turn < 200; turn++) {
    let share = 0;
    let slope = 0;
    visitScatter(t, shift, density, (s, weight) => {
      const z = t * s - shift;
      share += weight * normalProbability(z);
      slope += weight * s * normalDensity(z);
    });
    if (share < probability) low = t;
    else high = t;
    const step = share > 0 && share < 1 ? scoreStep(normalQuantile(share), score, slope) : Number.NaN;
    const next = t - step;
    if (!(next >= low && next <= high)) {
      t = between(low, high, t);
    } else {
      t = next;
      // The step after this one would be about the square of it, below the last digit.
      if (Math.abs(step) <= 1e-8 * Math.abs(t)) return t;
    }
    if (high - low <= 4 * Number.EPSILON * Math.abs(t)) return t;
  }
  return t;
}

function scoreStep(reached: number, wanted: number, slope: number): number {
  return ((reached - wanted) * normalDensity(reached)) / slope;
}

/** Source: the normal approximation of Johnson and Welch (1940), from memory; only a start. */
function startingT(score: number, freedom: number, shift: number): number {
  const shrink = 1 - (score * score) / (2 * freedom);
  if (shrink < 0.25) return shift + score;
  return (shift + score * Math.sqrt(Math.max(0, 1 + (shift * shift - score * score) / (2 * freedom)))) / shrink;
}

/** A t inside the bracket, or further out on the side that is still open. */
function between(low: number, high: number, t: number): number {
  if (low === Number.NEGATIVE_INFINITY) return high - Math.max(1, Math.abs(high));
  if (high === Number.POSITIVE_INFINITY) return low + Math.max(1, Math.abs(low));
  const middle = 0.5 * (low + high);
  return middle === t ? 0.5 * (middle + high) : middle;
}
