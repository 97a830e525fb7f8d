import { lengthIn, massIn, temperatureIn } from '@/lib/units/convert';
import { lengthText } from '@/lib/units/format-quantity';
import type { LengthUnit, MassUnit, TemperatureUnit } from '@/lib/units/unit-choice';

/*
 * Quantities as text in a field that is edited and read back: reading the text gives the same quantity again, so that
 * saving a form in which nothing was changed changes nothing.
 */

/** A length as it is typed in the shop's unit; one that lies on no 64th of an inch keeps its mm: `2 1/2`, `75 mm`. */
export function lengthInput(lengthMm: number, unit: LengthUnit): string {
  if (unit === 'mm') return plainDecimals(lengthMm);
  const sixtyFourths = lengthIn('inch', lengthMm) * 64;
  const isOnMark = Math.abs(sixtyFourths - Math.round(sixtyFourths)) < 1e-6;
  return isOnMark ? lengthText(lengthMm, 'inch').replace('"', '') : `${plainDecimals(lengthMm)} mm`;
}

/** A length either way from a middle line as it is typed: `-1/8`. */
export function signedLengthInput(lengthMm: number, unit: LengthUnit): string {
  return lengthMm < 0 ? `-${lengthInput(-lengthMm, unit)}` : lengthInput(lengthMm, unit);
}

/** A diameter as it is typed: inches as thousandths where it is one, else mm: `.041`, `1.04 mm`. */
export function diameterInput(diameterMm: number, unit: LengthUnit): string {
  if (unit === 'mm') return plainDecimals(diameterMm);
  const inches = lengthIn('inch', diameterMm);
  const isThousandth = Math.abs(inches * 1000 - Math.round(inches * 1000)) < 1e-6;
  return isThousandth ? plainDecimals(inches).replace(/^0\./, '.') : `${plainDecimals(diameterMm)} mm`;
}

/** A mass as it is typed. */
export function massInput(massG: number, unit: MassUnit): string {
  return plainDecimals(massIn(unit, massG));
}

/** A temperature as it is typed. */
export function temperatureInput(temperatureC: number, unit: TemperatureUnit): string {
  return plainDecimals(temperatureIn(unit, temperatureC));
}

/** A number without needless zeros, to a millionth of the unit. */
export function plainDecimals(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`plainDecimals needs a finite number, got ${value}`);
  return String(Number(value.toFixed(6)));
}
