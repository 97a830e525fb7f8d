import type { Instant } from '@/lib/units/instant';

/** The names and formats that sentences about a batch are made with: the shop's zone and units are behind them. */
export interface BatchWords {
  /** Name of an operation of the plan. */
  operation(operationId: string): string;
  anchor(anchorId: string): string;
  /** A mix within its batch: `mix 2`. */
  mix(mixId: string): string;
  /** An instant as short as it is clear: `21:10`, `Thu 21:10`. */
  time(at: Instant): string;
  /** A mass with its unit. */
  mass(massG: number): string;
  /** A temperature with its unit. */
  temperature(temperatureC: number): string;
}

/** `piece 3`, `pieces 1-4, 7`. At most eight stretches are spelled out. */
export function pieceText(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'piece' : 'pieces'} ${pieceRanges(numbers)}`;
}

/** `1-4, 7` for rising numbers; beyond eight stretches `1, 3, 5, 7, 9, 11, 13, 15 and 4 more`. */
export function pieceRanges(numbers: readonly number[]): string {
  const stretches: { readonly from: number; to: number }[] = [];
  for (const number of numbers) {
    const last = stretches.at(-1);
    if (last !== undefined && number === last.to + 1) last.to = number;
    else stretches.push({ from: number, to: number });
  }
  const told = stretches.slice(0, MOST_STRETCHES);
  const text = told.map(({ from, to }) =>
    from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}-${to}`,
  );
  const more = numbers.length - told.reduce((sum, { from, to }) => sum + to - from + 1, 0);
  return more > 0 ? `${text.join(', ')} and ${more} more` : text.join(', ');
}

const MOST_STRETCHES = 8;

/** `1 joint`, `3 joints`. */
export function countText(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`;
}

/** `Set anchors, Paint and Clear coat`. */
export function listText(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** The same text as the beginning of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
