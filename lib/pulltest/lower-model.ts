import type { SeriesReading, SeriesReadings } from '@/lib/pulltest/series-readings';
import type { SeriesRefusal } from '@/lib/pulltest/series-refusal';
import { futureMixLevels, type MixLevels } from '@/lib/statistics/future-mix-levels';
import {
  futureMixLine,
  type MixLine,
  mixCounts,
  mixLineAt,
  mixLineBand,
  mixLineLeverage,
} from '@/lib/statistics/future-mix-line';
import { type Certainty, futureScatter, interpolatedFactor } from '@/lib/statistics/interpolated-factor';
import { lackOfFit } from '@/lib/statistics/lack-of-fit';
import { LEAST_SCATTER } from '@/lib/statistics/lower-percentile';
import type { FTest } from '@/lib/statistics/one-way-anova';

/** The middle and the lower value at one depth, N. */
export interface CurvePoint {
  readonly depthMm: number;
  readonly fittedN: number;
  readonly lowerN: number;
  /** Where the middle itself lies, with 95 % confidence; null depth by depth, or where it cannot be told. */
  readonly middleBand: { readonly lowN: number; readonly highN: number } | null;
}

/** Lower values of a series at its depths: from a line of ln load on ln depth, or depth by depth. */
export type LowerModel =
  | {
      readonly kind: 'line';
      readonly line: MixLine;
      readonly certainty: Certainty;
      /** Scatter of one specimen of a future mix, of logarithms, as seen. */
      readonly scatter: number;
      /** Whether the line misses more than the scatter explains; null where that cannot be asked. */
      readonly lackOfFit: FTest | null;
      readonly shallowestMm: number;
      readonly deepestMm: number;
    }
  | {
      readonly kind: 'levels';
      readonly levels: MixLevels;
      readonly certainty: Certainty;
      readonly scatter: number;
      /** Why there is no line: one depth only, or a line that does not fit. */
      readonly because: 'one-depth' | 'line-does-not-fit';
      readonly lackOfFit: FTest | null;
      readonly depthsMm: readonly number[];
    };

export type LowerModelResult =
  | { readonly ok: true; readonly model: LowerModel }
  | { readonly ok: false; readonly code: SeriesRefusal };

/** A line is given up where its lack of fit has a p below this. */
const LACK_OF_FIT_P = 0.05;
/** More lower bounds than this share, and only "at least" is said. */
const MOST_BOUNDS = 0.5;
const LEAST_EXACT = 3;
const LEAST_MIXES = 3;

/**
 * The model of a series' lower values for a joint glued with a future mix, or why there is none. ln(load) throughout:
 * joints scatter in percent, and bounds transform back exactly.
 *
 * Order of the questions: anything to count; a joint that fell out; enough that failed themselves; three mixes; a line
 * that rises; lack of fit; and whether a lower value is left that is more than nothing.
 */
export function lowerModel(series: SeriesReadings, certainty: Certainty): LowerModelResult {
  const fitted = fittedModel(series, certainty);
  if (fitted.ok && !hasLowerValues(fitted.model)) return { ok: false, code: 'scatter-too-wide' };
  return fitted;
}

/** On a line the least lower value stands at an end: its logarithm bends downwards from the middle. */
function hasLowerValues(model: LowerModel): boolean {
  const depthsMm = model.kind === 'line' ? [model.shallowestMm, model.deepestMm] : model.depthsMm;
  return depthsMm.every((depthMm) => (lowerN(model, depthMm) ?? 0) > 0);
}

function fittedModel(series: SeriesReadings, certainty: Certainty): LowerModelResult {
  const refusal = earlyRefusal(series);
  if (refusal !== null) return { ok: false, code: refusal };
  const { readings, depthsMm } = series;
  const levels = futureMixLevels(readings);
  if (depthsMm.length === 1) {
    if (!levels.ok) return { ok: false, code: levelRefusal(series, levels.code) };
    return { ok: true, model: levelModel(series, levels, certainty, 'one-depth', null) };
  }
  const line = futureMixLine(readings);
  if (!line.ok) {
    const code = line.code === 'one-level' ? 'too-few-readings' : levelRefusal(series, line.code);
    return { ok: false, code };
  }
  if (!(line.slope > 0)) return { ok: false, code: 'slope-not-positive' };
  const misfit = levels.ok ? misfitOf(line, levels) : null;
  if (levels.ok && misfit !== null && misfit.p < LACK_OF_FIT_P) {
    return { ok: true, model: levelModel(series, levels, certainty, 'line-does-not-fit', misfit) };
  }
  return {
    ok: true,
    model: {
      kind: 'line',
      line,
      certainty,
      scatter: futureScatter(line.scatter),
      lackOfFit: misfit,
      shallowestMm: depthsMm[0] ?? 0,
      deepestMm: depthsMm.at(-1) ?? 0,
    },
  };
}

/** Points of the curve that is drawn and searched. Chosen. */
const CURVE_POINTS = 33;

/** The lower values from the shallowest to the deepest tested depth, rising: along the line, or depth by depth. */
export function lowerCurve(model: LowerModel): CurvePoint[] {
  const depths = model.kind === 'line' ? ladder(model.shallowestMm, model.deepestMm) : model.depthsMm;
  return depths.map((depthMm) => {
    const fitted = fittedN(model, depthMm) ?? 0;
    const reach = model.kind === 'line' ? mixLineBand(model.line, Math.log(depthMm)) : null;
    const highN = reach === null ? null : fitted * Math.exp(reach);
    // A band too wide for a number says nothing: none is drawn.
    const middleBand =
      reach === null || highN === null || !Number.isFinite(highN) ? null : { lowN: fitted * Math.exp(-reach), highN };
    return { depthMm, fittedN: fitted, lowerN: lowerN(model, depthMm) ?? 0, middleBand };
  });
}

function ladder(from: number, to: number): number[] {
  const last = CURVE_POINTS - 1;
  return Array.from({ length: CURVE_POINTS }, (_, i) => (i === last ? to : from * (to / from) ** (i / last)));
}

function earlyRefusal({ readings, fellOut }: SeriesReadings): SeriesRefusal | null {
  if (fellOut > 0) return 'fell-out';
  if (readings.length === 0) return 'no-readings';
  const exact = readings.filter(({ isLowerBound }) => !isLowerBound).length;
  if (exact < LEAST_EXACT) return 'too-few-exact';
  if (readings.length - exact > MOST_BOUNDS * readings.length) return 'too-many-bounds';
  if (!hasEnoughMixes(mixCounts(readings.map(({ mix }) => mix)))) return 'fewer-than-3-mixes';
  return null;
}

/** Three mixes with two readings or more; or three and more readings, each of a mix of its own. */
function hasEnoughMixes(counts: readonly number[]): boolean {
  const isEachItsOwn = counts.every((count) => count === 1);
  return (isEachItsOwn ? counts.length : counts.filter((count) => count >= 2).length) >= LEAST_MIXES;
}

function levelRefusal(series: SeriesReadings, code: string): SeriesRefusal {
  switch (code) {
    case 'no-readings':
    case 'not-connected':
    case 'too-few-readings':
    case 'did-not-converge':
      return code;
    default: {
      const isBoundsOnly = (same: (reading: SeriesReading) => boolean) =>
        series.readings.filter(same).every(({ isLowerBound }) => isLowerBound);
      if (series.mixIds.some((_, mix) => isBoundsOnly((reading) => reading.mix === mix))) return 'mix-of-bounds-only';
      if (series.depthsMm.some((_, level) => isBoundsOnly((reading) => reading.level === level))) {
        return 'depth-of-bounds-only';
      }
      return 'too-few-readings';
    }
  }
}

function levelModel(
  { depthsMm }: SeriesReadings,
  levels: MixLevels,
  certainty: Certainty,
  because: 'one-depth' | 'line-does-not-fit',
  misfit: FTest | null,
): LowerModel {
  const scatter = futureScatter(levels.scatter);
  return { kind: 'levels', levels, certainty, scatter, because, lackOfFit: misfit, depthsMm };
}

/** Both models contain the mixes, so that what is compared with is the scatter of depth within mix. */
function misfitOf(line: MixLine, levels: MixLevels): FTest | null {
  const { mixes, errorMean } = levels.scatter;
  const pureFreedom = errorMean === null ? levels.scatter.freedom : levels.scatter.freedom - mixes + 1;
  const lineFreedom = line.scatter.errorMean === null ? line.scatter.freedom : line.scatter.freedom - mixes + 1;
  return lackOfFit(
    { squares: (line.scatter.errorMean ?? line.scatter.mixMean) * lineFreedom, freedom: lineFreedom },
    { squares: (errorMean ?? levels.scatter.mixMean) * pureFreedom, freedom: pureFreedom },
  );
}

/** Load a joint of this depth holds in the middle, N; null outside the tested depths, or between them without a line. */
export function fittedN(model: LowerModel, depthMm: number): number | null {
  const place = placeOf(model, depthMm);
  return place === null ? null : Math.exp(place.y);
}

/**
 * With the certainty of the model, the share of joints of a future mix that shall hold more than this, N; null as above.
 * Scatter below 0.05 is not believed.
 */
export function lowerN(model: LowerModel, depthMm: number): number | null {
  const place = placeOf(model, depthMm);
  return place === null ? null : Math.exp(place.y - place.factor() * Math.max(model.scatter, LEAST_SCATTER));
}

/** The factor T that the lower value at this depth was made with; null as above. */
export function factorAt(model: LowerModel, depthMm: number): number | null {
  return placeOf(model, depthMm)?.factor() ?? null;
}

function placeOf(model: LowerModel, depthMm: number): { y: number; factor: () => number } | null {
  if (model.kind === 'line') {
    const { line, certainty, shallowestMm, deepestMm } = model;
    if (!(depthMm >= shallowestMm - 1e-9 && depthMm <= deepestMm + 1e-9)) return null;
    const x = Math.log(depthMm);
    return {
      y: mixLineAt(line, x),
      factor: () => interpolatedFactor(line.scatter, mixLineLeverage(line, x), certainty),
    };
  }
  const level = model.depthsMm.findIndex((depth) => Math.abs(depth - depthMm) < 0.05);
  const y = model.levels.means[level];
  const leverage = model.levels.leverages[level];
  if (y === undefined || leverage === undefined) return null;
  return { y, factor: () => interpolatedFactor(model.levels.scatter, leverage, model.certainty) };
}
