import type { AnchorKind, AnchorRole } from '@/lib/geometry/anchor';
import type { BallastItem } from '@/lib/geometry/ballast';
import type { AnchorFace } from '@/lib/geometry/shank-path';
import type { LineType } from '@/lib/strength/fishing-line';
import type { DemoOperation } from './demo-routes';

export interface DemoAnchor {
  readonly key: string;
  readonly name: string;
  readonly role: AnchorRole;
  readonly kind: AnchorKind;
  readonly face: AnchorFace;
  readonly xMm: number;
  readonly zMm: number | null;
  /** Between the shank and the length of the body, degrees: 0 along it, 90 straight up from the belly. */
  readonly shankAngleDeg: number;
  readonly leansTo: AnchorFace | null;
  readonly loadAngleDeg: number;
  readonly wireMaterialId: string | null;
  readonly wireDiameterMm: number | null;
  readonly twistPitchMm: number | null;
  readonly eyeInsideMm: number;
  readonly isEyeClosed: boolean;
  readonly bitDiameterMm: number | null;
  readonly drillDepthMm: number | null;
  readonly embedmentMm: number | null;
  readonly adhesiveMaterialId: string | null;
  readonly hookMaterialId: string | null;
  readonly splitRingMaterialId: string | null;
}

export interface DemoModel {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly revisions: readonly DemoRevision[];
}

export interface DemoRevision {
  readonly id: string;
  readonly letter: string;
  /** So many days ago. */
  readonly frozenDaysAgo: number;
  readonly woodMaterialId: string;
  readonly lengthMm: number;
  /** Stations along the body: [x, half height, half width], mm. */
  readonly profile: readonly (readonly [number, number, number])[];
  readonly lineLabelN: number;
  readonly lineType: LineType;
  readonly ballast: readonly BallastItem[];
  readonly note: string;
  readonly anchors: readonly DemoAnchor[];
  readonly route: readonly DemoOperation[];
  /** [material, quantity a piece, unit, note] */
  readonly bill: readonly (readonly [string, number, 'g' | 'mm' | 'pieces', string])[];
}
