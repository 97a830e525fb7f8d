/** The units a shop reads and types in; everything inside is mm, g, N, degC, mL and minutes. */
export const LENGTH_UNITS = ['mm', 'inch'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

export const TEMPERATURE_UNITS = ['C', 'F'] as const;
export type TemperatureUnit = (typeof TEMPERATURE_UNITS)[number];

export const MASS_UNITS = ['g', 'oz'] as const;
export type MassUnit = (typeof MASS_UNITS)[number];

export const FORCE_UNITS = ['N', 'lbf'] as const;
export type ForceUnit = (typeof FORCE_UNITS)[number];

/** A shop's choice. */
export interface UnitChoice {
  readonly lengthUnit: LengthUnit;
  readonly temperatureUnit: TemperatureUnit;
  readonly massUnit: MassUnit;
  readonly forceUnit: ForceUnit;
}
