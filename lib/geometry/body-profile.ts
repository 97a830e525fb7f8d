/** Where along the body its height and width were measured. */
export interface ProfileStation {
  /** From the nose, mm. */
  readonly xMm: number;
  /** Half of the height and half of the width there, mm. */
  readonly halfHeightMm: number;
  readonly halfWidthMm: number;
}

/** A body as it was measured: stations in order from the nose to the tail. Empty: not measured yet. */
export type BodyProfile = readonly ProfileStation[];

/** Which half-size is meant. */
export type HalfSize = 'halfHeightMm' | 'halfWidthMm';

/**
 * Half of the height or of the width at `xMm` from the nose, mm: straight lines between stations, the end stations'
 * value beyond them. Throws RangeError for a profile without stations.
 */
export function halfSizeAt(profile: BodyProfile, size: HalfSize, xMm: number): number {
  const first = profile[0];
  if (first === undefined) throw new RangeError('halfSizeAt needs at least one station');
  let before = first;
  for (const station of profile) {
    if (station.xMm >= xMm) {
      const stretch = station.xMm - before.xMm;
      const share = stretch > 0 ? (xMm - before.xMm) / stretch : 1;
      return before[size] + Math.max(0, share) * (station[size] - before[size]);
    }
    before = station;
  }
  return before[size];
}
