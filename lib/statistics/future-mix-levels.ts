import { censoredRegression } from '@/lib/statistics/censored-regression';
import { mixCounts } from '@/lib/statistics/future-mix-line';
import type { MixScatter } from '@/lib/statistics/interpolated-factor';
import { centre, sumOfSquares } from '@/lib/statistics/summary';
import { twoWayAnova } from '@/lib/statistics/two-way-anova';
import { contrastVariance, type TableReading, type TwoWayFit, twoWayFit } from '@/lib/statistics/two-way-fit';

/** One reading of a level (a depth, a wood) of a mix, both numbered from 0; y is ln of the load. */
export interface LevelReading {
  readonly level: number;
  readonly y: number;
  readonly mix: number;
  /** True where the load is at least this. */
  readonly isLowerBound: boolean;
}

/** Mean of every level for the mean mix, with no curve through them, and what scatters about them. */
export interface MixLevels {
  readonly ok: true;
  readonly means: readonly number[];
  /** Variance of each mean in units of the scatter's, as if all mixes were alike; 1 over its readings where complete. */
  readonly leverages: readonly number[];
  readonly mixEffects: readonly number[];
  readonly scatter: MixScatter;
}

export type MixLevelsResult =
  | MixLevels
  | {
      readonly ok: false;
      readonly code: 'no-readings' | 'not-connected' | 'too-few-readings' | 'not-determined' | 'did-not-converge';
    };

/**
 * Means of levels over several mixes, and the scatter between and within mixes. Where a table has holes, a level's mean
 * is what it would be in the mean mix, in which every mix counts alike (see `futureMixLine`). Lower bounds enter by
 * maximum likelihood; a level or a mix of nothing but lower bounds is refused. Throws RangeError for levels or mixes
 * not numbered from 0 without holes.
 */
export function futureMixLevels(readings: readonly LevelReading[]): MixLevelsResult {
  if (readings.length === 0) return { ok: false, code: 'no-readings' };
  const n = readings.length;
  const counts = mixCounts(readings.map(({ level }) => level));
  const inMix = mixCounts(readings.map(({ mix }) => mix));
  const layout = { n, levels: counts.length, mixes: inMix.length, freedom: n - counts.length };
  if (layout.freedom < 1) return { ok: false, code: 'too-few-readings' };
  if (layout.mixes === n) return independentLevels(readings, counts);
  if (n - layout.levels - layout.mixes + 1 < 1) return { ok: false, code: 'too-few-readings' };
  const table = readings.map(({ level, y, mix }) => ({ treatment: level, block: mix, y }));
  const fit = twoWayFit(table);
  if (!fit.ok) return fit;
  if (readings.some(({ isLowerBound }) => isLowerBound)) {
    const censored = censoredMeans(readings, layout.levels);
    return censored.ok ? split(fit, layout, censored.means, censored.mixEffects, censored.squares) : censored;
  }
  if (layout.levels === 1) return oneLevel(table, fit, inMix);
  const means = fit.treatmentEffects.map((effect) => fit.grand + effect);
  return split(fit, layout, means, fit.blockEffects, fit.rss);
}

interface Layout {
  readonly n: number;
  readonly levels: number;
  readonly mixes: number;
  readonly freedom: number;
}

function split(
  { design, freedom }: TwoWayFit,
  layout: Layout,
  means: readonly number[],
  mixEffects: readonly number[],
  squares: number,
): MixLevels {
  const { mixes } = layout;
  const share = 1 / mixes;
  const everyMix = new Map(mixEffects.map((_, mix) => [mix, share]));
  // Variances of the mixes at one level: their spread about their mean is the same at every level.
  const level = new Map([[0, 1]]);
  const ofMixes = mixEffects.reduce((sum, _, mix) => sum + contrastVariance(design, level, new Map([[mix, 1]])), 0);
  const spread = ofMixes - mixes * contrastVariance(design, level, everyMix);
  const perMix = mixes < 2 ? layout.n : (mixes - 1) / spread;
  const between = mixEffects.reduce((sum, effect) => sum + effect * effect, 0);
  return {
    ok: true,
    means,
    leverages: means.map((_, index) => contrastVariance(design, new Map([[index, 1]]), everyMix)),
    mixEffects,
    scatter: {
      mixes,
      perMix,
      freedom: layout.freedom,
      mixMean: mixes < 2 ? 0 : (perMix * between) / (mixes - 1),
      errorMean: squares / freedom,
    },
  };
}

/** A single level: every reading counts alike, as in the published one-way form of the factor. */
function oneLevel(table: readonly TableReading[], fit: TwoWayFit, inMix: readonly number[]): MixLevels {
  const n = table.length;
  const mixes = inMix.length;
  const anova = twoWayAnova(table, fit);
  const squares = inMix.reduce((sum, count) => sum + count * count, 0);
  return {
    ok: true,
    means: [centre(table.map(({ y }) => y))],
    leverages: [1 / n],
    mixEffects: fit.blockEffects,
    scatter: {
      mixes,
      perMix: mixes < 2 ? n : (n - squares / n) / (mixes - 1),
      freedom: n - 1,
      mixMean: mixes < 2 ? 0 : anova.block.squares / (mixes - 1),
      errorMean: anova.errorMean,
    },
  };
}

/** Every reading is a mix of its own: they are independent. */
function independentLevels(readings: readonly LevelReading[], counts: readonly number[]): MixLevelsResult {
  const groups = counts.map((_, level) => readings.filter((reading) => reading.level === level).map(({ y }) => y));
  const freedom = readings.length - counts.length;
  const fit = readings.some(({ isLowerBound }) => isLowerBound)
    ? censoredMeans(
        readings.map((reading) => ({ ...reading, mix: 0 })),
        counts.length,
      )
    : { ok: true as const, means: groups.map(centre), squares: groups.reduce((sum, y) => sum + sumOfSquares(y), 0) };
  if (!fit.ok) return fit;
  return {
    ok: true,
    means: fit.means,
    leverages: counts.map((count) => 1 / count),
    mixEffects: readings.map(() => 0),
    scatter: { mixes: readings.length, perMix: 1, freedom, mixMean: fit.squares / freedom, errorMean: null },
  };
}

/** Level means for the mean mix, effects of the mixes, and residual sum of squares by maximum likelihood. */
function censoredMeans(readings: readonly LevelReading[], levels: number) {
  const mixes = readings.reduce((most, { mix }) => Math.max(most, mix), 0) + 1;
  // The likelihood takes many groups for nothing but every covariate dearly: the smaller factor becomes covariates.
  const isLevelGrouped = levels > mixes;
  const fit = censoredRegression(
    readings.map(({ y, isLowerBound, level, mix }) => {
      const [group, other, others] = isLevelGrouped ? [level, mix, mixes] : [mix, level, levels];
      const covariates = Array.from({ length: others - 1 }, (_, k) => (other === k + 1 ? 1 : 0));
      return { y, isLowerBound, group, covariates };
    }),
    'lognormal',
  );
  if (!fit.ok) {
    const code = fit.code === 'did-not-converge' ? fit.code : ('not-determined' as const);
    return { ok: false as const, code };
  }
  const others = [0, ...fit.slopes];
  const [levelSide, mixSide] = isLevelGrouped ? [fit.groups, others] : [others, fit.groups];
  const height = centre(mixSide);
  return {
    ok: true as const,
    means: levelSide.map((level) => level + height),
    mixEffects: mixSide.map((mix) => mix - height),
    squares: fit.scale * fit.scale * readings.length,
  };
}
