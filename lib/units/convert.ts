import type { ForceUnit, LengthUnit, MassUnit, TemperatureUnit } from '@/lib/units/unit-choice';

/**
 * Exact factors between the shop's units and the ones inside. Source: the international yard and pound agreement of
 * 1959 (inch 25.4 mm, pound 0.45359237 kg) and the conventional gravity 9.80665 m/s2 (3rd CGPM, 1901); from memory.
 */
export const MM_PER_INCH = 25.4;
export const G_PER_OUNCE = 28.349523125;
export const N_PER_POUND_FORCE = 4.4482216152605;

/** A length in mm, in the shop's unit. */
export function lengthIn(unit: LengthUnit, lengthMm: number): number {
  return unit === 'inch' ? lengthMm / MM_PER_INCH : lengthMm;
}

/** A mass in g, in the shop's unit. */
export function massIn(unit: MassUnit, massG: number): number {
  return unit === 'oz' ? massG / G_PER_OUNCE : massG;
}

/** A force in N, in the shop's unit. */
export function forceIn(unit: ForceUnit, forceN: number): number {
  return unit === 'lbf' ? forceN / N_PER_POUND_FORCE : forceN;
}

/** A temperature in degC, in the shop's unit. */
export function temperatureIn(unit: TemperatureUnit, temperatureC: number): number {
  return unit === 'F' ? temperatureC * 1.8 + 32 : temperatureC;
}
