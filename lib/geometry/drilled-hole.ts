import { type AnchorFace, GREATEST_SLANT_DEG, type HolePlace } from '@/lib/geometry/shank-path';

/** A hole as a maker writes it down; null: nobody has said. */
export interface DrilledHole {
  /** The side it is drilled from. */
  readonly face: AnchorFace | null;
  /** From the nose; read for belly and back. */
  readonly xMm: number | null;
  /** Above the axis; read for nose and tail. */
  readonly zMm: number | null;
  /** Between the shank and the body's axis: 0 along it, 90 square to it. */
  readonly shankAngleDeg: number | null;
  /** The side its deep end lies towards; read for a slanted hole. */
  readonly leansTo: AnchorFace | null;
}

/** Whether a hole drilled from `face` can lean towards `side`: fore and aft for belly and back, up and down for the ends. */
export function canLeanTo(face: AnchorFace, side: AnchorFace): boolean {
  return isEnd(face) !== isEnd(side);
}

/**
 * The place of a hole in the body's middle plane, or null where something it needs was not said: the side, the place
 * on it, the angle, and for a slanted hole the way it leans.
 */
export function holePlace(hole: DrilledHole): HolePlace | null {
  const { face, xMm, zMm, shankAngleDeg, leansTo } = hole;
  if (face === null || shankAngleDeg === null) return null;
  if (isEnd(face) ? zMm === null : xMm === null) return null;
  const slantDeg = signedSlant(face, isEnd(face) ? shankAngleDeg : 90 - shankAngleDeg, leansTo);
  return slantDeg === null ? null : { face, xMm: xMm ?? 0, zMm: zMm ?? 0, slantDeg };
}

/** Positive towards tail and back, as `HolePlace` has it; null: slanted, and nobody has said which way. */
function signedSlant(face: AnchorFace, slantDeg: number, leansTo: AnchorFace | null): number | null {
  if (slantDeg === 0) return 0;
  if (leansTo === null || !canLeanTo(face, leansTo)) return null;
  return leansTo === 'tail' || leansTo === 'back' ? slantDeg : -slantDeg;
}

/** Angle to the body's axis and lean of a hole drilled from `face` at a signed slant: what a drawing was dragged to. */
export function drilledAngle(face: AnchorFace, slantDeg: number): Pick<DrilledHole, 'shankAngleDeg' | 'leansTo'> {
  if (!(Math.abs(slantDeg) <= GREATEST_SLANT_DEG)) {
    throw new RangeError(`drilledAngle needs a slant within ${GREATEST_SLANT_DEG} degrees, got ${slantDeg}`);
  }
  const tilt = Math.abs(slantDeg);
  const forward = isEnd(face) ? 'back' : 'tail';
  const backward = isEnd(face) ? 'belly' : 'nose';
  return {
    shankAngleDeg: isEnd(face) ? tilt : 90 - tilt,
    leansTo: tilt === 0 ? null : slantDeg > 0 ? forward : backward,
  };
}

function isEnd(face: AnchorFace): boolean {
  return face === 'nose' || face === 'tail';
}
