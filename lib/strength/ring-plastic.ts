import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { psi } from '@/lib/units/force-and-length';

/** Young's modulus of stainless wire, 28e6 psi (from memory). */
export const STAINLESS_MODULUS_MPA = psi(28e6);

/** Bending moment at which a round wire yields right through, N mm. */
export function plasticMomentNmm(yieldMpa: number, wireDiameterMm: number): number {
  return (yieldMpa * wireDiameterMm ** 3) / 6;
}

/** Moments and movements of a thin elastic ring pulled apart at two opposite points. */
export interface RingUnderPull {
  readonly atLoadNmm: number;
  readonly atSideNmm: number;
  readonly elongationMm: number;
  readonly narrowingMm: number;
}

/**
 * An elastic ring of mean radius `radiusMm` under a pull of `loadN`.
 *
 * Source: W R / pi at the load (Mechanical Engineer's Data Handbook p. 29, read), 0.1817 W R at the side (Roark, ring
 * case 2 at 90 degrees, read), 0.1488 and 0.1366 W R^3 / E I (Roark 9.2 case 1, from memory).
 */
export function ringUnderPull(
  loadN: number,
  radiusMm: number,
  wireDiameterMm: number,
  modulusMpa: number,
): RingUnderPull {
  const inertia = (Math.PI * wireDiameterMm ** 4) / 64;
  const movement = (loadN * radiusMm ** 3) / (modulusMpa * inertia);
  return {
    atLoadNmm: (loadN * radiusMm) / Math.PI,
    atSideNmm: (0.5 - 1 / Math.PI) * loadN * radiusMm,
    elongationMm: (Math.PI / 4 - 2 / Math.PI) * movement,
    narrowingMm: (2 / Math.PI - 0.5) * movement,
  };
}

/**
 * Load at which a ring that is closed ovals for good: four plastic hinges, 4 M / R.
 *
 * Source: plastic hinges in a ring (derived).
 */
export function closedRingOvalsN(yieldMpa: number, wireDiameterMm: number, radiusMm: number): number {
  return (4 * plasticMomentNmm(yieldMpa, wireDiameterMm)) / radiusMm;
}

/**
 * Load at which an open eye bends open: one hinge opposite the gap, with the pull in the wire taken along.
 *
 * Source: N = N_p (2/pi)(f + sin f cos f), M = M_p cos^3 f, M = N R, full plasticity of a round section under tension
 * and bending (derived). .041 in wire of 206 ksi yield on 0.114 in: 20.60 lbf.
 */
export function openEyeOpensN(yieldMpa: number, wireDiameterMm: number, radiusMm: number): number {
  const tension = 0.25 * Math.PI * wireDiameterMm ** 2 * yieldMpa;
  const moment = plasticMomentNmm(yieldMpa, wireDiameterMm);
  const load = (f: number) => tension * (2 / Math.PI) * (f + Math.sin(f) * Math.cos(f));
  const f = bracketedRoot((angle) => load(angle) * radiusMm - moment * Math.cos(angle) ** 3, 0, 0.5 * Math.PI, 1e-14);
  return load(f);
}
