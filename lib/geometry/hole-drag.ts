import type { PlanePoint } from '@/lib/geometry/anchor-lines';
import type { Body } from '@/lib/geometry/body';
import {
  type AnchorFace,
  GREATEST_SLANT_DEG,
  type HolePlace,
  type ShankPath,
  shankPath,
} from '@/lib/geometry/shank-path';

/** What dragging and arrow keys step by: whole multiples, so that what is dragged can be read off a rule. */
export interface DragSteps {
  readonly depthMm: number;
  readonly placeMm: number;
  readonly angleDeg: number;
}

/** Where a shank was dragged to. */
export interface DraggedShank {
  readonly slantDeg: number;
  readonly depthMm: number;
}

/**
 * Lean and depth of a shank whose deep end was dragged to a point: whole steps, at least one step deep, no deeper than
 * the body has wood. Null where the body cannot hold such a hole: the drag then leaves everything as it is.
 */
export function draggedShank(body: Body, place: HolePlace, to: PlanePoint, steps: DragSteps): DraggedShank | null {
  const now = shankPath(body, place);
  if (!now.ok) return null;
  const x = to.x - now.path.entryX;
  const z = to.z - now.path.entryZ;
  const slantDeg = clamp(onStep(slantTowards(place.face, x, z), steps.angleDeg), GREATEST_SLANT_DEG);
  const turned = shankPath(body, { ...place, slantDeg });
  if (!turned.ok) return null;
  const along = x * turned.path.directionX + z * turned.path.directionZ;
  return { slantDeg, depthMm: roomFor(turned.path, along, steps.depthMm) };
}

/** A depth in whole steps, at least one, at most what the line has of wood (or one step, where it has less). */
export function roomFor({ throughMm }: Pick<ShankPath, 'throughMm'>, depthMm: number, stepMm: number): number {
  const most = Math.floor(throughMm / stepMm + 1e-9);
  return Math.max(1, Math.min(Math.round(depthMm / stepMm), most)) * stepMm;
}

/** A hole whose mouth was dragged to a point: along belly and back, up and down on nose and tail; null: off the body. */
export function draggedMouth(body: Body, place: HolePlace, to: PlanePoint, steps: DragSteps): HolePlace | null {
  const isAcross = place.face === 'belly' || place.face === 'back';
  const xMm = isAcross ? Math.max(body.noseMm, Math.min(body.tailMm, onStep(to.x, steps.placeMm))) : place.xMm;
  const zMm = isAcross ? place.zMm : onStep(to.z, steps.placeMm);
  const moved = { ...place, xMm, zMm };
  return shankPath(body, moved).ok ? moved : null;
}

/** Angle between a shank and a load dragged to a point seen from the middle of the eye, 0 to 90 in whole steps. */
export function draggedLoad(
  { directionX, directionZ }: Pick<ShankPath, 'directionX' | 'directionZ'>,
  fromEye: PlanePoint,
  steps: DragSteps,
): number {
  const length = Math.hypot(fromEye.x, fromEye.z);
  if (length === 0) return 0;
  const cosine = -(fromEye.x * directionX + fromEye.z * directionZ) / length;
  const angleDeg = (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI;
  return Math.min(90, onStep(angleDeg, steps.angleDeg));
}

/** The slant at which a shank from `face` runs along (x, z): `HolePlace` has its signs. */
function slantTowards(face: AnchorFace, x: number, z: number): number {
  switch (face) {
    case 'belly':
      return degrees(Math.atan2(x, z));
    case 'back':
      return degrees(Math.atan2(x, -z));
    case 'nose':
      return degrees(Math.atan2(z, x));
    case 'tail':
      return degrees(Math.atan2(z, -x));
  }
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

function onStep(value: number, step: number): number {
  // Adding 0 turns a negative zero into zero: it would be printed with its sign.
  return Math.round(value / step) * step + 0;
}

function clamp(value: number, most: number): number {
  return Math.max(-most, Math.min(most, value));
}
