import { MM_PER_INCH } from '@/lib/units/convert';
import { diameterInput, plainDecimals, signedLengthInput } from '@/lib/units/quantity-input';
import type { LengthUnit, UnitChoice } from '@/lib/units/unit-choice';
import type { RevisionAnchor } from '@/prisma/data/revisions';
import type { AnchorText } from './anchor-rows';

const TWIST_SIGNS: { readonly [U in LengthUnit]: string } = { inch: 'turns/in', mm: 'mm/turn' };

/** What a twist is counted in. */
export function twistSign(unit: LengthUnit): string {
  return TWIST_SIGNS[unit];
}

/** An anchor as the text of its form; empty where nothing is known. */
export function anchorText(anchor: RevisionAnchor, { lengthUnit }: UnitChoice): AnchorText {
  const length = (mm: number | null) => (mm === null ? '' : signedLengthInput(mm, lengthUnit));
  const diameter = (mm: number | null) => (mm === null ? '' : diameterInput(mm, lengthUnit));
  const degrees = (angle: number | null) => (angle === null ? '' : plainDecimals(Number(angle.toFixed(2))));
  return {
    id: anchor.id,
    name: anchor.name,
    role: anchor.role,
    kind: anchor.kind,
    face: anchor.face ?? '',
    x: length(anchor.xMm),
    z: length(anchor.zMm),
    angle: degrees(anchor.shankAngleDeg),
    leansTo: anchor.leansTo ?? '',
    loadAngle: degrees(anchor.loadAngleDeg),
    wireMaterialId: anchor.wire?.id ?? '',
    wireDiameter: diameter(anchor.wireDiameterMm),
    twist: twistInput(anchor.twistPitchMm, lengthUnit),
    eyeInside: diameter(anchor.eyeInsideMm),
    eye: anchor.isEyeClosed === null ? '' : anchor.isEyeClosed ? 'closed' : 'open',
    bitDiameter: diameter(anchor.bitDiameterMm),
    drillDepth: length(anchor.drillDepthMm),
    embedment: length(anchor.embedmentMm),
    adhesiveMaterialId: anchor.adhesive?.id ?? '',
    hookMaterialId: anchor.hook?.id ?? '',
    splitRingMaterialId: anchor.splitRing?.id ?? '',
  };
}

function twistInput(pitchMm: number | null, unit: LengthUnit): string {
  if (pitchMm === null) return '';
  return plainDecimals(unit === 'inch' ? MM_PER_INCH / pitchMm : pitchMm);
}
