import { EPOXY_30, EPOXY_60 } from './demo-materials';
import type { DemoAnchor } from './demo-model';

export const SOFT_WIRE = 'start-stainless-wire-1-0-mm-soft';
export const SPRING_WIRE = 'start-stainless-spring-wire-1-2-mm-hard-drawn';
export const SCREW_EYE = 'start-screw-eye-16-x-1-2-mm-stainless';
export const RING = 'start-split-ring-8-mm-stainless';
export const HOOK_4 = 'start-treble-hook-size-4';
export const HOOK_2 = 'start-treble-hook-size-2';

export function twisted(
  key: string,
  name: string,
  role: DemoAnchor['role'],
  xMm: number,
  shankAngleDeg: number,
  hook: string | null,
): DemoAnchor {
  return {
    key,
    name,
    role,
    kind: 'twisted-wire',
    xMm,
    shankAngleDeg,
    wireMaterialId: SOFT_WIRE,
    wireDiameterMm: 1,
    bitDiameterMm: 2.4,
    drillDepthMm: role === 'belly-hanger' ? 15 : 24,
    embedmentMm: role === 'belly-hanger' ? 14 : 22,
    adhesiveMaterialId: EPOXY_30,
    hookMaterialId: hook,
    splitRingMaterialId: hook === null ? null : RING,
  };
}

export function screwEye(
  key: string,
  name: string,
  role: DemoAnchor['role'],
  xMm: number,
  shankAngleDeg: number,
  hook: string | null,
): DemoAnchor {
  return {
    ...twisted(key, name, role, xMm, shankAngleDeg, hook),
    kind: 'screw-eye',
    wireMaterialId: null,
    wireDiameterMm: 1.2,
    bitDiameterMm: 1,
    drillDepthMm: 12,
    embedmentMm: 11,
  };
}

export function throughWire(
  key: string,
  name: string,
  role: DemoAnchor['role'],
  xMm: number,
  shankAngleDeg: number,
  hook: string | null,
): DemoAnchor {
  return {
    ...twisted(key, name, role, xMm, shankAngleDeg, hook),
    kind: 'through-wire',
    wireMaterialId: SPRING_WIRE,
    wireDiameterMm: 1.2,
    bitDiameterMm: 3,
    drillDepthMm: 150,
    embedmentMm: 60,
    adhesiveMaterialId: EPOXY_60,
  };
}
