import type { CoverProfile } from '@/lib/geometry/cover';
import { FULL_COVER_DIAMETERS } from '@/lib/strength/bond-factors';

/**
 * Cover at a depth, put on the footing of a shank in endless wood.
 *
 * Every shank is near the skin where it enters: at depth s a square one in endless wood has a cover of s. Down to full
 * cover the distance is therefore judged against s itself: a square shank counts as fully covered from its mouth on,
 * and one that leans by an angle b from the skin as covered by 2.5 d sin b.
 */
export function equivalentCoverMm(distanceMm: number, depthMm: number, shankMm: number): number {
  const full = FULL_COVER_DIAMETERS * shankMm;
  if (depthMm >= full) return distanceMm;
  return depthMm <= 0 ? full : (distanceMm * full) / depthMm;
}

/** Equivalent cover of each step of depth down to `lengthMm`, taken at the step's beginning. */
export function coverCells(cover: CoverProfile, lengthMm: number, shankMm: number): readonly number[] {
  const count = Math.max(1, Math.ceil(lengthMm / cover.stepMm - 1e-9));
  return Array.from({ length: count }, (_, k) => {
    // The mouth itself has no depth to be judged by: it counts as the step below it.
    const index = Math.max(1, k);
    const distance = cover.distancesMm[index] ?? cover.distancesMm.at(-1) ?? 0;
    return equivalentCoverMm(distance, index * cover.stepMm, shankMm);
  });
}
