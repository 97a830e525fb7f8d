/** Bond stress along a lap or rod is not even: it peaks where the stiffer part enters. */

/** Two parts glued over an overlap; stiffnesses per width, N/mm; moduli MPa; lengths mm. */
export interface GluedLap {
  readonly firstStiffness: number;
  readonly secondStiffness: number;
  readonly glueShearMpa: number;
  readonly glueThicknessMm: number;
  readonly overlapMm: number;
}

/**
 * Greatest over mean shear stress of a lap. Both 70 GPa and 2 mm thick, glue of 1 GPa and 0.2 mm, 25 mm: 3.3492.
 *
 * Source: Volkersen, (r/2)(coth(r/2) + |1 - s| / (1 + s) tanh(r/2)) (lecture formula sheet, read).
 */
export function lapPeakRatio(lap: GluedLap): number {
  const ratio = lap.firstStiffness / lap.secondStiffness;
  const square = ((1 + ratio) * lap.glueShearMpa * lap.overlapMm ** 2) / (lap.firstStiffness * lap.glueThicknessMm);
  const half = 0.5 * Math.sqrt(square);
  return half * (1 / Math.tanh(half) + (Math.abs(1 - ratio) / (1 + ratio)) * Math.tanh(half));
}

/** A rod glued in a body; axial stiffnesses in N, interface stiffness in MPa per mm. */
export interface RodInBody {
  readonly diameterMm: number;
  readonly interfaceMpaPerMm: number;
  readonly rodStiffnessN: number;
  readonly bodyStiffnessN: number;
  readonly lengthMm: number;
}

/** Peaks of the bond stress over its mean where the rod enters (mouth) and at its end (tip). */
export interface StressPeaks {
  readonly mouth: number;
  readonly tip: number;
}

/** Depth over which the bond stress dies away, mm: what the saturation of the bond estimate stands for. */
export function transferLengthMm(rod: Omit<RodInBody, 'lengthMm'>): number {
  const { diameterMm, interfaceMpaPerMm, rodStiffnessN, bodyStiffnessN } = rod;
  return 1 / Math.sqrt(Math.PI * diameterMm * interfaceMpaPerMm * (1 / rodStiffnessN + 1 / bodyStiffnessN));
}

/**
 * Peaks when the body is held at the face the rod leaves, as in a plain pull jig: x coth x and x / sinh x.
 * Source: axisymmetric shear lag (derived, checked against a numerical solution).
 */
export function jigStressPeaks(rod: RodInBody): StressPeaks {
  return saturatedPeaks(rod.lengthMm / transferLengthMm(rod));
}

/** The same of a rod `depth` transfer lengths deep. */
export function saturatedPeaks(depth: number): StressPeaks {
  return { mouth: depth / Math.tanh(depth), tip: depth / Math.sinh(depth) };
}

/** Peaks when the body is pulled from its far end, as on a fish. Same source. */
export function fishStressPeaks(rod: RodInBody): StressPeaks {
  const x = rod.lengthMm / transferLengthMm(rod);
  const a = rod.rodStiffnessN / rod.bodyStiffnessN;
  return {
    mouth: (x / (1 + a)) * (1 / Math.tanh(x) + a / Math.sinh(x)),
    tip: (x / (1 + a)) * (a / Math.tanh(x) + 1 / Math.sinh(x)),
  };
}

/** Interface stiffness of a thin rod, MPa per mm: the wood round it and the glue in series (derived). */
export function interfaceStiffness(
  rodMm: number,
  bodyMm: number,
  woodShearMpa: number,
  glueThicknessMm: number,
  glueShearMpa: number,
): number {
  return 1 / ((rodMm * Math.log(bodyMm / rodMm)) / (2 * woodShearMpa) + glueThicknessMm / glueShearMpa);
}
