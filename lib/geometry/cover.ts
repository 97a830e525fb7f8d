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
 * Least distance from the shank's axis to the surface between two depths, and the depth at which it is least; error
 * below 1e-6 mm.
 *
 * Every shank is near the skin where it enters, so that a stretch is judged from below its mouth.
 * Throws RangeError unless 0 <= fromMm <= toMm.
 */
export function leastCover(body: Body, path: ShankPath, fromMm: number, toMm: number): LeastCover {
  if (!(fromMm >= 0 && toMm >= fromMm)) throw new RangeError(`leastCover needs rising depths, got ${fromMm}, ${toMm}`);
  const count = Math.max(2, Math.ceil((toMm - fromMm) / (0.5 * COVER_STEP_MM)));
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
  let low = fromMm + Math.max(0, index - 1) * spacing;
  let high = fromMm + Math.min(count, index + 1) * spacing;
  for (let turn = 0; turn < 60 && high - low > 1e-9; turn++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (distanceAt(body, path, a) <= distanceAt(body, path, b)) high = b;
    else low = a;
  }
  const refined = distanceAt(body, path, low);
  if (refined < best) return { coverMm: refined, depthMm: low };
  return { coverMm: best, depthMm: fromMm + index * spacing };
}

function distanceAt(body: Body, path: ShankPath, depthMm: number): number {
  const { x, z } = pointAt(path, depthMm);
  return surfaceDistance(body, x, z);
}
