import type { AdhesiveSheet, PotLifeCriterion, PotLifePoint } from '@/lib/cure/adhesive-sheet';
import { fitPotLife, type PotLifeBasis } from '@/lib/cure/pot-life-fit';

/** How long a cup can be used, from the start of mixing. */
interface PotLife {
  readonly ok: true;
  /** What a countdown runs to. */
  readonly lowerMinutes: number;
  readonly centralMinutes: number;
  readonly upperMinutes: number;
  /** What ends this pot life; carried along wherever the figure goes. */
  readonly criterion: PotLifeCriterion;
  readonly basis: PotLifeBasis;
  /** More than three times outside the sheet's masses, or more than 10 degC outside its temperatures. */
  readonly isExtrapolated: boolean;
}

export type PotLifeResult =
  | PotLife
  /** The sheet has no pot life: a one-part material, or a figure that is still to be entered. */
  | { readonly ok: false; readonly code: 'no-pot-life' }
  /** The sheet's points contradict each other: warmer or larger cups that last longer. */
  | { readonly ok: false; readonly code: 'points-contradict'; readonly criterion: PotLifeCriterion };

/** Both chosen. */
const EXTRAPOLATED_MASS_RATIO = 3;
const EXTRAPOLATED_C = 10;

/**
 * The pot life of a cup of `massG` (above 0) at `temperatureC`, the warmer of the room and the parts (degC).
 *
 * Points with different end criteria are never combined: each criterion is computed by itself, and the one whose
 * lower value ends first is the answer. Throws RangeError for a mass of 0 or less or a temperature that is not finite.
 * Source: Arrhenius' law in temperature; a power of the mass, chosen. Example: 30 min at 100 g and 25 degC: a cup of 9 g at 22 degC lasts 60.84 min, between
 * 40.70 and 102.61.
 */
export function potLife(
  sheet: Pick<AdhesiveSheet, 'potLife' | 'rateLaw' | 'massExponent'>,
  massG: number,
  temperatureC: number,
): PotLifeResult {
  if (!(massG > 0 && Number.isFinite(massG))) throw new RangeError(`potLife needs a mass above 0 g, got ${massG}`);
  if (!Number.isFinite(temperatureC)) throw new RangeError(`potLife needs a finite temperature, got ${temperatureC}`);
  let shortest: PotLifeResult = { ok: false, code: 'no-pot-life' };
  for (const criterion of new Set(sheet.potLife.map((point) => point.criterion))) {
    const points = sheet.potLife.filter((point) => point.criterion === criterion);
    const result = ofOneCriterion(sheet, points, criterion, massG, temperatureC);
    if (!result.ok) return result;
    if (!shortest.ok || result.lowerMinutes < shortest.lowerMinutes) shortest = result;
  }
  return shortest;
}

function ofOneCriterion(
  sheet: Pick<AdhesiveSheet, 'rateLaw' | 'massExponent'>,
  points: readonly PotLifePoint[],
  criterion: PotLifeCriterion,
  massG: number,
  temperatureC: number,
): PotLifeResult {
  const isExtrapolated = isOutside(points, massG, temperatureC);
  const fit = fitPotLife(sheet, points, massG, temperatureC, isExtrapolated);
  if (fit === null) return { ok: false, code: 'points-contradict', criterion };
  return { ok: true, ...fit, criterion, isExtrapolated };
}

function isOutside(points: readonly PotLifePoint[], massG: number, temperatureC: number): boolean {
  const masses = points.map((point) => point.massG);
  const temperatures = points.map((point) => point.temperatureC);
  return (
    massG * EXTRAPOLATED_MASS_RATIO < Math.min(...masses) ||
    massG > Math.max(...masses) * EXTRAPOLATED_MASS_RATIO ||
    temperatureC < Math.min(...temperatures) - EXTRAPOLATED_C ||
    temperatureC > Math.max(...temperatures) + EXTRAPOLATED_C
  );
}
