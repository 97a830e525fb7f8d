import { type Body, sectionAt, segmentAt } from '@/lib/geometry/body';
import type { ProfileStation } from '@/lib/geometry/body-profile';

/** Turns of the search for the nearest place on a segment; each at least halves the rest of it. */
const TURNS = 40;

/**
 * Shortest distance from a point in the body's middle plane, `zMm` above the axis, to the body's surface, in any
 * direction; 0 for a point on it or outside. Error below 1e-9 mm.
 *
 * From a point on an axis of an ellipse the nearest place is the axis's end or, on a long axis, off to the side: both
 * are closed forms, so that only the place along the body is searched, segment by segment.
 */
export function surfaceDistance(body: Body, xMm: number, zMm: number): number {
  const here = sectionAt(body, xMm);
  if (!(Math.abs(zMm) < here.halfHeightMm && here.halfWidthMm > 0)) return 0;
  const z = Math.abs(zMm);
  let best = endFaces(body, xMm, z);
  const start = segmentAt(body, xMm);
  const last = body.stations.length - 2;
  for (let i = start; i <= last; i++) {
    const gap = (body.stations[i]?.xMm ?? 0) - xMm;
    if (gap > 0 && gap * gap >= best) break;
    best = Math.min(best, segmentSquare(body, i, xMm, z));
  }
  for (let i = start - 1; i >= 0; i--) {
    const gap = xMm - (body.stations[i + 1]?.xMm ?? 0);
    if (gap * gap >= best) break;
    best = Math.min(best, segmentSquare(body, i, xMm, z));
  }
  return Math.sqrt(best);
}

function endFaces(body: Body, x: number, z: number): number {
  const nose = body.stations[0];
  const tail = body.stations.at(-1);
  const toNose = nose !== undefined && nose.halfHeightMm >= z && nose.halfWidthMm > 0 ? x - nose.xMm : Infinity;
  const toTail = tail !== undefined && tail.halfHeightMm >= z && tail.halfWidthMm > 0 ? tail.xMm - x : Infinity;
  return Math.min(toNose, toTail) ** 2;
}

/** Square of the distance to the surface between two stations. */
function segmentSquare(body: Body, index: number, x: number, z: number): number {
  const a = body.stations[index];
  const b = body.stations[index + 1];
  if (a === undefined || b === undefined) return Infinity;
  let low = a.xMm;
  let high = b.xMm;
  let lowSlope = slopeAt(a, b, low, x, z);
  let highSlope = slopeAt(a, b, high, x, z);
  if (!(lowSlope < 0 && highSlope > 0)) return Math.min(squareAt(a, b, low, x, z), squareAt(a, b, high, x, z));
  let middle = low;
  for (let turn = 0; turn < TURNS && high - low > 1e-7; turn++) {
    const secant = low - (lowSlope * (high - low)) / (highSlope - lowSlope);
    const margin = 0.1 * (high - low);
    middle = turn % 3 === 2 ? 0.5 * (low + high) : Math.min(high - margin, Math.max(low + margin, secant));
    const slope = slopeAt(a, b, middle, x, z);
    if (Math.abs(slope) < 1e-9) break;
    if (slope < 0) {
      low = middle;
      lowSlope = slope;
    } else {
      high = middle;
      highSlope = slope;
    }
  }
  return squareAt(a, b, middle, x, z);
}

function squareAt(a: ProfileStation, b: ProfileStation, at: number, x: number, z: number): number {
  const share = (at - a.xMm) / (b.xMm - a.xMm);
  const h = a.halfHeightMm + share * (b.halfHeightMm - a.halfHeightMm);
  const w = a.halfWidthMm + share * (b.halfWidthMm - a.halfWidthMm);
  const difference = h * h - w * w;
  const along = (at - x) ** 2;
  if (difference > z * h) return along + w * w * (1 - (z * z) / difference);
  return along + (h - z) ** 2;
}

/** Derivative of `squareAt` along the body. */
function slopeAt(a: ProfileStation, b: ProfileStation, at: number, x: number, z: number): number {
  const length = b.xMm - a.xMm;
  const share = (at - a.xMm) / length;
  const hSlope = (b.halfHeightMm - a.halfHeightMm) / length;
  const wSlope = (b.halfWidthMm - a.halfWidthMm) / length;
  const h = a.halfHeightMm + share * (b.halfHeightMm - a.halfHeightMm);
  const w = a.halfWidthMm + share * (b.halfWidthMm - a.halfWidthMm);
  const difference = h * h - w * w;
  const along = 2 * (at - x);
  if (difference <= z * h) return along + 2 * (h - z) * hSlope;
  const differenceSlope = 2 * (h * hSlope - w * wSlope);
  const side = 2 * w * wSlope * (1 - (z * z) / difference);
  return along + side + (w * w * z * z * differenceSlope) / (difference * difference);
}
