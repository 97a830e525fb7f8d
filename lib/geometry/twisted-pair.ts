/** Two strands twisted together, each a helix of radius half the wire. */
export interface TwistedPair {
  /** Between a strand and the shank's axis. */
  readonly strandAngleDeg: number;
  /** Length of strand over length of shank. */
  readonly takeUp: number;
  readonly envelopeMm: number;
}

/** Steepest twist: beyond it the strands lock against each other. */
export const STEEPEST_TWIST_DEG = 45;

/**
 * Geometry of a twisted pair: `pitchMm` is the axial length of one full turn. .041 in wire at 3.5 turns per inch runs
 * at 24.27 degrees and takes 1.0969 of strand.
 *
 * Throws RangeError unless both lengths are positive.
 * Source: helix geometry, tan a = pi d / p (derived).
 */
export function twistedPair(wireDiameterMm: number, pitchMm: number): TwistedPair {
  if (!(wireDiameterMm > 0 && pitchMm > 0)) {
    throw new RangeError(`twistedPair needs a positive wire and pitch, got ${wireDiameterMm}, ${pitchMm}`);
  }
  const slope = (Math.PI * wireDiameterMm) / pitchMm;
  return {
    strandAngleDeg: (Math.atan(slope) * 180) / Math.PI,
    takeUp: Math.hypot(1, slope),
    envelopeMm: 2 * wireDiameterMm,
  };
}
