import type { Body } from '@/lib/geometry/body';
import { COVER_STEP_MM, type CoverProfile, coverProfile } from '@/lib/geometry/cover';
import type { Hole } from '@/lib/geometry/holes';
import { type HolePlace, type ShankPath, type ShankRefusal, shankPath } from '@/lib/geometry/shank-path';
import { type ResolvedWire, resolveWire, type WireRefusal } from '@/lib/materials/resolved-wire';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import type { BondBook, BondEvidence } from '@/lib/spec/bond-book';
import type { ContentNumbers } from '@/lib/spec/content-numbers';
import { type CoverFacts, coverFacts } from '@/lib/spec/cover-facts';
import { designOf } from '@/lib/spec/design-of';
import type { InputName } from '@/lib/spec/input-name';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import { type ThinCover, thinCover } from '@/lib/spec/thin-cover';
import type { AnchorDesign } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import type { AnchorStrength } from '@/lib/strength/strength-result';

/** What is computed of an anchor: the same for every anchor that is made and placed alike, whatever it is called. */
export interface AnchorMechanics {
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
  /** Cover of the shank that is in the wood; null: not known, or it has none. */
  readonly shankCover: CoverFacts | null;
  /** What thin cover takes of its strength; null: nothing worth saying. */
  readonly thinCover: ThinCover | null;
}

/** What of the model an anchor's mechanics rest on. */
export interface AnchorSurroundings {
  readonly wood: SpecModel['wood'];
  readonly body: Body | null;
  readonly resolvedWood: ResolvedWood | null;
}

/** What of the shop they rest on. */
export interface AnchorBasis {
  readonly settings: SpecSettings;
  readonly bonds: BondBook;
}

/** Depth to which the mouth's cover is wanted even under a short shank. */
const LEAST_COVER_DEPTH_MM = 12 * COVER_STEP_MM;

/** Whatever the rules ask of one anchor, worked out once. `anchor` as usable. */
export function anchorMechanics(anchor: SpecAnchor, around: AnchorSurroundings, basis: AnchorBasis): AnchorMechanics {
  const { body } = around;
  const place = placeOf(anchor);
  const check = body === null || place === null ? null : shankPath(body, place);
  const path = check?.ok === true ? check.path : null;
  const depth = Math.max(LEAST_COVER_DEPTH_MM, anchor.embedmentMm ?? 0);
  const cover = body === null || path === null ? null : coverProfile(body, path, depth);
  const resolved = wireOf(anchor);
  const wire = resolved?.ok === true ? resolved.wire : null;
  const bond = bondOf(anchor, around.wood, basis.bonds);
  const { design, missing } = designOf({ anchor, path, cover, wire, bond, ...around }, basis.settings);
  const strength = design === null ? null : anchorStrength(design, basis.settings.strength);
  const shankCover = body === null || path === null || cover === null ? null : coverFacts(anchor, body, path, cover);
  return {
    place,
    path,
    pathRefusal: check?.ok === false ? check.code : null,
    cover,
    hole: holeOf(anchor, path),
    wire,
    wireRefusal: resolved?.ok === false ? resolved.code : null,
    bond,
    design,
    strength,
    missing,
    shankCover,
    thinCover: thinCover(design, strength, shankCover, basis.settings.strength),
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

function bondOf({ kind, adhesive, wire }: SpecAnchor, wood: SpecModel['wood'], bonds: BondBook): BondEvidence | null {
  if (kind !== 'twisted-wire') return null;
  if (adhesive === null || adhesive.sheet === null || wire === null || wood === null) return null;
  const key = {
    woodMaterialId: wood.materialId,
    adhesiveMaterialId: adhesive.materialId,
    wireMaterialId: wire.materialId,
  };
  return bonds.evidence(key, adhesive.sheet.bondClass);
}

/**
 * What the mechanics of a usable anchor are known by within one body, wood and shop: all that `anchorMechanics` reads
 * of it and nothing else, so that the same hanger of another revision is not worked out again.
 */
export function mechanicsKey(anchor: SpecAnchor, numbers: ContentNumbers): string {
  const { wire, adhesive, screwEye } = anchor;
  const eye = `${anchor.eyeInsideMm} ${anchor.isEyeClosed} ${numbers.of(screwEye?.sheet ?? null)} ${screwEye === null}`;
  const place = `${anchor.face} ${anchor.xMm} ${anchor.zMm} ${anchor.slantDeg} ${anchor.loadAngleDeg}`;
  const pair = `${wire?.materialId} ${numbers.of(wire?.sheet ?? null)} ${anchor.wireDiameterMm} ${anchor.twistPitchMm}`;
  const hole = `${anchor.bitDiameterMm} ${anchor.drillDepthMm} ${anchor.embedmentMm}`;
  const glue = `${adhesive?.materialId} ${adhesive?.sheet?.bondClass}`;
  return `${anchor.kind} ${place} ${pair} ${eye} ${hole} ${glue}`;
}
