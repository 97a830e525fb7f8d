import type { FigureSource } from '@/lib/materials/figure-source';
import type { GravityBasis } from '@/lib/materials/specific-gravity';
import type { WoodGroup } from '@/lib/materials/wood-regression';

/** Names of a wood's figures that carry a source. */
export const WOOD_FIGURES = [
  'specificGravity',
  'shearMpa',
  'greenShearMpa',
  'tensionPerpMpa',
  'greenTensionPerpMpa',
  'compressionPerpMpa',
  'compressionParallelMpa',
  'hardnessN',
] as const;
export type WoodFigureName = (typeof WOOD_FIGURES)[number];

/**
 * What is known of a wood: clear straight-grained wood, means, at `figuresMoisturePercent`. A figure that is not known
 * stays absent. A figure without a source is the shop's own.
 */
export interface WoodSheet {
  readonly group: WoodGroup;
  readonly specificGravity: number;
  readonly gravityBasis: GravityBasis;
  readonly figuresMoisturePercent: number;
  /** Shear along the grain. */
  readonly shearMpa?: number;
  readonly greenShearMpa?: number;
  /** Tension across the grain, which is what splits. */
  readonly tensionPerpMpa?: number;
  readonly greenTensionPerpMpa?: number;
  readonly compressionPerpMpa?: number;
  readonly compressionParallelMpa?: number;
  /** Side hardness (Janka). */
  readonly hardnessN?: number;
  /** Moisture at which drying begins to strengthen; absent: 25 %. */
  readonly intersectionPercent?: number;
  /** Sold under one name at densities so far apart that only a weighed piece tells its strength. */
  readonly needsWeighing?: boolean;
  readonly sources: { readonly [F in WoodFigureName]?: FigureSource };
}
