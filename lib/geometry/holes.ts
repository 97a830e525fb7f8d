import { pointAt, type ShankPath } from '@/lib/geometry/shank-path';

/** A drilled hole in the body's middle plane. */
export interface Hole {
  readonly path: ShankPath;
  readonly diameterMm: number;
  readonly depthMm: number;
}

/** Wood left between the walls of two holes, mm; negative: they meet, and by how much. Exact. */
export function woodBetween(a: Hole, b: Hole): number {
  return axisDistance(a, b) - 0.5 * (a.diameterMm + b.diameterMm);
}

/** Wood left between the bottom of a hole and where its line leaves the body, mm; negative: it comes through. */
export function woodBelow(hole: Hole): number {
  return hole.path.throughMm - hole.depthMm;
}

function axisDistance(a: Hole, b: Hole): number {
  const [a0, a1, b0, b1] = [
    pointAt(a.path, 0),
    pointAt(a.path, a.depthMm),
    pointAt(b.path, 0),
    pointAt(b.path, b.depthMm),
  ];
  if (doCross(a0, a1, b0, b1)) return 0;
  return Math.min(toSegment(a0, b0, b1), toSegment(a1, b0, b1), toSegment(b0, a0, a1), toSegment(b1, a0, a1));
}

interface Point {
  readonly x: number;
  readonly z: number;
}

function toSegment(point: Point, from: Point, to: Point): number {
  const ux = to.x - from.x;
  const uz = to.z - from.z;
  const square = ux * ux + uz * uz;
  const along = square === 0 ? 0 : ((point.x - from.x) * ux + (point.z - from.z) * uz) / square;
  const share = Math.max(0, Math.min(1, along));
  return Math.hypot(point.x - from.x - share * ux, point.z - from.z - share * uz);
}

function doCross(a0: Point, a1: Point, b0: Point, b1: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.z - p.z) - (q.z - p.z) * (r.x - p.x));
  return side(a0, a1, b0) * side(a0, a1, b1) < 0 && side(b0, b1, a0) * side(b0, b1, a1) < 0;
}
