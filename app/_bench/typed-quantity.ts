import { massIn, temperatureIn } from '@/lib/units/convert';
import { type Quantity, readQuantity } from '@/lib/units/read-quantity';
import type { MassUnit, TemperatureUnit } from '@/lib/units/unit-choice';

export type Typed =
  | { readonly ok: true; readonly value: number }
  /** What is wrong, for the place beside the field. */
  | { readonly ok: false; readonly error: string };

/** Reads what was typed into a field whose unit is `bareUnit`, or says what is wrong with it. */
export function readTyped(quantity: Quantity, text: string, bareUnit: string, example: string): Typed {
  const read = readQuantity(quantity, text, bareUnit);
  if (read.ok) return { ok: true, value: read.value };
  switch (read.code) {
    case 'empty':
      return { ok: false, error: `Write it down, for example ${example}.` };
    case 'unknown-unit':
      return { ok: false, error: `"${read.unit}" is no unit for this. Use ${read.accepted.join(', ')}.` };
    case 'below-zero':
      return { ok: false, error: 'This cannot be below zero.' };
    case 'ambiguous-comma':
      return { ok: false, error: 'The comma can mean two things here. Write a decimal point, or no comma.' };
    case 'not-a-number':
    case 'zero-denominator':
      return { ok: false, error: `This is no number. Write it like ${example}.` };
  }
}

/** A mass as it stands in a field of the shop's unit. */
export function typedMass(massG: number, unit: MassUnit): string {
  return String(Number(massIn(unit, massG).toFixed(unit === 'oz' ? 3 : 2)));
}

/** A temperature as it stands in a field of the shop's unit. */
export function typedTemperature(temperatureC: number, unit: TemperatureUnit): string {
  return String(Number(temperatureIn(unit, temperatureC).toFixed(1)));
}
