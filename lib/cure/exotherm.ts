import type { AdhesiveSheet, PotLifePoint } from '@/lib/cure/adhesive-sheet';
import { type CupHistory, compactCupSurfaceMm2, cupHistory } from '@/lib/cure/heat-balance';

/** How hot a mix gets when it is left standing in its cup. */
type HeatLevel = 'cool' | 'warm' | 'hot' | 'smoking';

/** Why a mass by itself asks for care. */
export type MassWarning =
  | { readonly code: 'above-sheet-maximum'; readonly massG: number; readonly limitG: number }
  /** More than the sheet's cup: its pot life is shorter; spread it out. */
  | { readonly code: 'above-tested-mass'; readonly massG: number; readonly limitG: number }
  /** A mass at which cups have been seen to overheat. */
  | { readonly code: 'large-for-its-speed'; readonly massG: number; readonly limitG: number };

export type Exotherm =
  | {
      readonly ok: true;
      /** Minutes from mixing; null where it does not get there. */
      readonly endOfUseMinutes: number | null;
      readonly gelMinutes: number | null;
      readonly peakMinutes: number;
      /** An upper bound: a compact cup in still air, nothing used from it. */
      readonly peakC: number;
      readonly level: HeatLevel;
    }
  /** No pot life to set the speed by, or one that the model cannot have (a cup that would never get so warm). */
  | { readonly ok: false; readonly code: 'no-pot-life' | 'not-matched' };

/** Chosen: hot to the touch; where skin burns within a minute and thin plastic softens; where epoxy begins to fume. */
const LEVELS: readonly (readonly [number, HeatLevel])[] = [
  [45, 'cool'],
  [60, 'warm'],
  [150, 'hot'],
];

/** Chosen: masses above which cups have been seen to smoke. A pot life below 8 min is of the five-minute class. */
const LARGE_G = 200;
const LARGE_FAST_G = 50;
const FAST_MINUTES = 8;

/**
 * A lumped estimate of a cup's heat: of `massG`, in a room of `roomC`, its parts mixed at `startC` (degC). The speed of
 * the model is set so that it reproduces the sheet's nearest pot life by that point's own end criterion.
 * Throws RangeError for a mass of 0 or less. Source: `heat-balance.ts`. It warns; it is no promise of temperatures.
 * Example: 30 min at 100 g and 25 degC: the same cup is at its end after 30.0, gels at 31.9, and peaks at 220 degC.
 */
export function exotherm(
  sheet: Pick<AdhesiveSheet, 'potLife'>,
  mix: { readonly massG: number; readonly roomC: number; readonly startC: number },
): Exotherm {
  const { massG, roomC, startC } = mix;
  if (!(massG > 0)) throw new RangeError(`exotherm needs a mass above 0 g, got ${massG}`);
  const point = nearestPoint(sheet.potLife, massG, startC);
  if (point === null) return { ok: false, code: 'no-pot-life' };
  const ratePerMinute = matchedRate(point);
  if (ratePerMinute === null) return { ok: false, code: 'not-matched' };
  const history = cupHistory(ratePerMinute, { massG, roomC, startC, surfaceMm2: compactCupSurfaceMm2(massG) });
  const { peakC, peakMinutes, gelMinutes, thickMinutes } = history;
  const level = LEVELS.find(([belowC]) => peakC < belowC)?.[1] ?? 'smoking';
  return { ok: true, endOfUseMinutes: thickMinutes, gelMinutes, peakMinutes, peakC, level };
}

/** What speaks against a mass before anything is computed. */
export function massWarnings(
  sheet: Pick<AdhesiveSheet, 'potLife' | 'maxMassG'>,
  massG: number,
): readonly MassWarning[] {
  const warnings: MassWarning[] = [];
  const { maxMassG } = sheet;
  if (maxMassG !== undefined && massG > maxMassG) {
    warnings.push({ code: 'above-sheet-maximum', massG, limitG: maxMassG });
  }
  if (sheet.potLife.length === 0) return warnings;
  const testedG = Math.max(...sheet.potLife.map((point) => point.massG));
  if (massG > testedG) warnings.push({ code: 'above-tested-mass', massG, limitG: testedG });
  const isFast = sheet.potLife.some((point) => point.minutes < FAST_MINUTES);
  const limitG = isFast ? LARGE_FAST_G : LARGE_G;
  if (massG > limitG) warnings.push({ code: 'large-for-its-speed', massG, limitG });
  return warnings;
}

function nearestPoint(points: readonly PotLifePoint[], massG: number, temperatureC: number): PotLifePoint | null {
  // Ten degrees count like a change of mass by a factor of e: chosen.
  const distance = (point: PotLifePoint) =>
    Math.abs(Math.log(point.massG / massG)) + Math.abs(point.temperatureC - temperatureC) / 10;
  const [first, ...others] = points;
  if (first === undefined) return null;
  return others.reduce((best, point) => (distance(point) < distance(best) ? point : best), first);
}

/** The instant in a cup's history that ends a criterion's test, in minutes. */
function endOfTest(point: PotLifePoint, history: CupHistory): number | null {
  switch (point.criterion) {
    case 'gel':
      return history.gelMinutes;
    case 'cup-reaches-50C':
      return history.at50CMinutes;
    case 'cup-reaches-40C-less-margin':
      // Printed as the time to 40 degC less a fifth: common practice, no source.
      return history.at40CMinutes === null ? null : history.at40CMinutes * 0.8;
    case 'viscosity-doubled':
    case 'standard-cup':
    case 'thin-film-workable':
    case 'unknown':
      return history.thickMinutes;
  }
}

const MOST_TRIES = 60;
const MATCHED = 1e-6;
/** Largest change of the rate from one try to the next. */
const BOLDEST = 4;

/** The rate constant with which the model ends the test of `point` on time; null when none does. */
function matchedRate(point: PotLifePoint): number | null {
  const isFilm = point.criterion === 'thin-film-workable';
  const cup = {
    massG: point.massG,
    roomC: point.temperatureC,
    startC: point.temperatureC,
    surfaceMm2: isFilm ? Number.POSITIVE_INFINITY : compactCupSurfaceMm2(point.massG),
  };
  let ratePerMinute = 0.05 / point.minutes;
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const minutes = endOfTest(point, cupHistory(ratePerMinute, cup));
    // Time goes nearly with the inverse of the rate, so this closes in by a factor of several a try.
    const correction = minutes === null ? BOLDEST : minutes / point.minutes;
    if (Math.abs(correction - 1) < MATCHED) return ratePerMinute;
    ratePerMinute *= Math.min(BOLDEST, Math.max(1 / BOLDEST, correction));
  }
  return null;
}
