/**
 * Bond stress of rods glued in wood, by published equations; N, mm, kg/m3, MPa. All were fitted on rods of 3 to 30 mm:
 * for wire they compare and bracket, they do not predict.
 */

/** Riberholt 1986/88, load in N: constants from memory, form and the 200 mm limit read (Lippert 2002 pp. 37-48). */
export function riberholtN(isBrittle: boolean, diameterMm: number, lengthMm: number, densityKgM3: number): number {
  if (lengthMm < 200) return (isBrittle ? 0.037 : 0.046) * densityKgM3 * diameterMm * lengthMm;
  return (isBrittle ? 0.52 : 0.65) * densityKgM3 * diameterMm * Math.sqrt(lengthMm);
}

/** E DIN 1052 (1999), characteristic, MPa (read, same place): 4.0 below 250 mm, falling beyond. */
export function dinBondMpa(lengthMm: number): number {
  if (lengthMm < 250) return 4;
  return lengthMm <= 500 ? 5.25 - 0.005 * lengthMm : Math.max(0, 3.5 - 0.0015 * lengthMm);
}

/** Diameter that ENV 1995-2 counts with: hole, at most a quarter over the rod. */
export function equivalentRodMm(rodMm: number, holeMm: number): number {
  return Math.min(holeMm, 1.25 * rodMm);
}

/** ENV 1995-2, characteristic, MPa (read, same place and doi 10.1617/s11527-018-1268-y). */
export function envBondMpa(rodMm: number, holeMm: number, densityKgM3: number): number {
  return 1.2e-3 * equivalentRodMm(rodMm, holeMm) ** -0.2 * densityKgM3 ** 1.5;
}

/** Kangas 1994, characteristic, MPa on the length less 1.5 d (read, same place). */
export function kangasBondMpa(rodMm: number, lengthMm: number): number {
  return 6.5 * (1 - (lengthMm - 1.5 * rodMm) / (100 * rodMm));
}

/** Aicher 2001, fracture based, epoxy, characteristic, MPa (read, same place). */
export function aicherEpoxyMpa(holeMm: number, lengthMm: number): number {
  return Math.min(7.55, 60 * holeMm ** -0.49 * (lengthMm / holeMm) ** -0.46);
}

/** Aicher 2001, phenol-resorcinol, characteristic, MPa (read): a 21 mm hole 800 mm deep gives 3.62. */
export function aicherPrfMpa(holeMm: number, lengthMm: number): number {
  return Math.min(5.42, 12 * holeMm ** -0.25 * (lengthMm / holeMm) ** -0.12);
}

/**
 * Steiger, Gehri and Widmann 2007, epoxy along the grain, mean, MPa (doi 10.1617/s11527-006-9111-2: exponents read,
 * 7.8, 10 and 480 from memory).
 */
export function steigerMeanMpa(holeMm: number, lengthMm: number, densityKgM3: number): number {
  return 7.8 * (lengthMm / holeMm / 10) ** (-1 / 3) * (densityKgM3 / 480) ** 0.6;
}

/** Moehler and Hemmer 1981, allowable up to 24 mm, MPa (read, same place); half of it across the grain. */
export const MOEHLER_ALLOWABLE_MPA = 1.2;

/** Swedish glulam handbook, MPa (from memory, unconfirmed). */
export function glulamHandbookMpa(rodMm: number, lengthMm: number): number {
  const spread = (0.016 * lengthMm) / Math.sqrt(rodMm);
  return spread === 0 ? 5.5 : (5.5 * Math.tanh(spread)) / spread;
}
