import { chosen, derived } from '@/lib/materials/figure-source';
import type { FormulaCard, Working } from '@/lib/materials/formula-card';
import { input } from '@/lib/strength/estimate';
import {
  DRAG_SOURCE,
  type FishingLine,
  GRAVITY_SOURCE,
  KNOT_SOURCE,
  OVERTEST,
  OVERTEST_SOURCE,
  STANDARD_GRAVITY,
  USUAL_KNOT_SHARE,
  usualDragShare,
} from '@/lib/strength/fishing-line';

/** `fight`: against the drag. `snag`: pulled until the line breaks. `lift`: the fish swung out on the line. */
export const DEMAND_CASES = ['fight', 'snag', 'lift'] as const;
export type DemandCaseName = (typeof DEMAND_CASES)[number];

export interface DemandCase {
  readonly name: DemandCaseName;
  readonly loadN: number;
  readonly working: Working;
}

/** What an anchor must carry, before any factor. */
export interface Demand {
  readonly cases: readonly DemandCase[];
  /** The case with the greatest load. */
  readonly governing: DemandCase;
  /** What it meets in ordinary use. */
  readonly fightN: number;
}

export interface DemandSettings {
  /** Peak over drag when a fish surges; a load applied at once is twice itself. */
  readonly surgeFactor: number;
  /** Peak over weight when a fish is swung out. */
  readonly liftFactor: number;
}

/** Chosen: half again for a surge; two for a lift, the load of a weight let go at once. */
export const DEFAULT_DEMAND_SETTINGS: DemandSettings = { surgeFactor: 1.5, liftFactor: 2 };

const FIGHT_CARD: FormulaCard = {
  id: 'demand-fight',
  title: 'The fish runs against the drag',
  formula: 'drag x label x surge',
  source: derived('Drag as usually set, times the peak of a surge'),
  assumptions: ['A half-empty spool doubles the drag: set it with the spool as it is fished'],
  validity: '',
};

const SNAG_CARD: FormulaCard = {
  id: 'demand-snag',
  title: 'The lure hangs fast and the line is broken off',
  formula: 'overtest x label x knot',
  source: derived('The line should be the first to go: nothing pulls harder than it can'),
  assumptions: ['Pulled by hand past the drag'],
  validity: '',
};

const LIFT_CARD: FormulaCard = {
  id: 'demand-lift',
  title: 'The fish is swung out on the line',
  formula: 'mass x g x lift',
  source: derived('A weight let go at once pulls twice itself'),
  assumptions: [],
  validity: '',
};

/**
 * What a line and a fish ask of an anchor. `fishMassG` null: no fish is lifted.
 *
 * Throws RangeError unless the label is positive, shares lie in (0, 1], and a given mass is positive.
 */
export function demand(line: FishingLine, fishMassG: number | null, settings = DEFAULT_DEMAND_SETTINGS): Demand {
  const knot = line.knotShare ?? USUAL_KNOT_SHARE;
  const drag = line.dragShare ?? usualDragShare(line.type, line.labelN);
  if (!(line.labelN > 0 && Number.isFinite(line.labelN))) {
    throw new RangeError(`demand needs a positive label, got ${line.labelN}`);
  }
  for (const share of [knot, drag]) {
    if (!(share > 0 && share <= 1)) throw new RangeError(`demand needs shares in (0, 1], got ${share}`);
  }
  if (fishMassG !== null && !(fishMassG > 0)) throw new RangeError(`demand needs a positive mass, got ${fishMassG}`);
  const fight = fightCase(line, drag, settings.surgeFactor);
  const cases = [fight, snagCase(line, knot)];
  if (fishMassG !== null) cases.push(liftCase(fishMassG, settings.liftFactor));
  const governing = cases.reduce((greatest, one) => (one.loadN > greatest.loadN ? one : greatest));
  return { cases, governing, fightN: fight.loadN };
}

const TYPED = derived('Of the model');

function fightCase({ labelN, dragShare }: FishingLine, drag: number, surge: number): DemandCase {
  const working = {
    card: FIGHT_CARD,
    inputs: [
      input('label', 'Label of the line', labelN, 'N', TYPED),
      input('drag', 'Drag over label', drag, 'none', dragShare === null ? DRAG_SOURCE : TYPED),
      input('surge', 'Peak over drag', surge, 'none', chosen('Between a steady pull, 1, and one applied at once, 2')),
    ],
  };
  return { name: 'fight', loadN: drag * labelN * surge, working };
}

function snagCase({ labelN, type, knotShare }: FishingLine, knot: number): DemandCase {
  const working = {
    card: SNAG_CARD,
    inputs: [
      input('label', 'Label of the line', labelN, 'N', TYPED),
      input('overtest', 'What it may break at over its label', OVERTEST[type], 'none', OVERTEST_SOURCE),
      input('knot', 'What the knot keeps', knot, 'none', knotShare === null ? KNOT_SOURCE : TYPED),
    ],
  };
  return { name: 'snag', loadN: OVERTEST[type] * labelN * knot, working };
}

function liftCase(fishMassG: number, factor: number): DemandCase {
  const working = {
    card: LIFT_CARD,
    inputs: [
      input('mass', 'Fish', fishMassG, 'g', TYPED),
      input('g', 'Gravity, m/s²', STANDARD_GRAVITY, 'none', GRAVITY_SOURCE),
      input('lift', 'Peak over weight', factor, 'none', chosen('A weight let go at once')),
    ],
  };
  return { name: 'lift', loadN: (fishMassG / 1000) * STANDARD_GRAVITY * factor, working };
}
