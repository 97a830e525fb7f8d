import type { AnchorKind } from '@/lib/geometry/anchor';
import type { Body } from '@/lib/geometry/body';
import { type LeastCover, leastCover } from '@/lib/geometry/cover';
import { type AnchorFace, type HolePlace, pointAt, type ShankPath, shankPath } from '@/lib/geometry/shank-path';

/** What a drawing needs to know of an anchor; null: not entered. Lengths mm, angles degrees. */
export interface DrawnAnchor {
  readonly id: string;
  readonly name: string;
  readonly kind: AnchorKind;
  /** Null: the drawing cannot tell where it is. */
  readonly place: HolePlace | null;
  readonly embedmentMm: number | null;
  readonly drillDepthMm: number | null;
  readonly bitDiameterMm: number | null;
  readonly wireDiameterMm: number | null;
  readonly eyeInsideMm: number | null;
  readonly loadAngleDeg: number | null;
}

/** A point in the body's middle plane: x to the tail, z to the back. */
export interface PlanePoint {
  readonly x: number;
  readonly z: number;
}

/** Where everything of an anchor lies in the body's middle plane. */
export interface AnchorLines {
  readonly path: ShankPath;
  readonly entry: PlanePoint;
  /** Deep end of the shank; at the entry where no depth was entered. */
  readonly end: PlanePoint;
  /** Bottom of the drilled hole; null where it was not entered or is no deeper than the shank. */
  readonly bottom: PlanePoint | null;
  readonly shankDiameterMm: number;
  readonly eye: { readonly centre: PlanePoint; readonly radiusMm: number };
  /** Unit vector the load pulls along, from the middle of the eye; null where its angle was not entered. */
  readonly load: PlanePoint | null;
  /** Least cover below the mouth and where it is; null for a shank no deeper than its mouth. */
  readonly least: (LeastCover & { readonly at: PlanePoint }) | null;
}

/** Sizes drawn where none was entered, so that the anchor can be seen: an eye of 4 mm of 1 mm wire. */
const SHOWN_EYE_MM = 4;
const SHOWN_WIRE_MM = 1;
/** Depth of mouth, in shank diameters, over which every shank is near the skin: full cover is not asked there. */
const MOUTH_DIAMETERS = 2.5;

/** An anchor in the body's middle plane, or null where its place is not known or its hole leads past the wood. */
export function anchorLines(body: Body, anchor: DrawnAnchor): AnchorLines | null {
  const { place, embedmentMm, drillDepthMm } = anchor;
  if (place === null) return null;
  const check = shankPath(body, place);
  if (!check.ok) return null;
  const { path } = check;
  const depth = embedmentMm ?? 0;
  const wire = anchor.wireDiameterMm ?? SHOWN_WIRE_MM;
  const pair = anchor.kind === 'twisted-wire' ? 2 * wire : wire;
  const shankDiameterMm = Math.max(pair, anchor.kind === 'twisted-wire' ? (anchor.bitDiameterMm ?? 0) : 0);
  const radiusMm = 0.5 * (anchor.eyeInsideMm ?? SHOWN_EYE_MM);
  const centre = pointAt(path, -(radiusMm + 0.5 * wire));
  const mouth = MOUTH_DIAMETERS * shankDiameterMm;
  const covered = Math.min(depth, path.throughMm);
  const least = covered > mouth ? leastCover(body, path, mouth, covered) : null;
  return {
    path,
    entry: pointAt(path, 0),
    end: pointAt(path, depth),
    bottom: drillDepthMm !== null && drillDepthMm > depth ? pointAt(path, drillDepthMm) : null,
    shankDiameterMm,
    eye: { centre, radiusMm },
    load: anchor.loadAngleDeg === null ? null : loadDirection(path, place.face, anchor.loadAngleDeg),
    least: least === null ? null : { ...least, at: pointAt(path, least.depthMm) },
  };
}

/**
 * Unit vector of a load at `loadAngleDeg` from the shank. An angle has two sides: drawn is the one a fish pulls to,
 * from the belly and the tail backwards and down, from the nose and the back forwards and up. Chosen; the strength is
 * the same either way.
 */
export function loadDirection(
  { directionX, directionZ }: Pick<ShankPath, 'directionX' | 'directionZ'>,
  face: AnchorFace,
  loadAngleDeg: number,
): PlanePoint {
  const angle = (loadAngleDeg * Math.PI) / 180;
  const out = { x: -directionX, z: -directionZ };
  const side = loadSide(face);
  const across = { x: -out.z, z: out.x };
  const sign = across.x * side.x + across.z * side.z >= 0 ? 1 : -1;
  return {
    x: out.x * Math.cos(angle) + sign * across.x * Math.sin(angle),
    z: out.z * Math.cos(angle) + sign * across.z * Math.sin(angle),
  };
}

function loadSide(face: AnchorFace): PlanePoint {
  switch (face) {
    case 'belly':
      return { x: 1, z: 0 };
    case 'back':
      return { x: -1, z: 0 };
    case 'nose':
      return { x: 0, z: 1 };
    case 'tail':
      return { x: 0, z: -1 };
  }
}
