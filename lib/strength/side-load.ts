/** A pin of length l in wood that crushes at q N per mm, pushed sideways `armMm` above the wood. */
export interface SideLoadedPin {
  readonly lengthMm: number;
  readonly armMm: number;
  /** Crushing resistance per length, N/mm. */
  readonly crushNPerMm: number;
  /** Plastic moment of the pin, N mm. */
  readonly plasticNmm: number;
}

/** Load at which a stiff pin turns in the wood. e = 0: 0.414 q l. */
export function rigidTurnN({ lengthMm, armMm, crushNPerMm }: SideLoadedPin): number {
  const arm = lengthMm + 2 * armMm;
  return crushNPerMm * (Math.hypot(arm, lengthMm) - arm);
}

/** Load at which the pin bends at one plastic hinge inside the wood. e = 0: the square root of 2 M q. */
export function hingeN({ armMm, crushNPerMm, plasticNmm }: SideLoadedPin): number {
  return crushNPerMm * (Math.sqrt(armMm * armMm + (2 * plasticNmm) / crushNPerMm) - armMm);
}

/**
 * First visible bending of a shank pushed sideways: the lesser of turning and bending.
 *
 * Source: Johansen's yield theory for a pin that stands out of the wood; the hinge case is Riberholt's for glued-in
 * rods (summary of Lippert 2002 pp. 185-191, read), both agree with AWC TR-12 with a gap (from memory).
 */
export function firstBendingN(pin: SideLoadedPin): number {
  return Math.min(rigidTurnN(pin), hingeN(pin));
}

/** Length from which on the pin bends rather than turns: where both loads are the same. .041 in pair: 0.363 in. */
export function hingeTakesOverMm(pin: Omit<SideLoadedPin, 'lengthMm'>): number {
  const crushed = hingeN({ ...pin, lengthMm: 0 }) / pin.crushNPerMm;
  return crushed + Math.sqrt(2 * crushed * crushed + 4 * crushed * pin.armMm);
}
