import { type FigureSource, published } from '@/lib/materials/figure-source';
import { inches, poundsForce } from '@/lib/units/force-and-length';

/**
 * Withdrawal of fasteners from side grain. The ultimate loads are averages of tests; the code's are design values four
 * to six times lower. Never print one as the other.
 */
export const ULTIMATE_WITHDRAWAL_SOURCE: FigureSource = published(
  'Wood Handbook ch. 8 (FPL-GTR-282), average of tests',
);
export const DESIGN_WITHDRAWAL_SOURCE: FigureSource = published(
  'NDS 12.2, design value per length (from secondary texts)',
);

/** Shank diameter and length in the wood, mm; specific gravity at 12 % for the handbook, oven-dry for the code. */
export interface DrivenFastener {
  readonly gravity: number;
  readonly diameterMm: number;
  readonly lengthMm: number;
}

/** Plain nail or smooth pin, N. Eq. 8-1 (read): 54.12 G^2.5 D L. */
export function nailWithdrawalN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return 54.12 * gravity ** 2.5 * diameterMm * lengthMm;
}

/** Annularly threaded nail, N. Eq. 8-2a (read): 77.57 G^2 D L. */
export function ringNailWithdrawalN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return 77.57 * gravity ** 2 * diameterMm * lengthMm;
}

/** Pin driven into a tight hole, N. Eq. 8-9 (read): 45.51 G^2 D L. */
export function driftPinWithdrawalN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return 45.51 * gravity ** 2 * diameterMm * lengthMm;
}

/** Wood screw in a lead hole, N. Eq. 8-10 (read): 108.25 G^2 D L, L the threaded length. */
export function woodScrewWithdrawalN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return 108.25 * gravity ** 2 * diameterMm * lengthMm;
}

/** Lag screw, N. Eq. 8-14 (read): 125.4 G^1.5 D^0.75 L. */
export function lagScrewWithdrawalN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return 125.4 * gravity ** 1.5 * diameterMm ** 0.75 * lengthMm;
}

/** Design value of a lag screw, N. NDS 12.2-1 (read): 1800 G^1.5 D^0.75 lbf per inch. */
export function lagScrewDesignN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return poundsForce(1800 * gravity ** 1.5 * (diameterMm / inches(1)) ** 0.75 * (lengthMm / inches(1)));
}

/** Design value of a wood screw, N. NDS 12.2-2 (read): 2850 G^2 D lbf per inch. */
export function woodScrewDesignN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return poundsForce(2850 * gravity ** 2 * (diameterMm / inches(1)) * (lengthMm / inches(1)));
}

/** Design value of a plain nail, N. NDS 12.2-3 (read): 1380 G^2.5 D lbf per inch. */
export function nailDesignN({ gravity, diameterMm, lengthMm }: DrivenFastener): number {
  return poundsForce(1380 * gravity ** 2.5 * (diameterMm / inches(1)) * (lengthMm / inches(1)));
}
