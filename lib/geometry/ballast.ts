import type { CarriedItem } from '@/lib/geometry/flotation';

/** What ballast and rattles are made of. */
export const BALLAST_METALS = ['lead', 'tungsten', 'tin', 'steel', 'brass'] as const;
export type BallastMetal = (typeof BALLAST_METALS)[number];

/**
 * g/mL at room temperature. Source: handbook values of the metals, from memory; tungsten as the sintered alloys that
 * weights are made of, 17 to 18.5, with the middle taken.
 */
export const BALLAST_DENSITY: Readonly<Record<BallastMetal, number>> = {
  lead: 11.34,
  tungsten: 17.8,
  tin: 7.3,
  steel: 7.85,
  brass: 8.5,
};

/** A weight in the body or on it. */
export interface BallastItem {
  readonly name: string;
  readonly metal: BallastMetal;
  readonly massG: number;
  /** Its middle, from the nose and above the axis. */
  readonly xMm: number;
  readonly zMm: number;
  /** In a hole of the body; otherwise it hangs in the water. */
  readonly isInside: boolean;
}

/** A weight as the body carries it. */
export function carriedBallast({ metal, massG, xMm, zMm, isInside }: BallastItem): CarriedItem {
  return { massG, xMm, zMm, volumeMl: massG / BALLAST_DENSITY[metal], isInside };
}
