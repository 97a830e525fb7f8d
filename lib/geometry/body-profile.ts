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
