import type { Body } from '@/lib/geometry/body';
import { COVER_STEP_MM, type CoverProfile, coverProfile } from '@/lib/geometry/cover';
import type { Hole } from '@/lib/geometry/holes';
import { type HolePlace, type ShankPath, type ShankRefusal, shankPath } from '@/lib/geometry/shank-path';
import { type ResolvedWire, resolveWire, type WireRefusal } from '@/lib/materials/resolved-wire';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import type { BondBook, BondEvidence } from '@/lib/spec/bond-book';
import { type DesignOutcome, designOf } from '@/lib/spec/design-of';
import type { InputName } from '@/lib/spec/input-name';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import { usableAnchor } from '@/lib/spec/usable';
import type { AnchorDesign } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import type { AnchorStrength } from '@/lib/strength/strength-result';

/** Everything the rules ask about one anchor, worked out once. */
export interface AnchorFacts {
  readonly anchor: SpecAnchor;
  readonly place: HolePlace | null;
  readonly path: ShankPath | null;
  /** Why there is no path though the place is known. */
  readonly pathRefusal: ShankRefusal | null;
  readonly cover: CoverProfile | null;
  readonly hole: Hole | null;
  readonly wire: ResolvedWire | null;
  readonly wireRefusal: WireRefusal | null;
  readonly bond: BondEvidence | null;
  readonly design: AnchorDesign | null;
  readonly strength: AnchorStrength | null;
  /** What is missing for the strength; empty if there is one. */
  readonly missing: readonly InputName[];
}

/** What of the model an anchor's facts rest on. */
export interface AnchorSurroundings {
  readonly model: SpecModel;
  readonly body: Body | null;
  readonly wood: ResolvedWood | null;
}

/** What of the shop an anchor's facts rest on. */
export interface AnchorBasis {
  readonly settings: SpecSettings;
  readonly bonds: BondBook;
}

/** Depth to which the mouth's cover is wanted even under a short shank. */
const LEAST_COVER_DEPTH_MM = 12 * COVER_STEP_MM;

export function anchorFacts(typed: SpecAnchor, around: AnchorSurroundings, basis: AnchorBasis): AnchorFacts {
  const anchor = usableAnchor(typed);
  const place = placeOf(anchor);
  const check = around.body === null || place === null ? null : shankPath(around.body, place);
  const path = check?.ok === true ? check.path : null;
  const depth = Math.max(LEAST_COVER_DEPTH_MM, anchor.embedmentMm ?? 0);
  const cover = around.body === null || path === null ? null : coverProfile(around.body, path, depth);
  const resolved = wireOf(anchor);
  const wire = resolved?.ok === true ? resolved.wire : null;
  const bond = bondOf(anchor, around.model, basis);
  const outcome: DesignOutcome = designOf({ anchor, path, cover, wire, bond, ...around }, basis.settings);
  return {
    anchor,
    place,
    path,
    pathRefusal: check?.ok === false ? check.code : null,
    cover,
    hole: holeOf(anchor, path),
    wire,
    wireRefusal: resolved?.ok === false ? resolved.code : null,
    bond,
    design: outcome.design,
    strength: outcome.design === null ? null : anchorStrength(outcome.design, basis.settings.strength),
    missing: outcome.missing,
  };
}

/** Where the hole is; a coordinate that its face does not need may be missing. */
function placeOf({ face, xMm, zMm, slantDeg }: SpecAnchor): HolePlace | null {
  if (face === null || slantDeg === null) return null;
  const isAcross = face === 'belly' || face === 'back';
  if (isAcross ? xMm === null : zMm === null) return null;
  return { face, xMm: xMm ?? 0, zMm: zMm ?? 0, slantDeg };
}

function holeOf({ bitDiameterMm, drillDepthMm }: SpecAnchor, path: ShankPath | null): Hole | null {
  if (path === null || bitDiameterMm === null || drillDepthMm === null) return null;
  return { path, diameterMm: bitDiameterMm, depthMm: drillDepthMm };
}

function wireOf({ wire, wireDiameterMm }: SpecAnchor) {
  if (wire === null || wire.sheet === null || wireDiameterMm === null) return null;
  return resolveWire(wire.sheet, wireDiameterMm);
}

function bondOf({ adhesive, wire }: SpecAnchor, { wood }: SpecModel, { bonds }: AnchorBasis): BondEvidence | null {
  if (adhesive === null || adhesive.sheet === null || wire === null || wood === null) return null;
  const key = {
    woodMaterialId: wood.materialId,
    adhesiveMaterialId: adhesive.materialId,
    wireMaterialId: wire.materialId,
  };
  return bonds.evidence(key, adhesive.sheet.bondClass);
}
