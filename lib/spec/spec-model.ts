import type { AnchorKind, AnchorRole } from '@/lib/geometry/anchor';
import type { BodyProfile } from '@/lib/geometry/body-profile';
import type { AnchorFace } from '@/lib/geometry/shank-path';
import type { AdhesiveStrengthSheet } from '@/lib/materials/adhesive-strength-sheet';
import type { FittingSheet, ScrewEyeSheet } from '@/lib/materials/fitting-sheet';
import type { WireSheet } from '@/lib/materials/wire-sheet';
import type { WoodSheet } from '@/lib/materials/wood-sheet';
import type { LineType } from '@/lib/strength/fishing-line';
import type { Instant } from '@/lib/units/instant';

/** A material as a revision names it; its sheet null: no figures were entered. */
export interface SpecMaterial<Sheet> {
  readonly materialId: string;
  readonly name: string;
  readonly sheet: Sheet | null;
}

export interface SpecWood extends SpecMaterial<WoodSheet> {
  /** Density of the blanks as weighed, at `moisturePercent`. */
  readonly weighedDensityKgM3: number | null;
  /** Null: 12 %. */
  readonly moisturePercent: number | null;
}

/** An eye or hanger as a revision has it. Null: not entered, or there is none (hook, ring). Lengths mm, angles degrees. */
export interface SpecAnchor {
  readonly anchorId: string;
  readonly name: string;
  readonly role: AnchorRole;
  readonly kind: AnchorKind;
  readonly face: AnchorFace | null;
  /** From the nose; for belly and back. */
  readonly xMm: number | null;
  /** Above the axis; for nose and tail. */
  readonly zMm: number | null;
  readonly slantDeg: number | null;
  /** Between load and shank: 0 straight, 90 square. */
  readonly loadAngleDeg: number | null;
  readonly wire: SpecMaterial<WireSheet> | null;
  readonly wireDiameterMm: number | null;
  /** Axial length of one full turn of the twist. */
  readonly twistPitchMm: number | null;
  readonly eyeInsideMm: number | null;
  readonly isEyeClosed: boolean | null;
  readonly bitDiameterMm: number | null;
  readonly drillDepthMm: number | null;
  readonly embedmentMm: number | null;
  readonly adhesive: SpecMaterial<AdhesiveStrengthSheet> | null;
  readonly screwEye: SpecMaterial<ScrewEyeSheet> | null;
  readonly hook: SpecMaterial<FittingSheet> | null;
  readonly splitRing: SpecMaterial<FittingSheet> | null;
}

/** The line a model is made for. */
export interface SpecLine {
  readonly labelN: number;
  readonly type: LineType;
  readonly knotShare: number | null;
  readonly dragShare: number | null;
}

/** What one piece takes of a material. */
export interface SpecBillLine {
  readonly materialId: string;
  readonly quantity: number;
  readonly quantityUnit: 'g' | 'mm' | 'pieces';
}

/** A written reason to accept a short. It belongs to one revision and lapses with the next; one taken back is left out. */
export interface SpecWaiver {
  readonly waiverId: string;
  readonly revisionId: string;
  readonly ruleId: string;
  /** The subject's key, as a finding has it. */
  readonly subject: string;
  readonly reason: string;
  readonly personName: string;
  readonly grantedAt: Instant;
}

/** One revision of a model as plain data: whatever is not known is null, and nothing is checked yet. */
export interface SpecModel {
  readonly modelId: string;
  readonly modelName: string;
  readonly revisionId: string;
  readonly revisionLetter: string;
  readonly body: { readonly stations: BodyProfile; readonly lengthMm: number | null } | null;
  readonly wood: SpecWood | null;
  readonly anchors: readonly SpecAnchor[];
  readonly line: SpecLine | null;
  /** Fish that may be swung out on the line; null: none. */
  readonly fishMassG: number | null;
  /** Null: no bill is kept. */
  readonly bill: readonly SpecBillLine[] | null;
  readonly waivers: readonly SpecWaiver[];
}
