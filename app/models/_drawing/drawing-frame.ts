import type { PlanePoint } from '@/lib/geometry/anchor-lines';
import type { Body } from '@/lib/geometry/body';

/** How the two views of a body lie on the screen, both to one scale; px. */
export interface DrawingFrame {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
  /** Middle lines of the side view and the top view. */
  readonly sideY: number;
  readonly topY: number;
  readonly scaleY: number;
  readonly noseX: number;
  readonly noseMm: number;
}

/** Room at the ends, over and under the side view for eyes, arrows and what takes hold of them, px. */
const END_ROOM = { narrow: 56, wide: 78 } as const;
const NARROW_PX = 500;
const SIDE_ROOM = 62;
const GREATEST_SCALE = 9;

/** Places side view and top view of a body in a drawing of a width: as large as it allows, both alike. */
export function drawingFrame(body: Body, widthPx: number): DrawingFrame {
  const halfHeight = Math.max(...body.stations.map(({ halfHeightMm }) => halfHeightMm));
  const halfWidth = Math.max(...body.stations.map(({ halfWidthMm }) => halfWidthMm));
  const lengthMm = body.tailMm - body.noseMm;
  const endRoom = widthPx < NARROW_PX ? END_ROOM.narrow : END_ROOM.wide;
  const pxPerMm = Math.min(GREATEST_SCALE, Math.max(1, widthPx - 2 * endRoom) / lengthMm);
  const sideY = SIDE_ROOM + halfHeight * pxPerMm;
  const topY = sideY + halfHeight * pxPerMm + SIDE_ROOM + 8 + halfWidth * pxPerMm;
  const scaleY = topY + halfWidth * pxPerMm + 18;
  const noseX = 0.5 * (widthPx - lengthMm * pxPerMm);
  return { widthPx, heightPx: scaleY + 30, pxPerMm, sideY, topY, scaleY, noseX, noseMm: body.noseMm };
}

/** Where a point of the middle plane lies in the side view. */
export function sidePoint(frame: DrawingFrame, { x, z }: PlanePoint): { readonly x: number; readonly y: number } {
  return { x: frame.noseX + (x - frame.noseMm) * frame.pxPerMm, y: frame.sideY - z * frame.pxPerMm };
}

/** The point of the middle plane at a place of the side view. */
export function planePoint(frame: DrawingFrame, at: { readonly x: number; readonly y: number }): PlanePoint {
  return { x: frame.noseMm + (at.x - frame.noseX) / frame.pxPerMm, z: (frame.sideY - at.y) / frame.pxPerMm };
}
