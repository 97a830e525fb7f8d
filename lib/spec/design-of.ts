import type { Body } from '@/lib/geometry/body';
import type { CoverProfile } from '@/lib/geometry/cover';
import type { ShankPath } from '@/lib/geometry/shank-path';
import { type ResolvedWire, resolveWire } from '@/lib/materials/resolved-wire';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import type { BondEvidence } from '@/lib/spec/bond-book';
import type { InputName } from '@/lib/spec/input-name';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import { positiveOrNull, sizeOrNull } from '@/lib/spec/usable';
import type { AnchorDesign } from '@/lib/strength/anchor-design';

/** What a spec gives of an anchor. */
export interface DesignParts {
  readonly anchor: SpecAnchor;
  readonly wood: SpecModel['wood'];
  readonly body: Body | null;
  readonly resolvedWood: ResolvedWood | null;
  readonly path: ShankPath | null;
  readonly cover: CoverProfile | null;
  readonly wire: ResolvedWire | null;
  readonly bond: BondEvidence | null;
}

/** The anchor as the strength formulas ask for it, or what is missing for that. */
export interface DesignOutcome {
  readonly design: AnchorDesign | null;
  readonly missing: readonly InputName[];
}

/** An anchor of a spec as the strength formulas ask for it. */
export function designOf(parts: DesignParts, settings: SpecSettings): DesignOutcome {
  switch (parts.anchor.kind) {
    case 'twisted-wire':
      return twistedWire(parts, settings);
    case 'screw-eye':
      return screwEye(parts);
    case 'through-wire':
      return throughWire(parts);
  }
}

function twistedWire(parts: DesignParts, settings: SpecSettings): DesignOutcome {
  const { anchor, resolvedWood: wood, wire, cover, bond } = parts;
  const { twistPitchMm, eyeInsideMm, isEyeClosed, bitDiameterMm, embedmentMm, loadAngleDeg } = anchor;
  if (
    wood === null ||
    wire === null ||
    cover === null ||
    bond === null ||
    twistPitchMm === null ||
    eyeInsideMm === null ||
    isEyeClosed === null ||
    bitDiameterMm === null ||
    embedmentMm === null ||
    loadAngleDeg === null
  ) {
    return {
      design: null,
      missing: [...woodMissing(parts), ...gluedMissing(anchor), ...wireMissing(parts), ...placeMissing(parts)],
    };
  }
  return {
    design: {
      kind: 'twisted-wire',
      wood,
      wire,
      twistPitchMm,
      eye: { insideMm: eyeInsideMm, isClosed: isEyeClosed },
      bitDiameterMm,
      embedmentMm,
      voidMm: 0,
      belief: bond.belief,
      temperatureC: settings.serviceTemperatureC,
      loadAngleDeg,
      cover,
    },
    missing: [],
  };
}

function screwEye(parts: DesignParts): DesignOutcome {
  const { anchor, resolvedWood: wood, cover } = parts;
  const { embedmentMm, loadAngleDeg } = anchor;
  const sheet = anchor.screwEye?.sheet ?? null;
  const threadDiameterMm = sizeOrNull(sheet?.threadDiameterMm);
  const threadLengthMm = sizeOrNull(sheet?.threadLengthMm);
  if (
    sheet === null ||
    wood === null ||
    cover === null ||
    threadDiameterMm === null ||
    threadLengthMm === null ||
    embedmentMm === null ||
    loadAngleDeg === null
  ) {
    const missing: InputName[] = [...woodMissing(parts), ...placeMissing(parts)];
    if (anchor.screwEye === null) missing.push('screw-eye');
    else if (threadDiameterMm === null || threadLengthMm === null) missing.push('screw-eye-figures');
    if (embedmentMm === null) missing.push('embedment');
    if (loadAngleDeg === null) missing.push('load-angle');
    return { design: null, missing };
  }
  const insideMm = sizeOrNull(sheet.eyeInsideMm);
  const wire = sheet.wire === undefined ? null : resolveWire(sheet.wire, sheet.wire.diameterMm);
  return {
    design: {
      kind: 'screw-eye',
      wood,
      threadDiameterMm,
      threadMm: Math.min(embedmentMm, threadLengthMm),
      eye: insideMm === null ? null : { insideMm, isClosed: sheet.isEyeClosed },
      wire: wire?.ok === true ? wire.wire : null,
      statedStrengthN: positiveOrNull(sheet.statedStrengthN),
      loadAngleDeg,
      cover,
    },
    missing: [],
  };
}

function throughWire(parts: DesignParts): DesignOutcome {
  const { anchor, resolvedWood: wood, wire, cover } = parts;
  const { eyeInsideMm, isEyeClosed, twistPitchMm } = anchor;
  if (wire === null || eyeInsideMm === null || isEyeClosed === null) {
    return { design: null, missing: [...wireMissing(parts), ...eyeMissing(anchor)] };
  }
  const eye = { insideMm: eyeInsideMm, isClosed: isEyeClosed };
  return {
    design: { kind: 'through-wire', wood, wire, twistPitchMm, eye, loadAngleDeg: anchor.loadAngleDeg ?? 0, cover },
    missing: [],
  };
}

function woodMissing({ wood, resolvedWood }: DesignParts): InputName[] {
  if (wood === null) return ['wood'];
  return resolvedWood === null ? ['wood-figures'] : [];
}

function placeMissing({ body, path }: DesignParts): InputName[] {
  if (body === null) return ['body'];
  return path === null ? ['place'] : [];
}

function wireMissing({ anchor, wire }: DesignParts): InputName[] {
  if (anchor.wire === null) return ['wire'];
  const missing: InputName[] = [];
  if (anchor.wireDiameterMm === null) missing.push('wire-diameter');
  if (anchor.wire.sheet === null) missing.push('wire-figures', 'temper');
  else if (anchor.wire.sheet.temper === null) missing.push('temper');
  else if (wire === null && missing.length === 0) missing.push('wire-figures');
  return missing;
}

function eyeMissing({ eyeInsideMm, isEyeClosed }: SpecAnchor): InputName[] {
  return [
    ...(eyeInsideMm === null ? (['eye-size'] as const) : []),
    ...(isEyeClosed === null ? (['eye-closed'] as const) : []),
  ];
}

function gluedMissing(anchor: SpecAnchor): InputName[] {
  const missing = eyeMissing(anchor);
  if (anchor.twistPitchMm === null) missing.push('twist');
  if (anchor.bitDiameterMm === null) missing.push('bit');
  if (anchor.embedmentMm === null) missing.push('embedment');
  if (anchor.loadAngleDeg === null) missing.push('load-angle');
  if (anchor.adhesive === null) missing.push('adhesive');
  else if (anchor.adhesive.sheet === null) missing.push('adhesive-figures');
  return missing;
}
