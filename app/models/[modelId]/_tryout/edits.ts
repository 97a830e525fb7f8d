import type { PlanePoint } from '@/lib/geometry/anchor-lines';
import type { Body } from '@/lib/geometry/body';
import { type DragSteps, draggedLoad, draggedMouth, draggedShank, roomFor } from '@/lib/geometry/hole-drag';
import { GREATEST_SLANT_DEG, type HolePlace, shankPath } from '@/lib/geometry/shank-path';
import type { SpecAnchor } from '@/lib/spec/spec-model';

/** What of an anchor can be taken hold of in the drawing. */
export type Grip = 'shank' | 'mouth' | 'load';

/** Where an anchor's hole is; null where something of it was not entered. */
export function placeOf({ face, xMm, zMm, slantDeg }: SpecAnchor): HolePlace | null {
  if (face === null || slantDeg === null) return null;
  const isAcross = face === 'belly' || face === 'back';
  if (isAcross ? xMm === null : zMm === null) return null;
  return { face, xMm: xMm ?? 0, zMm: zMm ?? 0, slantDeg };
}

/** An anchor at another depth. The hole is drilled deeper or shallower with it, so that the slack under it stays. */
export function withDepth(anchor: SpecAnchor, embedmentMm: number): SpecAnchor {
  const { drillDepthMm, embedmentMm: before } = anchor;
  if (drillDepthMm === null) return { ...anchor, embedmentMm };
  const slack = before === null ? 0 : Math.max(0, drillDepthMm - before);
  return { ...anchor, embedmentMm, drillDepthMm: embedmentMm + slack };
}

/** An anchor taken by one of its grips and dragged to a point of the middle plane; itself where that cannot be. */
export function dragged(anchor: SpecAnchor, body: Body, grip: Grip, to: PlanePoint, steps: DragSteps): SpecAnchor {
  const place = placeOf(anchor);
  if (place === null) return anchor;
  switch (grip) {
    case 'shank': {
      const shank = draggedShank(body, place, to, steps);
      if (shank === null) return anchor;
      return anchor.kind === 'through-wire'
        ? anchor
        : withDepth({ ...anchor, slantDeg: shank.slantDeg }, shank.depthMm);
    }
    case 'mouth': {
      const moved = draggedMouth(body, place, to, steps);
      return moved === null ? anchor : at(anchor, moved);
    }
    case 'load': {
      const path = shankPath(body, place);
      return path.ok ? { ...anchor, loadAngleDeg: draggedLoad(path.path, to, steps) } : anchor;
    }
  }
}

const WAYS: Readonly<Record<string, { readonly along: number; readonly up: number }>> = {
  ArrowLeft: { along: -1, up: 0 },
  ArrowRight: { along: 1, up: 0 },
  ArrowUp: { along: 0, up: 1 },
  ArrowDown: { along: 0, up: -1 },
};

/** Whether a key moves a grip. */
export function isGripKey(key: string): boolean {
  return key in WAYS;
}

/**
 * An anchor after an arrow key on one of its grips. Shank: up deeper, down shallower, left and right lean it. Mouth:
 * along the body, or up and down an end. Load: up and right further from straight, down and left nearer.
 */
export function nudged(anchor: SpecAnchor, body: Body, grip: Grip, key: string, steps: DragSteps): SpecAnchor {
  const way = WAYS[key];
  const place = placeOf(anchor);
  if (way === undefined || place === null) return anchor;
  switch (grip) {
    case 'shank':
      return way.up === 0
        ? leant(anchor, body, place, way.along * steps.angleDeg)
        : deeper(anchor, body, place, way.up * steps.depthMm, steps);
    case 'mouth': {
      const isAcross = place.face === 'belly' || place.face === 'back';
      const path = shankPath(body, place);
      if (!path.ok) return anchor;
      const by = (isAcross ? way.along : way.up) * steps.placeMm;
      const { entryX: x, entryZ: z } = path.path;
      const moved = draggedMouth(body, place, isAcross ? { x: x + by, z } : { x, z: z + by }, steps);
      return moved === null ? anchor : at(anchor, moved);
    }
    case 'load': {
      const angle = (anchor.loadAngleDeg ?? 0) + (way.along + way.up) * steps.angleDeg;
      return { ...anchor, loadAngleDeg: Math.max(0, Math.min(90, angle)) };
    }
  }
}

function at(anchor: SpecAnchor, place: HolePlace): SpecAnchor {
  const isAcross = place.face === 'belly' || place.face === 'back';
  return isAcross ? { ...anchor, xMm: place.xMm } : { ...anchor, zMm: place.zMm };
}

function leant(anchor: SpecAnchor, body: Body, place: HolePlace, byDeg: number): SpecAnchor {
  const slantDeg = Math.max(-GREATEST_SLANT_DEG, Math.min(GREATEST_SLANT_DEG, place.slantDeg + byDeg));
  return shankPath(body, { ...place, slantDeg }).ok ? { ...anchor, slantDeg } : anchor;
}

function deeper(anchor: SpecAnchor, body: Body, place: HolePlace, byMm: number, steps: DragSteps): SpecAnchor {
  const path = shankPath(body, place);
  if (!path.ok || anchor.kind === 'through-wire') return anchor;
  return withDepth(anchor, roomFor(path.path, (anchor.embedmentMm ?? 0) + byMm, steps.depthMm));
}
