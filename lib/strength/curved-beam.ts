/** Where the neutral axis of a bent curved beam lies: nearer the inside than the middle. */

/** Neutral radius of a rectangle `heightMm` high with its inside at `insideMm`. */
export function rectangleNeutralMm(insideMm: number, heightMm: number): number {
  return heightMm / Math.log((insideMm + heightMm) / insideMm);
}

/** Neutral radius of round wire bent to a radius `centreMm` of its middle. */
export function roundNeutralMm(centreMm: number, wireDiameterMm: number): number {
  const r = 0.5 * wireDiameterMm;
  return (r * r) / (2 * (centreMm - Math.sqrt(centreMm * centreMm - r * r)));
}

export interface CurvedSection {
  readonly areaMm2: number;
  readonly centreMm: number;
  readonly neutralMm: number;
  readonly insideMm: number;
  readonly outsideMm: number;
}

/**
 * Stresses inside and outside of a hook under `loadN` through its centre of curvature, MPa.
 *
 * Source: Winkler's curved beam, N / A + M c / (A e r); Shigley fig. 3-35 prints 16.9 and -5.63 kpsi for its hook (read).
 */
export function hookStresses(section: CurvedSection, loadN: number): { insideMpa: number; outsideMpa: number } {
  const { areaMm2, centreMm, neutralMm, insideMm, outsideMm } = section;
  const moment = loadN * centreMm;
  const offset = centreMm - neutralMm;
  const bending = (r: number) => (moment * (neutralMm - r)) / (areaMm2 * offset * r);
  return { insideMpa: loadN / areaMm2 + bending(insideMm), outsideMpa: loadN / areaMm2 + bending(outsideMm) };
}

/** Stresses of an open eye of round wire pulled by `loadN`: .041 in on 0.114 in under 10 lbf, 202,448 psi inside. */
export function openEyeStresses(radiusMm: number, wireDiameterMm: number, loadN: number) {
  const half = 0.5 * wireDiameterMm;
  return hookStresses(
    {
      areaMm2: Math.PI * half * half,
      centreMm: radiusMm,
      neutralMm: roundNeutralMm(radiusMm, wireDiameterMm),
      insideMm: radiusMm - half,
      outsideMm: radiusMm + half,
    },
    loadN,
  );
}
