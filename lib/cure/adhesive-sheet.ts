import type { FigureSource } from '@/lib/materials/figure-source';

/**
 * What a data sheet says about an adhesive or a coat: the figures every clock is computed from.
 * A figure the sheet does not give stays absent; nothing here has a silent default.
 */

/** A plausible box round a central value; `low <= central <= high`. */
export interface Box {
  readonly low: number;
  readonly central: number;
  readonly high: number;
}

/** What ends the pot life in the test behind the figure. Figures with different criteria are never compared. */
export const POT_LIFE_CRITERIA = [
  'viscosity-doubled',
  'cup-reaches-50C',
  'cup-reaches-40C-less-margin',
  'gel',
  'standard-cup',
  'thin-film-workable',
  'unknown',
] as const;
export type PotLifeCriterion = (typeof POT_LIFE_CRITERIA)[number];

/** One pot life as printed: meaningless without its mass, temperature and end criterion. */
export interface PotLifePoint {
  readonly minutes: number;
  readonly massG: number;
  readonly temperatureC: number;
  readonly criterion: PotLifeCriterion;
}

/** How the rate of cure follows temperature. */
export type RateLaw =
  | { readonly kind: 'arrhenius'; readonly activationEnergyKjPerMol: Box }
  /** The rate doubles every `doublingC` degrees: 2 ** ((t - referenceC) / doublingC). */
  | { readonly kind: 'doubling'; readonly doublingC: Box }
  /** Not a reaction that follows temperature alone (moisture, solvent, light): plain hours, with limits. */
  | { readonly kind: 'plain-hours' };

/** The milestones a cure clock can reach. `recoat-by` closes a window; all others open something. */
export const MILESTONES = ['handle', 'sand', 'recoat-from', 'recoat-by', 'paint', 'pull-test', 'ship'] as const;
export type Milestone = (typeof MILESTONES)[number];

/** Names of the figures that carry a source. */
export type FigureName = 'rateLaw' | 'minCureC' | 'potLife' | 'massExponent' | 'density' | 'ratio' | Milestone;

export interface AdhesiveSheet {
  /** Temperature at which the milestone hours are stated, degC. */
  readonly referenceC: number;
  readonly rateLaw: RateLaw;
  /** Below this, ready clocks stand still, degC. */
  readonly minCureC: number;
  /** Pot lives as printed, at least one for a two-part adhesive, none for a one-part. */
  readonly potLife: readonly PotLifePoint[];
  /** Exponent b of pot life ~ mass^-b; absent: the default box. */
  readonly massExponent?: Box;
  /** Hours at `referenceC` from setting to each milestone. Absent: the sheet does not say. */
  readonly milestoneHours: { readonly [M in Milestone]?: number };
  /** Wall-clock hours after which recoating without sanding is over however cold it was. Absent: `recoat-by` itself. */
  readonly recoatCapHours?: number;
  /** What to do when the recoat window has closed, in the sheet's words. Absent: wash, dry, sand. */
  readonly recoatRemedy?: string;
  /** Largest mass the sheet allows in one cup, g. */
  readonly maxMassG?: number;
  /** Densities and the mixing ratio A to B, with the basis it is stated on. */
  readonly densityA?: number;
  readonly densityB?: number;
  readonly ratio?: { readonly partsA: number; readonly partsB: number; readonly basis: 'mass' | 'volume' };
  readonly sources: { readonly [F in FigureName]?: FigureSource };
}
