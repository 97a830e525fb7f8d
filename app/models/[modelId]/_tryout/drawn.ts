import type { DrawnAnchor } from '@/lib/geometry/anchor-lines';
import type { SpecAnchor } from '@/lib/spec/spec-model';
import { placeOf } from './edits';

/** An anchor of a spec as the drawing asks for it. */
export function drawnAnchor(anchor: SpecAnchor): DrawnAnchor {
  const sheet = anchor.screwEye?.sheet ?? null;
  return {
    id: anchor.anchorId,
    name: anchor.name,
    kind: anchor.kind,
    place: placeOf(anchor),
    embedmentMm: anchor.embedmentMm,
    drillDepthMm: anchor.drillDepthMm,
    bitDiameterMm: anchor.bitDiameterMm,
    wireDiameterMm: anchor.wireDiameterMm ?? sheet?.threadDiameterMm ?? null,
    eyeInsideMm: anchor.eyeInsideMm ?? sheet?.eyeInsideMm ?? null,
    loadAngleDeg: anchor.loadAngleDeg,
  };
}
