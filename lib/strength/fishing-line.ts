import { chosen, type FigureSource, fromMemory, published } from '@/lib/materials/figure-source';
import { poundsForce } from '@/lib/units/force-and-length';

/** `class`: made to break at or under its class when wet. The others promise not less than their label. */
export const LINE_TYPES = ['class', 'mono', 'fluorocarbon', 'braid'] as const;
export type LineType = (typeof LINE_TYPES)[number];

/** The line a model is made for. */
export interface FishingLine {
  /** Label, N. */
  readonly labelN: number;
  readonly type: LineType;
  /** Share of the line's strength that the knot keeps; null: the usual. */
  readonly knotShare: number | null;
  /** Drag over label; null: the usual for line and label. */
  readonly dragShare: number | null;
}

/** What a line may break at over its label. A "12" has been measured at 18 to 19 lb; braid overtests often. */
export const OVERTEST: Readonly<Record<LineType, number>> = { class: 1.1, mono: 1.25, fluorocarbon: 1.25, braid: 1.5 };
export const OVERTEST_SOURCE: FigureSource = chosen(
  'Labels promise "not less than", class lines "not more than"; overtest of half again has been measured',
);

/** Knots keep 50 to 95 percent: the most that a knot could let through. */
export const USUAL_KNOT_SHARE = 0.95;
export const KNOT_SOURCE: FigureSource = published(
  "Anglers' tests: knots keep about 50 to 95 percent; the most is taken",
);

/** Mono, by label: 20 % to 20 lb, 25 % to 50 lb, 30 % above. Others: a third, the usual at the strike. */
export function usualDragShare(type: LineType, labelN: number): number {
  if (type !== 'mono') return 1 / 3;
  if (labelN <= poundsForce(20)) return 0.2;
  return labelN <= poundsForce(50) ? 0.25 : 0.3;
}
export const DRAG_SOURCE: FigureSource = published(
  "Anglers' articles: 20 to 30 percent with mono, a third at the strike",
);

/** International line classes: kg and the label in pounds. */
export const LINE_CLASSES = [
  { classKg: 1, labelLb: 2 },
  { classKg: 2, labelLb: 4 },
  { classKg: 3, labelLb: 6 },
  { classKg: 4, labelLb: 8 },
  { classKg: 6, labelLb: 12 },
  { classKg: 8, labelLb: 16 },
  { classKg: 10, labelLb: 20 },
  { classKg: 15, labelLb: 30 },
  { classKg: 24, labelLb: 50 },
  { classKg: 37, labelLb: 80 },
  { classKg: 60, labelLb: 130 },
] as const;

export const STANDARD_GRAVITY = 9.80665;
export const GRAVITY_SOURCE: FigureSource = fromMemory('Conventional gravity, 9.80665 m/s²');

/** Greatest breaking load of a class, N: 10 kg is 98.07 N, 22.05 lbf. */
export function lineClassN(classKg: number): number {
  return classKg * STANDARD_GRAVITY;
}
