import type { FigureSource } from '@/lib/materials/figure-source';

/** Kinds of adhesive that the strength of a bond depends on. Only the first has evidence before the shop's own pulls. */
export const BOND_CLASSES = ['slow-epoxy', 'fast-epoxy', 'polyurethane', 'cyanoacrylate', 'other'] as const;
export type BondClass = (typeof BOND_CLASSES)[number];

/** What the data sheet says of water: `immersion`, `splash` only, or `none`. */
export const WATER_RATINGS = ['immersion', 'splash', 'none'] as const;
export type WaterRating = (typeof WATER_RATINGS)[number];

/** The strength side of an adhesive: what the rules ask of it. A figure the sheet does not give stays absent. */
export interface AdhesiveStrengthSheet {
  readonly bondClass: BondClass;
  /** Widest gap between wire and wood it fills, mm from wall to wire. */
  readonly maxGapMm?: number;
  readonly water?: WaterRating;
  /** Warmest service temperature, degC. */
  readonly maxServiceC?: number;
  readonly sources: {
    readonly maxGapMm?: FigureSource;
    readonly water?: FigureSource;
    readonly maxServiceC?: FigureSource;
  };
}
