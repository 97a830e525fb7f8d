import { chosen, derived, type FigureSource, OWN_FIGURE } from '@/lib/materials/figure-source';
import { densityAt, gravity12FromDensity, gravityAt12 } from '@/lib/materials/specific-gravity';
import { strengthAtMoisture, USUAL_INTERSECTION_PERCENT } from '@/lib/materials/wood-moisture';
import { REGRESSION_SOURCE, regressedProperty } from '@/lib/materials/wood-regression';
import type { WoodFigureName, WoodSheet } from '@/lib/materials/wood-sheet';

/** A property of the very wood in hand, with how it was come by. */
export interface ResolvedFigure {
  readonly value: number;
  /** Standard deviation of its logarithm beyond what the sheet's own scatter of clear wood covers; 0 for a figure of the sheet. */
  readonly logSd: number;
  readonly source: FigureSource;
  /** Steps taken from the sheet's figure to this one, in words. */
  readonly steps: readonly string[];
}

/** What every strength formula needs to know of the wood. */
export interface ResolvedWood {
  /** Oven-dry mass over volume at 12 % moisture. */
  readonly gravity12: ResolvedFigure;
  readonly densityKgM3: number;
  readonly moisturePercent: number;
  readonly shearMpa: ResolvedFigure;
  readonly tensionPerpMpa: ResolvedFigure;
}

export type WoodResolution =
  | { readonly ok: true; readonly wood: ResolvedWood }
  | { readonly ok: false; readonly code: WoodRefusal };

export type WoodRefusal = 'weigh-the-wood' | 'moisture-outside' | 'green-figure-missing' | 'unusable-figure';

export interface WoodCondition {
  /** Density of the blank as weighed, at `moisturePercent`; null: not weighed. */
  readonly weighedDensityKgM3: number | null;
  /** Moisture of the body in use; null: 12 %. */
  readonly moisturePercent: number | null;
}

/** Moisture within which the strength estimates hold: a dry body. Source: chosen, the range of heated and open air. */
export const MOISTURE_RANGE_PERCENT = { low: 6, high: 20 } as const;
/** Moisture this near the figures' own needs no correction when there is no green figure to correct with. */
const NEAR_PERCENT = 3;
/**
 * Strength within a species rises with density to this power. Source: chosen, between 0.6 (glued-in rods, read) and
 * 1.3 (between hardwoods, derived).
 */
const DENSITY_POWER = 1;

const SCALED: FigureSource = chosen(
  'The figure of the species times weighed over tabulated density: between 0.6 and 1.3 as power',
);

/**
 * The figures of a wood in hand: of the sheet, scaled to the weighed density and corrected for moisture, or estimated
 * from specific gravity where the sheet has none.
 *
 * Refuses a wood that must be weighed and was not, moisture outside 6 to 20 percent, a moisture correction without a
 * green figure, and a figure that is not a positive number or not one of wood.
 */
export function resolveWood(sheet: WoodSheet, condition: WoodCondition): WoodResolution {
  const moisturePercent = condition.moisturePercent ?? 12;
  const { weighedDensityKgM3 } = condition;
  if (!(moisturePercent >= MOISTURE_RANGE_PERCENT.low && moisturePercent <= MOISTURE_RANGE_PERCENT.high)) {
    return { ok: false, code: 'moisture-outside' };
  }
  if (sheet.needsWeighing === true && weighedDensityKgM3 === null) return { ok: false, code: 'weigh-the-wood' };
  if (!isUsable(sheet, weighedDensityKgM3)) return { ok: false, code: 'unusable-figure' };
  const tabulated = gravityAt12(sheet.specificGravity, sheet.gravityBasis);
  const gravity = weighedDensityKgM3 === null ? tabulated : gravity12FromDensity(weighedDensityKgM3, moisturePercent);
  const ratio = gravity / tabulated;
  const shear = property(sheet, 'shearMpa', 'greenShearMpa', gravity, ratio, moisturePercent);
  if (shear === null) return { ok: false, code: 'green-figure-missing' };
  return {
    ok: true,
    wood: {
      gravity12: resolvedGravity(sheet, gravity, weighedDensityKgM3),
      densityKgM3: weighedDensityKgM3 ?? densityAt(gravity, moisturePercent),
      moisturePercent,
      shearMpa: shear,
      tensionPerpMpa: tension(sheet, gravity, ratio, moisturePercent),
    },
  };
}

/** Specific gravity of any wood a body could be made of; the strength estimates ask for a narrower range. */
const WOOD_GRAVITY = { low: 0.05, high: 1.3 } as const;

function isUsable(sheet: WoodSheet, weighedDensityKgM3: number | null): boolean {
  const given = [sheet.shearMpa, sheet.greenShearMpa, sheet.tensionPerpMpa, sheet.greenTensionPerpMpa];
  const moisture = sheet.figuresMoisturePercent;
  return (
    isWoodGravity(sheet.specificGravity) &&
    (weighedDensityKgM3 === null || isWoodGravity(weighedDensityKgM3 / 1000)) &&
    given.every((figure) => figure === undefined || (figure > 0 && Number.isFinite(figure))) &&
    moisture >= 0 &&
    moisture <= 30 &&
    (sheet.intersectionPercent === undefined || (sheet.intersectionPercent > 20 && sheet.intersectionPercent < 40))
  );
}

function isWoodGravity(gravity: number): boolean {
  return gravity >= WOOD_GRAVITY.low && gravity <= WOOD_GRAVITY.high;
}

function resolvedGravity(sheet: WoodSheet, gravity: number, weighed: number | null): ResolvedFigure {
  if (weighed !== null) {
    return {
      value: gravity,
      logSd: 0,
      source: { kind: 'own', text: 'Weighed by the shop' },
      steps: ['weighed density over 1000 and the moisture'],
    };
  }
  const steps = sheet.gravityBasis === 'at-12' ? [] : [`from the ${sheet.gravityBasis} volume to that at 12 %`];
  return { value: gravity, logSd: 0, source: sourceOf(sheet, 'specificGravity'), steps };
}

function property(
  sheet: WoodSheet,
  name: 'shearMpa',
  greenName: 'greenShearMpa',
  gravity: number,
  ratio: number,
  moisturePercent: number,
): ResolvedFigure | null {
  const given = sheet[name];
  if (given === undefined) {
    const { value, logSd } = regressedProperty('shear', sheet.group, gravity);
    if (Math.abs(moisturePercent - 12) > NEAR_PERCENT) return null;
    return { value, logSd, source: REGRESSION_SOURCE, steps: ['estimated from specific gravity'] };
  }
  const scaled = given * ratio ** DENSITY_POWER;
  const steps = ratio === 1 ? [] : ['scaled to the weighed density'];
  const source = ratio === 1 ? sourceOf(sheet, name) : SCALED;
  const green = sheet[greenName];
  if (Math.abs(moisturePercent - sheet.figuresMoisturePercent) < 1e-9)
    return { value: scaled, logSd: 0, source, steps };
  if (green === undefined || sheet.figuresMoisturePercent !== 12 || green >= given) {
    if (Math.abs(moisturePercent - sheet.figuresMoisturePercent) > NEAR_PERCENT) return null;
    return {
      value: scaled,
      logSd: 0,
      source,
      steps: [...steps, `taken as at ${sheet.figuresMoisturePercent} % moisture`],
    };
  }
  const intersection = sheet.intersectionPercent ?? USUAL_INTERSECTION_PERCENT;
  const factor = strengthAtMoisture(given, green, moisturePercent, intersection) / given;
  return {
    value: scaled * factor,
    logSd: 0,
    source: derived('Wood Handbook Eq. 5-3 on the figures at 12 % and green'),
    steps: [...steps, `corrected to ${moisturePercent} % moisture`],
  };
}

/** The moisture rule does not hold for tension across the grain: wetter than 12 %, the lesser of dry and green. */
function tension(sheet: WoodSheet, gravity: number, ratio: number, moisturePercent: number): ResolvedFigure {
  const given = sheet.tensionPerpMpa;
  if (given === undefined) {
    const { value, logSd } = regressedProperty('tensionPerp', sheet.group, gravity);
    return { value, logSd, source: REGRESSION_SOURCE, steps: ['estimated from specific gravity'] };
  }
  const green = sheet.greenTensionPerpMpa;
  const least = moisturePercent > 12 && green !== undefined ? Math.min(given, green) : given;
  return {
    value: least * ratio ** DENSITY_POWER,
    logSd: 0,
    source: ratio === 1 ? sourceOf(sheet, 'tensionPerpMpa') : SCALED,
    steps: ratio === 1 ? [] : ['scaled to the weighed density'],
  };
}

function sourceOf(sheet: WoodSheet, name: WoodFigureName): FigureSource {
  return sheet.sources[name] ?? OWN_FIGURE;
}
