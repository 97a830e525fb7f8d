/**
 * Beginnings of the names of months in the languages loggers are sold in (English, German, Dutch, French, Spanish,
 * Italian, Portuguese and the Nordic ones), without accents. From memory.
 */
const MONTH_STARTS: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen'],
  ['feb', 'fev'],
  ['mar', 'mrz', 'maa'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mei', 'maj', 'mag'],
  ['jun', 'juin', 'giu'],
  ['jul', 'juil', 'lug'],
  ['aug', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'out', 'ott'],
  ['nov'],
  ['dec', 'dez', 'dic', 'des'],
];

const MONTHS = new Map<string, number>();
for (const [index, starts] of MONTH_STARTS.entries()) for (const start of starts) MONTHS.set(start, index + 1);

/** Month 1 to 12 that a word names, short or whole, or 0. */
export function monthOfName(word: string): number {
  const plain = word.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  if (plain.length < 3 || plain.length > 10) return 0;
  return MONTHS.get(plain.slice(0, 4)) ?? MONTHS.get(plain.slice(0, 3)) ?? 0;
}
