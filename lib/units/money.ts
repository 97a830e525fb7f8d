/**
 * Money in whole minor units (cents of USD, yen of JPY), so that sums never drift. A currency is its ISO 4217 code;
 * how many digits its minor unit has comes from the runtime's own table of that standard.
 */

/** Largest sum that a field takes, in minor units. Chosen: what both databases keep in a plain whole number. */
export const MOST_MINOR = 2_000_000_000;

/** Digits after the point in a currency: 2 for USD, 0 for JPY, 3 for KWD. 2 for a code the runtime does not know. */
export function minorDigits(currency: string): number {
  try {
    return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
  } catch {
    return 2;
  }
}

/** `12.50 USD`, with a true minus sign. RangeError for what is not a whole number. */
export function moneyText(minor: number, currency: string): string {
  const sign = minor < 0 ? '\u2212' : '';
  const [whole = '', decimals] = moneyInput(Math.abs(minor), currency).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${sign}${grouped}${decimals === undefined ? '' : `.${decimals}`} ${currency}`;
}

/** A sum of 0 or more as it is typed in a field: `12.50`. RangeError for what is not a whole number of at least 0. */
export function moneyInput(minor: number, currency: string): string {
  if (!Number.isSafeInteger(minor) || minor < 0) throw new RangeError(`money needs whole minor units, got ${minor}`);
  const digits = minorDigits(currency);
  const text = String(minor).padStart(digits + 1, '0');
  return digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

export type ReadMoney =
  | { readonly ok: true; readonly minor: number }
  | { readonly ok: false; readonly code: 'not-money' | 'too-fine' | 'too-much'; readonly digits: number };

/**
 * A sum as a maker typed it: `12`, `12.5`, `1,250.00`, `$12.50`, `12.50 USD`, `12,50`. A comma followed by three
 * digits groups thousands, a single one before one or two digits is a decimal mark.
 */
export function readMoney(text: string, currency: string): ReadMoney {
  const digits = minorDigits(currency);
  const bare = text
    .trim()
    .replace(/^\p{Sc}\s*/u, '')
    .replace(/\s*(\p{Sc}|[A-Za-z]{3})$/u, '');
  const plain = /^\d{1,3}(,\d{3})+(\.\d*)?$/.test(bare)
    ? bare.replaceAll(',', '')
    : bare.replace(/^(\d*),(\d{1,2})$/, '$1.$2');
  const match = /^(\d*)(?:\.(\d*))?$/.exec(plain);
  const [, whole = '', decimals = ''] = match ?? [];
  if (match === null || whole + decimals === '') return { ok: false, code: 'not-money', digits };
  const fine = decimals.replace(/0+$/, '');
  if (fine.length > digits) return { ok: false, code: 'too-fine', digits };
  const minor = Number(`${whole}${fine.padEnd(digits, '0')}`);
  return minor > MOST_MINOR ? { ok: false, code: 'too-much', digits } : { ok: true, minor };
}
