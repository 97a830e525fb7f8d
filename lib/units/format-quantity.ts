import { forceIn, lengthIn, massIn, temperatureIn } from '@/lib/units/convert';
import type { ForceUnit, LengthUnit, MassUnit, TemperatureUnit } from '@/lib/units/unit-choice';

/**
 * Quantities in the shop's units. Meant for tabular figures: a fixed number of decimals, a true minus sign. Every
 * function throws RangeError for NaN and infinity, so that neither reaches a screen.
 */

/** `32 mm`; in inches the nearest 64th in lowest terms: `1 1/4"`, `5/64"`, `2"`. A maker's ruler has no finer marks. */
export function lengthText(lengthMm: number, unit: LengthUnit): string {
  finite(lengthMm, 'lengthText');
  return unit === 'inch' ? `${fractionText(lengthIn('inch', lengthMm), 64)}"` : `${decimals(lengthMm, 1, true)} mm`;
}

/** A wire's diameter: inches as thousandths without the leading zero, `.041"`; mm with two decimals, `1.04 mm`. */
export function wireDiameterText(diameterMm: number, unit: LengthUnit): string {
  finite(diameterMm, 'wireDiameterText');
  if (unit === 'mm') return `${decimals(diameterMm, 2, false)} mm`;
  return `${decimals(lengthIn('inch', diameterMm), 3, false).replace(/^(\u2212?)0\./, '$1.')}"`;
}

/** `21.5 °C`, `70.7 °F`. */
export function temperatureText(temperatureC: number, unit: TemperatureUnit): string {
  finite(temperatureC, 'temperatureText');
  return `${decimals(temperatureIn(unit, temperatureC), 1, false)} °${unit}`;
}

/** A difference of temperatures, such as a tolerance: `1.5 °C` is `2.7 °F`. */
export function temperatureDifferenceText(differenceC: number, unit: TemperatureUnit): string {
  finite(differenceC, 'temperatureDifferenceText');
  return `${decimals(unit === 'F' ? differenceC * 1.8 : differenceC, 1, false)} °${unit}`;
}

/** `12.5 g`, `0.44 oz`. */
export function massText(massG: number, unit: MassUnit): string {
  finite(massG, 'massText');
  return unit === 'oz' ? `${decimals(massIn('oz', massG), 2, false)} oz` : `${decimals(massG, 1, false)} g`;
}

/** `53 N`, `12.0 lbf`. */
export function forceText(forceN: number, unit: ForceUnit): string {
  finite(forceN, 'forceText');
  return unit === 'lbf' ? `${decimals(forceIn('lbf', forceN), 1, false)} lbf` : `${decimals(forceN, 0, false)} N`;
}

/** `12.5 mL`. */
export function volumeText(volumeMl: number): string {
  finite(volumeMl, 'volumeText');
  return `${decimals(volumeMl, 1, false)} mL`;
}

function fractionText(value: number, parts: number): string {
  const count = Math.round(Math.abs(value) * parts);
  const sign = value < 0 && count > 0 ? '\u2212' : '';
  const whole = Math.floor(count / parts);
  let numerator = count % parts;
  let denominator = parts;
  if (numerator === 0) return `${sign}${whole}`;
  while (numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  return `${sign}${whole === 0 ? '' : `${whole} `}${numerator}/${denominator}`;
}

function decimals(value: number, places: number, dropZeros: boolean): string {
  const fixed = Math.abs(value).toFixed(places);
  const sign = value < 0 && Number(fixed) !== 0 ? '\u2212' : '';
  return sign + (dropZeros ? String(Number(fixed)) : fixed);
}

function finite(value: number, name: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} needs a finite number, got ${value}`);
}
