import { G_PER_OUNCE, MM_PER_INCH, N_PER_POUND_FORCE } from '@/lib/units/convert';
import { type NumberRefusal, readNumber } from '@/lib/units/read-number';

/** What can be read: a length in mm, mass in g, force in N, temperature in degC, volume in mL, duration in minutes. */
export type Quantity = 'length' | 'mass' | 'force' | 'temperature' | 'volume' | 'duration';

export type ReadQuantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly code: NumberRefusal }
  /** `accepted` lists the units that can be written. */
  | { readonly ok: false; readonly code: 'unknown-unit'; readonly unit: string; readonly accepted: readonly string[] }
  /** Only temperatures go below zero (and not below absolute zero). */
  | { readonly ok: false; readonly code: 'below-zero'; readonly value: number };

/** A unit by all its spellings (in small letters), as `inside = (written - offset) * factor`. */
interface Unit {
  readonly spellings: readonly string[];
  readonly factor: number;
  readonly offset: number;
}

const unit = (factor: number, ...spellings: string[]): Unit => ({ spellings, factor, offset: 0 });

const UNITS: { readonly [Q in Quantity]: readonly Unit[] } = {
  length: [
    unit(1, 'mm'),
    unit(10, 'cm'),
    unit(1000, 'm'),
    unit(MM_PER_INCH, 'in', '"', 'inch', 'inches', "''", 'in.'),
    unit(12 * MM_PER_INCH, 'ft', "'", 'feet', 'foot'),
  ],
  mass: [
    unit(1, 'g'),
    unit(0.001, 'mg'),
    unit(1000, 'kg'),
    unit(G_PER_OUNCE, 'oz'),
    unit(16 * G_PER_OUNCE, 'lb', 'lbs'),
  ],
  force: [
    unit(1, 'n'),
    unit(1000, 'kn'),
    unit(N_PER_POUND_FORCE, 'lbf', 'lb', 'lbs'),
    unit(N_PER_POUND_FORCE / 16, 'ozf', 'oz'),
    unit(9.80665, 'kgf', 'kg'),
  ],
  temperature: [
    { spellings: ['°c', 'c', 'degc', 'ºc', '℃'], factor: 1, offset: 0 },
    { spellings: ['°f', 'f', 'degf', 'ºf', '℉'], factor: 1 / 1.8, offset: 32 },
    { spellings: ['k'], factor: 1, offset: 273.15 },
  ],
  volume: [unit(1, 'ml', 'cc', 'cm3', 'cm³'), unit(1000, 'l'), unit(29.5735295625, 'fl oz', 'floz')],
  duration: [
    unit(1, 'min', 'minute', 'minutes', 'mins', 'm'),
    unit(1 / 60, 's', 'sec', 'seconds'),
    unit(60, 'h', 'hr', 'hrs', 'hour', 'hours'),
    unit(1440, 'd', 'day', 'days'),
  ],
};

const ABSOLUTE_ZERO_C = -273.15;

/**
 * Reads a quantity as makers write it: `1 1/4`, `5/64"`, `.041`, `32 mm`, `70F`, `21,5 °C`, `12 lb`, `1.5 oz`, and for
 * durations also `2 h 05` and `1:30` (hours and minutes). A bare number is in `bareUnit`, one of the quantity's
 * spellings, which is what the field beside it says. The unit's capitals do not matter.
 * Throws RangeError when `bareUnit` is no unit of the quantity. Sources of the factors: `convert.ts`; US fluid ounce
 * 29.5735295625 mL (from memory).
 */
export function readQuantity(quantity: Quantity, text: string, bareUnit: string): ReadQuantity {
  const bare = unitOf(quantity, bareUnit);
  if (bare === null) throw new RangeError(`readQuantity needs a unit of ${quantity}, got ${bareUnit}`);
  const tidy = text
    .trim()
    .replace(/[\u2033\u201c\u201d]/g, '"')
    .replace(/[\u2032\u2018\u2019]/g, "'");
  const clock = quantity === 'duration' ? readHoursAndMinutes(tidy) : null;
  if (clock !== null) return { ok: true, value: clock };
  const numberText = /^[\d\s.,/+\-\u2212\u2013\u2044\u2215\u00bc-\u00be\u215b-\u215e]*/.exec(tidy)?.[0] ?? '';
  const unitText = tidy.slice(numberText.length);
  const number = readNumber(numberText);
  if (!number.ok) return number.code === 'empty' && unitText !== '' ? { ok: false, code: 'not-a-number' } : number;
  const written = unitText === '' ? bare : unitOf(quantity, unitText);
  if (written === null) {
    const accepted = UNITS[quantity].flatMap(({ spellings }) => spellings.slice(0, 1));
    return { ok: false, code: 'unknown-unit', unit: unitText, accepted };
  }
  const value = (number.value - written.offset) * written.factor;
  if (value < (quantity === 'temperature' ? ABSOLUTE_ZERO_C : 0)) return { ok: false, code: 'below-zero', value };
  return { ok: true, value };
}

function unitOf(quantity: Quantity, spelling: string): Unit | null {
  const small = spelling.trim().toLowerCase().replace(/\s+/g, ' ').replace(/^° /, '°');
  return UNITS[quantity].find(({ spellings }) => spellings.includes(small)) ?? null;
}

/** `2 h 05`, `2h05`, `2 h 5 min`, `2:05`; null for any other form. */
function readHoursAndMinutes(text: string): number | null {
  const match = /^(\d+)\s*(?:h|hr|hours?|:)\s*([0-5]?\d)\s*(?:m|min|minutes?)?$/i.exec(text);
  return match === null ? null : Number(match[1]) * 60 + Number(match[2]);
}
