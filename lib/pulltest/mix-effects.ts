import type { SeriesReadings } from '@/lib/pulltest/series-readings';
import { type BlockContrast, blockContrasts } from '@/lib/statistics/block-contrasts';
import { futureMixLevels } from '@/lib/statistics/future-mix-levels';
import { futureMixLine } from '@/lib/statistics/future-mix-line';
import { normalHazard } from '@/lib/statistics/normal-distribution';
import { type PermutationTest, permutationTest } from '@/lib/statistics/permutation-test';
import { type TwoWayFit, twoWayFit } from '@/lib/statistics/two-way-fit';

/** How one mix reads against the others. */
export interface MixEffect {
  readonly mixId: string;
  readonly pulls: number;
  /** Its loads over those of the other mixes at the same depths, less 1: -0.18 reads 18 % low. */
  readonly difference: number;
  /** The chance of the most deviant mix lying so far out if all were alike; null where it cannot be told. */
  readonly p: number | null;
}

export interface MixFinding {
  readonly effects: readonly MixEffect[];
  /** The one mix that stands out, by size and by test, or by size alone; null where none does. */
  readonly named: { readonly mixId: string; readonly difference: number; readonly p: number | null } | null;
  /** Whether the rest still differ once the named one is set aside; null where not asked or not to be told. */
  readonly restP: number | null;
  /** The same question without assuming how loads scatter; null where there is nothing to rearrange. */
  readonly permutation: PermutationTest | null;
  /** True where lower bounds stood in: the p is then that of the permutations. */
  readonly hasBounds: boolean;
}

/** Called odd from this p and this difference on, or from the greater difference whatever the p. Chosen. */
export const ODD_MIX = { p: 0.05, difference: 0.1, differenceAlone: 0.2 } as const;

/**
 * Whether a mix reads low or high, from every mix against the mean of the others at the same depths. With two mixes
 * nobody can tell which is the odd one, and none is named; one mix tells nothing: null, as where depths and mixes
 * cannot be told apart.
 */
export function mixFinding(series: SeriesReadings, seed: number): MixFinding | null {
  const { mixIds } = series;
  if (mixIds.length < 2) return null;
  const { table, hasBounds } = logTable(series);
  const fit = twoWayFit(table);
  if (!fit.ok) return null;
  const permutation = permutationTest(table, seed);
  const contrasts = hasBounds ? null : blockContrasts(fit);
  const counts = mixIds.map((_, mix) => table.filter(({ block }) => block === mix).length);
  const likely = hasBounds ? likelyEffects(series) : null;
  const effects = mixIds.map((mixId, mix): MixEffect => {
    const own = (likely ?? fit.blockEffects)[mix] ?? 0;
    // Effects sum to 0, so that the others' mean is known from this one.
    const difference = Math.expm1((own * mixIds.length) / (mixIds.length - 1));
    return { mixId, pulls: counts[mix] ?? 0, difference, p: contrasts?.[mix]?.p ?? null };
  });
  const named = mixIds.length < 3 ? null : namedMix(effects, contrasts, hasBounds ? permutation : null);
  return { effects, named, restP: restP(fit, named, mixIds, hasBounds), permutation, hasBounds };
}

/** Effects by maximum likelihood, bounds counted as such; null where the exact readings do not determine them. */
function likelyEffects({ readings, depthsMm }: SeriesReadings): readonly number[] | null {
  const levels = futureMixLevels(readings);
  if (levels.ok) return levels.mixEffects;
  const line = depthsMm.length > 1 ? futureMixLine(readings) : null;
  return line?.ok ? line.mixEffects : null;
}

/** Largest |t| where there is a test, else the largest difference. */
function namedMix(
  effects: readonly MixEffect[],
  contrasts: readonly BlockContrast[] | null,
  instead: PermutationTest | null,
): MixFinding['named'] {
  const size = (mix: number) => Math.abs(contrasts?.[mix]?.t ?? Math.log1p(effects[mix]?.difference ?? 0));
  const most = effects.reduce((best, _, mix) => (size(mix) > size(best) ? mix : best), 0);
  const effect = effects[most];
  if (effect === undefined) return null;
  const p = effect.p ?? instead?.p ?? null;
  const off = Math.abs(effect.difference);
  const isOdd = off >= ODD_MIX.differenceAlone || (p !== null && p < ODD_MIX.p && off >= ODD_MIX.difference);
  return isOdd ? { mixId: effect.mixId, difference: effect.difference, p } : null;
}

function restP(
  fit: TwoWayFit,
  named: MixFinding['named'],
  mixIds: readonly string[],
  hasBounds: boolean,
): number | null {
  if (named === null || hasBounds) return null;
  const rest = mixIds.flatMap((mixId, mix) => (mixId === named.mixId ? [] : [mix]));
  const contrasts = blockContrasts(fit, rest);
  return contrasts === null ? null : Math.min(...contrasts.map(({ p }) => p));
}

/**
 * The readings as a table of logarithms. A lower bound stands in as what it is expected to be: above the bound, by the
 * scatter of the readings about their depth. Rearranged with the others it keeps the permutation test exact.
 */
export function logTable({ readings, depthsMm }: SeriesReadings) {
  const hasBounds = readings.some(({ isLowerBound }) => isLowerBound);
  const plain = readings.map(({ level, mix, y }) => ({ treatment: level, block: mix, y }));
  if (!hasBounds) return { table: plain, hasBounds };
  const levels = depthsMm.map((_, level) => {
    const own = readings.filter((reading) => reading.level === level);
    const exact = own.filter(({ isLowerBound }) => !isLowerBound).map(({ y }) => y);
    return exact.length > 0 ? exact.reduce((sum, y) => sum + y, 0) / exact.length : Math.max(...own.map(({ y }) => y));
  });
  const off = readings
    .filter(({ isLowerBound }) => !isLowerBound)
    .map(({ level, y }) => (y - (levels[level] ?? y)) ** 2);
  const scatter = Math.sqrt(off.reduce((sum, square) => sum + square, 0) / Math.max(1, off.length));
  const table = readings.map(({ level, mix, y, isLowerBound }) => {
    if (!isLowerBound || scatter === 0) return { treatment: level, block: mix, y };
    const middle = levels[level] ?? y;
    return { treatment: level, block: mix, y: middle + scatter * normalHazard((y - middle) / scatter) };
  });
  return { table, hasBounds };
}
