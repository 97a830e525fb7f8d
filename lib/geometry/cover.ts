import type { Body } from '@/lib/geometry/body';
import { pointAt, type ShankPath } from '@/lib/geometry/shank-path';
import { surfaceDistance } from '@/lib/geometry/surface-distance';

/** Spacing of the depths at which cover is taken for the strength of a shank: a 32nd of an inch, half the usual step. */
export const COVER_STEP_MM = 25.4 / 32;

/** Distances from the shank's axis to the surface at depths 0, step, 2 step, ... */
export interface CoverProfile {
  readonly stepMm: number;
  readonly distancesMm: readonly number[];
  /** Depth at which the line leaves the body. */
  readonly throughMm: number;
  readonly grainAngleDeg: number;
}

/** Cover along a line to `depthMm`, or to where it leaves the body. */
export function coverProfile(body: Body, path: ShankPath, depthMm: number): CoverProfile {
  const depth = Math.min(depthMm, path.throughMm);
  const count = Math.ceil(depth / COVER_STEP_MM) + 1;
  const distancesMm = Array.from({ length: count }, (_, k) => distanceAt(body, path, k * COVER_STEP_MM));
  return {
    stepMm: COVER_STEP_MM,
    distancesMm,
    throughMm: path.throughMm,
    grainAngleDeg: path.grainAngleDeg,
  };
}

/** Least cover along a stretch of shank and where it is. */
export interface LeastCover {
  readonly coverMm: number;
  readonly depthMm: number;
}

/**
 * Least distance from the shank's axis to the surface between two depths, and the depth at which it is least.
 *
 * Every shank is near the skin where it enters, so that a stretch is judged from below its mouth. Taken at every 32nd
 * of an inch and at both ends, the least of them narrowed down to 1e-6 mm: a second dip shorter than that can be missed
 * by as little.
 * Throws RangeError unless 0 <= fromMm <= toMm.
 */
export function leastCover(body: Body, path: ShankPath, fromMm: number, toMm: number): LeastCover {
  if (!(fromMm >= 0 && toMm >= fromMm)) throw new RangeError(`leastCover needs rising depths, got ${fromMm}, ${toMm}`);
  const count = Math.max(1, Math.ceil((toMm - fromMm) / COVER_STEP_MM));
  const spacing = (toMm - fromMm) / count;
  let index = 0;
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= count; k++) {
    const distance = distanceAt(body, path, fromMm + k * spacing);
    if (distance < best) {
      best = distance;
      index = k;
    }
  }
  const atGrid = { coverMm: best, depthMm: fromMm + index * spacing };
  if (index === 0 || index === count) return atGrid;
  const refined = narrowed(body, path, fromMm + (index - 1) * spacing, fromMm + (index + 1) * spacing);
  return refined.coverMm < best ? refined : atGrid;
}

function narrowed(body: Body, path: ShankPath, from: number, to: number): LeastCover {
  let low = from;
  let high = to;
  for (let turn = 0; turn < 60 && high - low > 1e-7; turn++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (distanceAt(body, path, a) <= distanceAt(body, path, b)) high = b;
    else low = a;
  }
  return { coverMm: distanceAt(body, path, low), depthMm: low };
}

function distanceAt(body: Body, path: ShankPath, depthMm: number): number {
  const { x, z } = pointAt(path, depthMm);
  return surfaceDistance(body, x, z);
}
