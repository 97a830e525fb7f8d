import type { FigureSource } from '@/lib/materials/figure-source';

/** Without its temper a wire's strength is uncertain by a factor of three to four. */
export const WIRE_TEMPERS = ['spring', 'half-hard', 'soft'] as const;
export type WireTemper = (typeof WIRE_TEMPERS)[number];

export const WIRE_ALLOYS = ['stainless-302-304', 'stainless-316', 'brass', 'other'] as const;
export type WireAlloy = (typeof WIRE_ALLOYS)[number];

/**
 * What is known of a wire. Store the diameter, never a gauge number alone. `temper` null: nobody has said, and no
 * strength is computed. Tensile and yield strength are the maker's own statement and win over the tables.
 */
export interface WireSheet {
  readonly alloy: WireAlloy;
  readonly temper: WireTemper | null;
  readonly diameterMm: number;
  /** Least tensile strength stated. */
  readonly tensileMpa?: number;
  readonly yieldMpa?: number;
  readonly sources: { readonly tensileMpa?: FigureSource; readonly yieldMpa?: FigureSource };
}
