/** Why a text is not a number as a maker would write one. */
export type NumberRefusal = 'empty' | 'not-a-number' | 'ambiguous-comma' | 'zero-denominator';

export type ReadNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly code: NumberRefusal };

const FRACTION_SIGNS: ReadonlyMap<string, string> = new Map([
  ['\u00bc', '1/4'],
  ['\u00bd', '1/2'],
  ['\u00be', '3/4'],
  ['\u215b', '1/8'],
  ['\u215c', '3/8'],
  ['\u215d', '5/8'],
  ['\u215e', '7/8'],
]);

/**
 * Reads a number as makers write it: `32`, `.041`, `-5`, `21,5`, `5/64`, `1 1/4`, `1-1/4`, `1¼`, `1,234.5`, `1.234,5`.
 * A lone comma before exactly three digits (`1,234`) may be either, and is refused; `0,041` and `,041` are decimals.
 * The sign may be a hyphen or a true minus.
 */
export function readNumber(text: string): ReadNumber {
  const plain = text
    .trim()
    .replace(/[\u00bc-\u00be\u215b-\u215e]/g, (sign) => ` ${FRACTION_SIGNS.get(sign) ?? sign}`)
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
  if (plain === '') return { ok: false, code: 'empty' };
  const sign = plain.startsWith('-') ? -1 : 1;
  const magnitude = readMagnitude(plain.replace(/^[-+] ?/, ''));
  if (!magnitude.ok) return magnitude;
  // Longer rows of digits are a slip, and would not be exact.
  if (!(magnitude.value <= Number.MAX_SAFE_INTEGER)) return { ok: false, code: 'not-a-number' };
  return { ok: true, value: sign * magnitude.value };
}

function readMagnitude(text: string): ReadNumber {
  const fraction = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction !== null) {
    const denominator = Number(fraction[3]);
    if (denominator === 0) return { ok: false, code: 'zero-denominator' };
    return { ok: true, value: Number(fraction[1] ?? 0) + Number(fraction[2]) / denominator };
  }
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) return { ok: false, code: 'ambiguous-comma' };
  if (/^\d*[.,]?\d*$/.test(text) && /\d/.test(text)) return { ok: true, value: Number(text.replace(',', '.')) };
  if (/^\d{1,3}(,\d{3})+\.\d*$/.test(text) || /^\d{1,3}(,\d{3}){2,}$/.test(text)) {
    return { ok: true, value: Number(text.replaceAll(',', '')) };
  }
  if (/^\d{1,3}(\.\d{3})+,\d*$/.test(text) || /^\d{1,3}(\.\d{3}){2,}$/.test(text)) {
    return { ok: true, value: Number(text.replaceAll('.', '').replace(',', '.')) };
  }
  return { ok: false, code: 'not-a-number' };
}
