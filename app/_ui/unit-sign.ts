import type { LengthUnit, TemperatureUnit } from '@/lib/units/unit-choice';

const LENGTH_SIGNS: { readonly [U in LengthUnit]: string } = { inch: 'in', mm: 'mm' };

/** What stands at the end of a field for a length. */
export function lengthSign(unit: LengthUnit): string {
  return LENGTH_SIGNS[unit];
}

/** What stands at the end of a field for a temperature. */
export function temperatureSign(unit: TemperatureUnit): string {
  return `°${unit}`;
}
