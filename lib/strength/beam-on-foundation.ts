import { inches, psi } from '@/lib/units/force-and-length';

/** A shank in wood that gives way elastically: how it first moves, before anything crushes. */
export interface ElasticShank {
  /** Foundation stiffness per length, MPa. */
  readonly foundationMpa: number;
  /** Bending stiffness of the shank, N mm2. */
  readonly bendingNmm2: number;
}

/**
 * Stiffness of wood under a pin per length of pin, MPa. Source: 2.144e6 G lbf/in3 times the diameter (Wilkinson 1971,
 * from memory, low confidence).
 */
export function woodFoundationMpa(gravity: number, diameterMm: number): number {
  return 2.144e6 * gravity * psi(1) * (diameterMm / inches(1));
}

/** Decay of the movement with depth, 1/mm. */
export function foundationDecay({ foundationMpa, bendingNmm2 }: ElasticShank): number {
  return (foundationMpa / (4 * bendingNmm2)) ** 0.25;
}

/** Depth from which on more embedment no longer stiffens the shank, mm: pi over the decay. 0.45 in for .041 wire. */
export function longShankMm(shank: ElasticShank): number {
  return Math.PI / foundationDecay(shank);
}

/**
 * First movement of a long shank at the surface and its greatest moment, under `loadN` applied `armMm` above the wood.
 *
 * Source: Hetenyi, semi-infinite beam with end load and moment (damping functions read, end-load case derived).
 */
export function firstMovement(shank: ElasticShank, loadN: number, armMm: number) {
  const decay = foundationDecay(shank);
  const moment = loadN * armMm;
  const surfaceMm = (2 * loadN * decay) / shank.foundationMpa + (2 * moment * decay ** 2) / shank.foundationMpa;
  // dM/dx = 0 where tan(decay x) = P / (P + 2 M0 decay).
  const at = Math.atan(loadN / (loadN + 2 * moment * decay)) / decay;
  const angle = decay * at;
  const greatestNmm =
    (Math.exp(-angle) / decay) * (loadN * Math.sin(angle) + moment * decay * (Math.cos(angle) + Math.sin(angle)));
  return { surfaceMm, greatestNmm, atMm: at };
}
