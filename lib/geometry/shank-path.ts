import { type Body, sectionAt } from '@/lib/geometry/body';
import type { ProfileStation } from '@/lib/geometry/body-profile';

/** The side of the body a hole is drilled from. */
export const ANCHOR_FACES = ['nose', 'tail', 'belly', 'back'] as const;
export type AnchorFace = (typeof ANCHOR_FACES)[number];

/** Where a hole starts and how it leans, in the body's middle plane. */
export interface HolePlace {
  readonly face: AnchorFace;
  /** From the nose, for belly and back; not read for nose and tail. */
  readonly xMm: number;
  /** Above the axis, for nose and tail; not read for belly and back. */
  readonly zMm: number;
  /**
   * Lean of the shank. Belly and back: 0 square to the body's axis, positive with its deep end towards the tail. Nose
   * and tail: 0 along the axis, positive with its deep end towards the back.
   */
  readonly slantDeg: number;
}

/** A straight line into the body: entry on the surface, direction of unit length inwards, x to the tail, z to the back. */
export interface ShankPath {
  readonly entryX: number;
  readonly entryZ: number;
  readonly directionX: number;
  readonly directionZ: number;
  /** Depth along the line at which it leaves the body on the other side. */
  readonly throughMm: number;
  /** Between the shank and the grain, which runs along the body. 0: in end grain, 90: across. */
  readonly grainAngleDeg: number;
}

export type ShankRefusal = 'not-on-body' | 'slant-outside' | 'does-not-enter';

export type ShankCheck =
  | { readonly ok: true; readonly path: ShankPath }
  | { readonly ok: false; readonly code: ShankRefusal };

/** A slant beyond this is a groove in the skin rather than a hole. */
export const GREATEST_SLANT_DEG = 85;
/** Depth at which a line that enters at all is inside, mm. */
const INSIDE_MM = 0.01;

/** The line of a hole, or why there is none: off the body, slanted too far, or leading out of it at once. */
export function shankPath(body: Body, place: HolePlace): ShankCheck {
  if (!(Math.abs(place.slantDeg) <= GREATEST_SLANT_DEG)) return { ok: false, code: 'slant-outside' };
  const entry = entryPoint(body, place);
  if (entry === null) return { ok: false, code: 'not-on-body' };
  const { x: directionX, z: directionZ } = direction(place);
  const line = { entryX: entry.x, entryZ: entry.z, directionX, directionZ };
  const x = entry.x + INSIDE_MM * directionX;
  const inside = sectionAt(body, x);
  if (!(Math.abs(entry.z + INSIDE_MM * directionZ) < inside.halfHeightMm && inside.halfWidthMm > 0)) {
    return { ok: false, code: 'does-not-enter' };
  }
  const grainAngleDeg = (Math.acos(Math.min(1, Math.abs(directionX))) * 180) / Math.PI;
  return { ok: true, path: { ...line, throughMm: throughDepth(body, line), grainAngleDeg } };
}

/** The point of the line at a depth. */
export function pointAt(path: Pick<ShankPath, 'entryX' | 'entryZ' | 'directionX' | 'directionZ'>, depthMm: number) {
  return { x: path.entryX + depthMm * path.directionX, z: path.entryZ + depthMm * path.directionZ };
}

function direction({ face, slantDeg }: HolePlace): { x: number; z: number } {
  const slant = (slantDeg * Math.PI) / 180;
  switch (face) {
    case 'belly':
      return { x: Math.sin(slant), z: Math.cos(slant) };
    case 'back':
      return { x: Math.sin(slant), z: -Math.cos(slant) };
    case 'nose':
      return { x: Math.cos(slant), z: Math.sin(slant) };
    case 'tail':
      return { x: -Math.cos(slant), z: Math.sin(slant) };
  }
}

function entryPoint(body: Body, { face, xMm, zMm }: HolePlace): { x: number; z: number } | null {
  if (face === 'belly' || face === 'back') {
    const { halfHeightMm } = sectionAt(body, xMm);
    return halfHeightMm > 0 ? { x: xMm, z: face === 'belly' ? -halfHeightMm : halfHeightMm } : null;
  }
  const x = face === 'nose' ? firstWood(body.stations, zMm) : firstWood(body.stations.toReversed(), zMm);
  return x === null ? null : { x, z: zMm };
}

/** Where a line at height z first meets wood, coming along the stations as given. */
function firstWood(stations: readonly ProfileStation[], zMm: number): number | null {
  const z = Math.abs(zMm);
  for (const [i, b] of stations.entries()) {
    if (!(b.halfHeightMm >= z)) continue;
    const a = stations[i - 1];
    if (a === undefined) return b.xMm;
    return a.xMm + ((z - a.halfHeightMm) / (b.halfHeightMm - a.halfHeightMm)) * (b.xMm - a.xMm);
  }
  return null;
}

type Line = Omit<ShankPath, 'throughMm' | 'grainAngleDeg'>;

/** Least depth beyond the entry at which the line crosses the outline of the middle plane. */
function throughDepth(body: Body, line: Line): number {
  const { stations } = body;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1];
    const b = stations[i];
    if (a === undefined || b === undefined) continue;
    for (const side of [-1, 1]) {
      least = Math.min(least, crossing(line, a.xMm, side * a.halfHeightMm, b.xMm, side * b.halfHeightMm));
    }
  }
  for (const end of [stations[0], stations.at(-1)]) {
    if (end === undefined) continue;
    least = Math.min(least, crossing(line, end.xMm, -end.halfHeightMm, end.xMm, end.halfHeightMm));
  }
  // The outline is closed, so that a line which is inside must leave; rounding at a corner could still miss it.
  return Number.isFinite(least) ? least : INSIDE_MM;
}

/** Depth at which the line crosses a piece of the outline; infinite where it does not, or only at its entry. */
function crossing(line: Line, ax: number, az: number, bx: number, bz: number): number {
  const ux = bx - ax;
  const uz = bz - az;
  const cross = line.directionX * uz - line.directionZ * ux;
  if (cross === 0) return Number.POSITIVE_INFINITY;
  const gapX = ax - line.entryX;
  const gapZ = az - line.entryZ;
  const depth = (gapX * uz - gapZ * ux) / cross;
  const share = (gapX * line.directionZ - gapZ * line.directionX) / cross;
  const isOnPiece = share >= -1e-9 && share <= 1 + 1e-9;
  return depth > INSIDE_MM && isOnPiece ? depth : Number.POSITIVE_INFINITY;
}
