import type { CoverProfile } from '@/lib/geometry/cover';
import type { ResolvedWire } from '@/lib/materials/resolved-wire';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import type { BondBelief } from '@/lib/strength/bond-belief';
import type { Eye } from '@/lib/strength/eye-bending';

interface Loaded {
  /** Between the load and the shank's axis: 0 straight, 90 square. */
  readonly loadAngleDeg: number;
  /** Along the shank; null: ample wood all round, as in a test board. */
  readonly cover: CoverProfile | null;
}

/** A twisted pair glued in a drilled hole. */
export interface TwistedWireAnchor extends Loaded {
  readonly kind: 'twisted-wire';
  readonly wood: ResolvedWood;
  readonly wire: ResolvedWire;
  /** Axial length of one full turn of the twist. */
  readonly twistPitchMm: number;
  readonly eye: Eye;
  readonly bitDiameterMm: number;
  readonly embedmentMm: number;
  readonly voidMm: number;
  /** Null: no evidence of a bond with this adhesive. */
  readonly belief: BondBelief | null;
  readonly temperatureC: number;
}

/** A screw eye. */
export interface ScrewEyeAnchor extends Loaded {
  readonly kind: 'screw-eye';
  readonly wood: ResolvedWood;
  readonly threadDiameterMm: number;
  /** Full thread in the wood. */
  readonly threadMm: number;
  /** Null: not known. */
  readonly eye: Eye | null;
  readonly wire: ResolvedWire | null;
  readonly statedStrengthN: number | null;
}

/** A wire that runs through the body from eye to eye. */
export interface ThroughWireAnchor extends Loaded {
  readonly kind: 'through-wire';
  /** Null: not known; only the bedding of the eye needs it. */
  readonly wood: ResolvedWood | null;
  readonly wire: ResolvedWire;
  /** Null: a straight run. */
  readonly twistPitchMm: number | null;
  readonly eye: Eye;
}

export type AnchorDesign = TwistedWireAnchor | ScrewEyeAnchor | ThroughWireAnchor;
