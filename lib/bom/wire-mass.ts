import type { WireAlloy } from '@/lib/materials/wire-sheet';

/**
 * Density of a wire's alloy, kg/m^3; null where nobody has said what it is.
 * Source: 7930 (302, 304) and 7980 (316) as steel mass tables print them; brass 8500 from memory.
 */
export function wireDensity(alloy: WireAlloy): number | null {
  switch (alloy) {
    case 'stainless-302-304':
      return 7930;
    case 'stainless-316':
      return 7980;
    case 'brass':
      return 8500;
    case 'other':
      return null;
  }
}

/** Mass of a metre of round wire, g. Throws RangeError unless both are positive. Source: pi/4 d^2 rho. */
export function wireMassPerMetreG(diameterMm: number, densityKgM3: number): number {
  if (!(diameterMm > 0 && densityKgM3 > 0)) {
    throw new RangeError(`wireMassPerMetreG needs a diameter and a density, got ${diameterMm}, ${densityKgM3}`);
  }
  return (0.25 * Math.PI * diameterMm ** 2 * densityKgM3) / 1000;
}

/** Length of a coil by its mass, m. Throws RangeError unless all are positive. */
export function coilLengthM(massG: number, diameterMm: number, densityKgM3: number): number {
  if (!(massG > 0)) throw new RangeError(`coilLengthM needs a mass, got ${massG}`);
  return massG / wireMassPerMetreG(diameterMm, densityKgM3);
}
