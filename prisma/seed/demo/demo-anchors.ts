import type { AnchorFace } from '@/lib/geometry/shank-path';
import { DEMO_HOOK_2, DEMO_HOOK_4, DEMO_RING, EPOXY_30 } from './demo-materials';
import type { DemoAnchor } from './demo-model';

export const SOFT_WIRE = 'start-stainless-wire-1-0-mm-soft';
export const SPRING_WIRE = 'start-stainless-spring-wire-1-2-mm-hard-drawn';
export const SCREW_EYE = 'start-screw-eye-16-x-1-2-mm-stainless';
export const RING = DEMO_RING;
export const HOOK_4 = DEMO_HOOK_4;
export const HOOK_2 = DEMO_HOOK_2;

/** Where a demo anchor is and how it is pulled. */
export interface DemoPlace {
  readonly face: AnchorFace;
  readonly xMm: number;
  readonly shankAngleDeg: number;
  readonly leansTo?: AnchorFace;
  readonly loadAngleDeg: number;
}

/** Key, name and role of a demo anchor. */
export type DemoAnchorName = readonly [key: string, name: string, role: DemoAnchor['role']];

export const TIE: DemoAnchorName = ['tie', 'Line tie', 'line-tie'];
export const BELLY: DemoAnchorName = ['belly', 'Belly hanger', 'belly-hanger'];
export const TAIL: DemoAnchorName = ['tail', 'Tail hanger', 'tail-hanger'];

export function twisted([key, name, role]: DemoAnchorName, place: DemoPlace, hook: string | null): DemoAnchor {
  const { face, leansTo = null, ...rest } = place;
  return {
    key,
    name,
    role,
    kind: 'twisted-wire',
    ...rest,
    face,
    zMm: face === 'nose' || face === 'tail' ? 0 : null,
    leansTo,
    wireMaterialId: SOFT_WIRE,
    wireDiameterMm: 1,
    twistPitchMm: 7,
    eyeInsideMm: 4,
    isEyeClosed: true,
    bitDiameterMm: 2.2,
    drillDepthMm: 15,
    embedmentMm: 14,
    adhesiveMaterialId: EPOXY_30,
    hookMaterialId: hook,
    splitRingMaterialId: hook === null ? null : RING,
  };
}

export function screwEye(name: DemoAnchorName, place: DemoPlace, hook: string | null): DemoAnchor {
  return {
    ...twisted(name, place, hook),
    kind: 'screw-eye',
    wireMaterialId: SCREW_EYE,
    wireDiameterMm: 1.2,
    twistPitchMm: null,
    eyeInsideMm: 3,
    isEyeClosed: false,
    bitDiameterMm: 1,
    drillDepthMm: 12,
    embedmentMm: 11,
  };
}

export function throughWire(name: DemoAnchorName, place: DemoPlace, hook: string | null): DemoAnchor {
  return {
    ...twisted(name, place, hook),
    kind: 'through-wire',
    wireMaterialId: SPRING_WIRE,
    wireDiameterMm: 1.2,
    twistPitchMm: null,
    eyeInsideMm: 5,
    bitDiameterMm: null,
    drillDepthMm: null,
    embedmentMm: null,
    adhesiveMaterialId: null,
  };
}
