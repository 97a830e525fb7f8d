import { censoredRegression } from '@/lib/statistics/censored-regression';
import type { MixScatter } from '@/lib/statistics/interpolated-factor';
import { type LineFit, lineFit } from '@/lib/statistics/line-fit';
import { studentUpperQuantile } from '@/lib/statistics/student-t';
import { centre } from '@/lib/statistics/summary';

/** One reading at x (ln of a depth) of a mix numbered from 0; y is ln of the load. */
export interface MixReading {
  readonly x: number;
  readonly y: number;
  readonly mix: number;
  /** True where the load is at least this. */
  readonly isLowerBound: boolean;
}

/** The line for the mean mix, and what scatters about it. */
export interface MixLine {
  readonly ok: true;
  readonly slope: number;
  /** Height at xCentre. */
  readonly height: number;
  readonly xCentre: number;
  /** Leverage at x is base + (x - xCentre)^2 / xSquares. */
  readonly baseLeverage: number;
  readonly xSquares: number;
  readonly n: number;
  /** Effect of each mix, summing to 0. */
  readonly mixEffects: readonly number[];
  readonly scatter: MixScatter;
}

export type MixLineResult =
  | MixLine
  /**
   * One level only; no freedom left beside line and mixes; exact readings that do not determine the line and every mix;
   * a likelihood that could not be climbed.
   */
  | { readonly ok: false; readonly code: 'one-level' | 'too-few-readings' | 'not-determined' | 'did-not-converge' };

/** Height of the mean mix's line at x. */
export function mixLineAt(line: MixLine, x: number): number {
  return line.height + line.slope * (x - line.xCentre);
}

/** Variance of that height in units of the scatter's variance, as if all mixes were alike. */
export function mixLineLeverage(line: MixLine, x: number): number {
  return line.baseLeverage + (x - line.xCentre) ** 2 / line.xSquares;
}

/**
 * Half-width of the two-sided band of the mean mix's line at x: where the middle of all mixes lies. Null where no
 * scatter can be had. Mixes enter with at least the scatter within them.
 * Source: the variance of the height, between mixes and within, with degrees of freedom by F. E. Satterthwaite (1946),
 * from memory.
 */
export function mixLineBand(line: MixLine, x: number, confidence = 0.95): number | null {
  const { mixes, perMix, freedom, mixMean, errorMean } = line.scatter;
  const leverage = mixLineLeverage(line, x);
  const tail = 0.5 * (1 - confidence);
  if (errorMean === null) return studentUpperQuantile(tail, freedom) * Math.sqrt(mixMean * leverage);
  if (mixes < 2) return null;
  const between = Math.max(mixMean, errorMean) / (perMix * mixes);
  const within = errorMean * Math.max(0, leverage - 1 / (perMix * mixes));
  const variance = between + within;
  if (!(variance > 0)) return null;
  const spread = (between / variance) ** 2 / (mixes - 1) + (within / variance) ** 2 / (line.n - mixes - 1);
  return studentUpperQuantile(tail, 1 / spread) * Math.sqrt(variance);
}

/**
 * A line through readings of several mixes, every mix with its own height and all with one slope. Lower bounds enter
 * by maximum likelihood. Throws RangeError for mixes not numbered from 0 without holes.
 *
 * The mean mix counts every mix alike, however many readings it has left, and the mean square between mixes comes from
 * their heights: weighting by counts falls below 0.74 of a nominal 0.75 when mixes differ and one has lost most of its
 * readings (simulated: 0.716; this way 0.74 and more). On a complete table both are the textbook split.
 */
export function futureMixLine(readings: readonly MixReading[]): MixLineResult {
  const counts = mixCounts(readings.map(({ mix }) => mix));
  const all = lineFit(
    readings.map(({ x }) => x),
    readings.map(({ y }) => y),
  );
  if (all === null) return { ok: false, code: 'one-level' };
  const n = readings.length;
  const mixes = counts.length;
  if (n < 3) return { ok: false, code: 'too-few-readings' };
  if (mixes === n) return independentLine(readings, all);
  if (n - mixes - 1 < 1) return { ok: false, code: 'too-few-readings' };
  const split = withinMixes(readings, mixes);
  if (split === null) return { ok: false, code: 'not-determined' };
  const fitted = readings.some(({ isLowerBound }) => isLowerBound) ? censoredHeights(readings, split.xCentre) : split;
  if (!fitted.ok) return fitted;
  const { heights, slope, squares } = fitted;
  const height = centre(heights);
  const mixEffects = heights.map((value) => value - height);
  const base = counts.reduce((sum, count) => sum + 1 / count, 0) / mixes;
  const perMix = mixes < 2 ? n : 1 / (base + split.centreSquares / ((mixes - 1) * split.xSquares));
  const between = mixEffects.reduce((sum, effect) => sum + effect * effect, 0);
  return {
    ok: true,
    slope,
    height,
    xCentre: split.xCentre,
    baseLeverage: base / mixes,
    xSquares: split.xSquares,
    n,
    mixEffects,
    scatter: {
      mixes,
      perMix,
      freedom: n - 2,
      mixMean: mixes < 2 ? 0 : (perMix * between) / (mixes - 1),
      errorMean: squares / (n - mixes - 1),
    },
  };
}

/** Every reading is a mix of its own: they are independent, and the plain line is exact. */
function independentLine(readings: readonly MixReading[], all: LineFit): MixLineResult {
  const fit = readings.some(({ isLowerBound }) => isLowerBound)
    ? censoredHeights(
        readings.map((reading) => ({ ...reading, mix: 0 })),
        all.xMean,
      )
    : { ok: true as const, heights: [all.yMean], slope: all.slope, squares: all.rss };
  if (!fit.ok) return fit;
  const { n } = all;
  return {
    ok: true,
    slope: fit.slope,
    height: fit.heights[0] ?? 0,
    xCentre: all.xMean,
    baseLeverage: 1 / n,
    xSquares: all.xSquares,
    n,
    mixEffects: readings.map(() => 0),
    scatter: { mixes: n, perMix: 1, freedom: n - 2, mixMean: fit.squares / (n - 2), errorMean: null },
  };
}

/** Heights at xCentre, slope and residual sum of squares by maximum likelihood. */
function censoredHeights(readings: readonly MixReading[], xCentre: number) {
  const fit = censoredRegression(
    readings.map(({ x, y, mix, isLowerBound }) => ({ y, isLowerBound, group: mix, covariates: [x - xCentre] })),
    'lognormal',
  );
  if (!fit.ok) {
    const code = fit.code === 'did-not-converge' ? fit.code : ('not-determined' as const);
    return { ok: false as const, code };
  }
  const squares = fit.scale * fit.scale * readings.length;
  return { ok: true as const, heights: fit.groups, slope: fit.slopes[0] ?? 0, squares };
}

/** Numbers of readings in each mix. Throws RangeError for mixes not numbered from 0 without holes. */
export function mixCounts(mixes: readonly number[]): number[] {
  const counts = new Array<number>(mixes.reduce((most, mix) => Math.max(most, mix), -1) + 1).fill(0);
  for (const mix of mixes) counts[mix] = (counts[mix] ?? 0) + 1;
  if (!counts.every((count) => count > 0) || !mixes.every((mix) => Number.isInteger(mix) && mix >= 0)) {
    throw new RangeError('mixes must be numbered from 0 without holes');
  }
  return counts;
}

/** One slope and a height for each mix at the mean of their centres; null where x does not vary within any mix. */
function withinMixes(readings: readonly MixReading[], mixes: number) {
  const groups = Array.from({ length: mixes }, (): MixReading[] => []);
  for (const reading of readings) groups[reading.mix]?.push(reading);
  const means = groups.map((group) => ({ x: centre(group.map(({ x }) => x)), y: centre(group.map(({ y }) => y)) }));
  let xSquares = 0;
  let products = 0;
  for (const { x, y, mix } of readings) {
    const mean = means[mix] ?? { x, y };
    xSquares += (x - mean.x) ** 2;
    products += (x - mean.x) * (y - mean.y);
  }
  const size = readings.reduce((most, { x }) => Math.max(most, Math.abs(x)), 0);
  if (!(xSquares > readings.length * (1e-12 * size) ** 2)) return null;
  const slope = products / xSquares;
  const squares = readings.reduce((sum, { x, y, mix }) => {
    const mean = means[mix] ?? { x, y };
    return sum + (y - mean.y - slope * (x - mean.x)) ** 2;
  }, 0);
  const xCentre = centre(means.map(({ x }) => x));
  return {
    ok: true as const,
    heights: means.map((mean) => mean.y + slope * (xCentre - mean.x)),
    slope,
    squares,
    xCentre,
    xSquares,
    centreSquares: means.reduce((sum, mean) => sum + (mean.x - xCentre) ** 2, 0),
  };
}
