const DIGIT_0 = 48;
const DIGIT_9 = 57;
const POINT = 46;
const COMMA = 44;
const PLUS = 43;
const MINUS = 45;
const TYPOGRAPHIC_MINUS = 0x2212;

/** Powers of ten that a double holds exactly, as far as they are used here. */
const POWERS_OF_TEN = Array.from({ length: 16 }, (_, exponent) => 10 ** exponent);

/** Whether a character code is a space, a tab or a no-break space. */
export function isSpace(code: number): boolean {
  return code === 32 || code === 9 || code === 0xa0;
}

/**
 * The number in text[from, to), or NaN when there is none.
 *
 * A single point or comma is the decimal sign; when both occur the last one is, and the others group thousands
 * ("1.234,5" and "1,234.5" are both 1234.5). Spaces around, a sign, and a unit behind it (C, F, K, %, with or without
 * the degree sign) are allowed. The result is the double nearest to what is written.
 * Source: chosen, after the forms loggers were seen to write.
 */
export function parseDecimal(text: string, from: number, to: number): number {
  let at = from;
  while (at < to && isSpace(text.charCodeAt(at))) at += 1;
  const sign = text.charCodeAt(at);
  const isNegative = sign === MINUS || sign === TYPOGRAPHIC_MINUS;
  if (at < to && (isNegative || sign === PLUS)) at += 1;
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; at < to; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= DIGIT_0 && code <= DIGIT_9) {
      mantissa = mantissa * 10 + (code - DIGIT_0);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if (code === POINT || code === COMMA) {
      if (decimals >= 0) return parseGrouped(text.slice(from, to));
      decimals = 0;
    } else break;
  }
  if (digits === 0) return Number.NaN;
  if (digits > 15) return parseGrouped(text.slice(from, to));
  if (at < to && !isUnit(text, at, to)) return parseGrouped(text.slice(from, to));
  const value = decimals > 0 ? mantissa / (POWERS_OF_TEN[decimals] ?? 1) : mantissa;
  return isNegative ? -value : value;
}

/** Whether text[at, to) is nothing but spaces and a unit. */
function isUnit(text: string, at: number, to: number): boolean {
  while (at < to && isSpace(text.charCodeAt(at))) at += 1;
  return at === to || UNIT.test(text.slice(at, to));
}

const UNIT = /^(?:[°º˚]?\s*[CFK]|℃|℉|deg\.?\s*[CF]|%|%\s*rh)\s*$/i;
const GROUPED = /^([+\-\u2212]?)(?:(\d{1,3}(?:,\d{3})+)(\.\d*)?|(\d{1,3}(?:\.\d{3})+)(,\d*)?)$/;
const SCIENTIFIC = /^[+\-\u2212]?\d+(?:[.,]\d*)?(?:e[+-]?\d{1,2})?$/i;

/** The rarer forms: grouped thousands, exponents, more than 15 digits. */
function parseGrouped(written: string): number {
  const text = written.replace(/\s*(?:[°º˚]?\s*[CFK]|℃|℉|%)\s*$/i, '').trim();
  const grouped = GROUPED.exec(text);
  if (grouped !== null) {
    const [, sign = '', commas, point, points, comma] = grouped;
    // Several groups of the same sign without a decimal sign ("1.234.567") are still thousands.
    const whole = (commas ?? points ?? '').replace(/[.,]/g, '');
    const value = Number(`${whole}.${(point ?? comma ?? '.').slice(1)}`);
    return sign === '-' || sign === '\u2212' ? -value : value;
  }
  return SCIENTIFIC.test(text) ? Number(text.replace(',', '.').replace('\u2212', '-')) : Number.NaN;
}

/** The words loggers write where a reading is missing, in lower case. Common practice, no source. */
const MISSING_WORDS: ReadonlySet<string> = new Set([
  '',
  '-',
  '--',
  '---',
  '----',
  'nan',
  'na',
  'n/a',
  'nc',
  'n.c.',
  'nodata',
  'no data',
  'null',
  'none',
  'err',
  'error',
  'fault',
  'open',
  'ol',
  '?',
  '***',
]);

/** Whether text[from, to) says that there is no reading: empty, `--`, `NC`, `ERR`, `NaN` and the like. */
export function isMissing(text: string, from: number, to: number): boolean {
  return MISSING_WORDS.has(text.slice(from, to).trim().toLowerCase());
}
