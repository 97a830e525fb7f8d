import { readNumber } from '@/lib/units/read-number';
import { readQuantity } from '@/lib/units/read-quantity';
import type { LengthUnit } from '@/lib/units/unit-choice';
import type { TypedValue } from './typed-field';

/** A length as makers write it, within limits; a minus before it where `low` is below zero. mm. */
export function readLength(text: string, unit: LengthUnit, low: number, high: number): TypedValue {
  const bare = unit === 'inch' ? 'in' : 'mm';
  const example = unit === 'inch' ? '1/2, 5/8, 12 mm' : '12, 12.5, 1/2 in';
  const minus = low < 0 ? /^\s*[-\u2212]/.exec(text) : null;
  const read = readQuantity('length', minus === null ? text : text.slice(minus[0].length), bare);
  if (!read.ok) return { ok: false, need: `Write a length: ${example}.` };
  const value = minus === null ? read.value : -read.value;
  if (value < low || value > high) return { ok: false, need: 'This is off the body.' };
  return { ok: true, value };
}

/** Whole or decimal degrees within limits. */
export function readDegrees(text: string, low: number, high: number): TypedValue {
  const need = `Write degrees from ${low} to ${high}.`;
  const minus = /^\s*[-\u2212]/.exec(text);
  const read = readNumber(minus === null ? text : text.slice(minus[0].length));
  if (!read.ok) return { ok: false, need };
  // Hundredths, as the form of the anchors takes them.
  const value = Math.round((minus === null ? read.value : -read.value) * 100) / 100 + 0;
  return value < low || value > high ? { ok: false, need } : { ok: true, value };
}
