import { type FigureSource, fromMemory } from '@/lib/materials/figure-source';

/**
 * Scatter of clear-wood properties from piece to piece of a species, as standard deviation over mean.
 * Source: Wood Handbook Table 5-6 (from memory; six of them confirmed from published standard deviations).
 */
export const CLEAR_WOOD_COV = {
  modulusOfRupture: 0.16,
  modulusOfElasticity: 0.22,
  compressionParallel: 0.18,
  compressionPerp: 0.28,
  shear: 0.14,
  tensionPerp: 0.25,
  hardness: 0.2,
  specificGravity: 0.1,
} as const;

export const VARIABILITY_SOURCE: FigureSource = fromMemory('Wood Handbook Table 5-6, scatter of clear wood');
