import { inches } from '@/lib/units/force-and-length';

/** Cover in shank diameters from which on a bond is at its full strength, and the least a rule accepts. */
export const FULL_COVER_DIAMETERS = 2.5;
export const LEAST_COVER_DIAMETERS = 1.5;
/** Gap from wire to wall up to which the strength does not depend on the glue's thickness. */
export const THICK_GLUE_MM = inches(0.04);
/** Interference of a twisted pair that the practice value was itself obtained with (.0039 in), rounded up. */
export const USUAL_INTERFERENCE_MM = inches(0.005);
/** Warmest the epoxy is taken at full strength, and where nothing is relied on, degC. */
export const FULL_STRENGTH_TO_C = 30;
export const NO_STRENGTH_FROM_C = 60;

/**
 * Share of the bond left by the cover, both from the shank's axis: 1 from 2.5 shank diameters, below it the square
 * root of cover over that.
 *
 * Source: 2.5 d from codes for glued-in rods, the root from a design guide (both from memory).
 */
export function coverFactor(coverMm: number, shankMm: number): number {
  return Math.sqrt(Math.max(0, Math.min(1, coverMm / (FULL_COVER_DIAMETERS * shankMm))));
}

/**
 * Share of the bond left by the fit of the pair's envelope in its hole.
 *
 * 1 from the usual slight interference to a gap of 0.040 in (lap joints do not depend on glue thickness there, read);
 * 0.9 beyond either, reached at once for a gap, and for interference in proportion, so that a thicker wire in the same
 * hole never comes out weaker. Chosen: the practice value behind the bond's prior was obtained with .0039 in of
 * interference, so that a factor on that fit would count it twice.
 */
export function fitFactor(envelopeMm: number, bitMm: number): number {
  if (0.5 * (bitMm - envelopeMm) > THICK_GLUE_MM) return 0.9;
  return Math.max(0.9, Math.min(1, (bitMm + USUAL_INTERFERENCE_MM) / envelopeMm));
}

/**
 * Diameter of the cylinder that shears: the wider of hole and envelope. A hole wider than the thickest glue that was
 * ever tested counts only up to that.
 */
export function shearDiameterMm(envelopeMm: number, bitMm: number): number {
  return Math.min(Math.max(bitMm, envelopeMm), envelopeMm + 2 * THICK_GLUE_MM);
}

/**
 * Share of the bond left at a service temperature: 1 to 30 degC, falling straight to 0.5 at 60; null above, where
 * room-temperature epoxies soften and nothing is relied on.
 *
 * Source: glass transition of such epoxies at 40 to 60 degC (from memory); the line is chosen.
 */
export function temperatureFactor(temperatureC: number): number | null {
  if (temperatureC <= FULL_STRENGTH_TO_C) return 1;
  if (temperatureC > NO_STRENGTH_FROM_C) return null;
  return 1 - (0.5 * (temperatureC - FULL_STRENGTH_TO_C)) / (NO_STRENGTH_FROM_C - FULL_STRENGTH_TO_C);
}
