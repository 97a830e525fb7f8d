import type { AnchorKind, AnchorRole } from '@/lib/geometry/anchor';
import type { DemoOperation } from './demo-routes';

export interface DemoAnchor {
  readonly key: string;
  readonly name: string;
  readonly role: AnchorRole;
  readonly kind: AnchorKind;
  readonly xMm: number;
  /** Between the shank and the length of the body, degrees: 0 along it, 90 straight up from the belly. */
  readonly shankAngleDeg: number;
  readonly wireMaterialId: string | null;
  readonly wireDiameterMm: number;
  readonly bitDiameterMm: number;
  readonly drillDepthMm: number;
  readonly embedmentMm: number;
  readonly adhesiveMaterialId: string;
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
  readonly lineClassN: number;
  readonly note: string;
  readonly anchors: readonly DemoAnchor[];
  readonly route: readonly DemoOperation[];
  /** [material, quantity a piece, unit, note] */
  readonly bill: readonly (readonly [string, number, 'g' | 'mm' | 'pieces', string])[];
}
