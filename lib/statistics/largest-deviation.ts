import { panelIntegral } from '@/lib/statistics/gauss-panels';
import { normalDensity, normalProbability } from '@/lib/statistics/normal-distribution';
import { scatterDensity } from '@/lib/statistics/scatter-density';
import { studentTwoSided } from '@/lib/statistics/student-t';

/**
 * The chance that among `groups` equally accurate means the one furthest from the mean of the others lies, in standard
 * errors of that difference, further than t, when all are alike: the p of "one mix is off". `freedom` belongs to the
 * error variance. Absolute error below 1e-5; between 0 and 1. 2.853, 3 groups, 8: 0.0500.
 *
 * Two groups are Student's two-sided tail. From 20 groups on, groups times that tail (Bonferroni), never too small.
 * Throws RangeError unless groups >= 2 and freedom >= 1 are whole and t >= 0.
 * Source: the analysis of means, P. R. Nelson, J. Quality Technology 14 (1982), from memory. Computed here from the
 * density at 0 of the sum of `groups` normal deviates, each cut off at c, against that of uncut ones: given that their
 * sum is 0, deviates are distributed as deviations from their mean.
 */
export function largestDeviationTail(t: number, groups: number, freedom: number): number {
  if (!(Number.isInteger(groups) && groups >= 2 && freedom >= 1 && t >= 0)) {
    throw new RangeError(`largestDeviationTail needs 2 groups or more and t >= 0, got ${groups}, ${t}, ${freedom}`);
  }
  if (groups === 2) return studentTwoSided(t, freedom);
  const bonferroni = Math.min(1, groups * studentTwoSided(t, freedom));
  if (groups >= 20 || bonferroni < 1e-3) return bonferroni;
  const density = scatterDensity(freedom);
  const scale = Math.sqrt((groups - 1) / groups) * t;
  const inside = panelIntegral(
    (s) => density.at(s) * shareInside(scale * s, groups),
    density.low,
    density.high,
    3 * density.width,
  );
  return Math.min(bonferroni, Math.max(0, 1 - inside));
}

/** The chance that all of `groups` normal deviates lie within c of their own mean. */
function shareInside(c: number, groups: number): number {
  if (c <= 0) return 0;
  if (c > 9) return 1;
  if (groups === 3) return shareOfThree(c);
  // The sum of cut-off deviates cannot leave +-groups c, so that steps of 2 pi / (2 groups c) alias nothing.
  const step = Math.PI / (groups * c);
  let sum = 0.5 * cutTransform(c, 0) ** groups;
  for (let k = 1, quiet = 0; k < 2000 && quiet < 3; k++) {
    const term = cutTransform(c, k * step) ** groups;
    sum += term;
    quiet = Math.abs(term) < 1e-9 * Math.abs(sum) ? quiet + 1 : 0;
  }
  return Math.min(1, Math.sqrt((2 * groups) / Math.PI) * sum * step);
}

/**
 * The same for three: two of the deviations are normal with variance 2/3 and correlation -1/2, the third makes up
 * their sum, so that given the first, u, the second must lie between -c and c - u.
 */
function shareOfThree(c: number): number {
  const sd = Math.sqrt(2 / 3);
  const inside = (u: number) =>
    (normalDensity(u / sd) / sd) *
    (normalProbability((c - 0.5 * u) * Math.SQRT2) - normalProbability((0.5 * u - c) * Math.SQRT2));
  return 2 * panelIntegral(inside, 0, c, 2);
}

/** Integral of the normal density times cos(w z) from -c to c. */
function cutTransform(c: number, w: number): number {
  return 2 * panelIntegral((z) => normalDensity(z) * Math.cos(w * z), 0, c, Math.min(3, 8 / Math.max(w, 1)));
}
