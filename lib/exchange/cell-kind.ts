import { isMissing, parseDecimal } from './decimal';
import { readStamp, readTimeOfDay } from './stamp';
import { StampParts } from './stamp-parts';

/** What a single field looks like by itself. */
export type CellKind = 'stamp' | 'date' | 'clock' | 'number' | 'missing' | 'text';

/** What `cell` looks like. Eight digits that are a date count as one: no temperature is that long. */
export function cellKind(cell: string): CellKind {
  if (isMissing(cell, 0, cell.length)) return 'missing';
  const parts = new StampParts();
  if (readStamp(cell, 0, cell.length, parts)) return parts.hasClock ? 'stamp' : 'date';
  if (cell.includes(':') && readTimeOfDay(cell, 0, cell.length, parts)) return 'clock';
  return Number.isFinite(parseDecimal(cell, 0, cell.length)) ? 'number' : 'text';
}

/** Kind that most fields of a column have, leaving out the missing ones; `missing` when all are. */
export function columnKind(kinds: readonly CellKind[]): CellKind {
  const counts = new Map<CellKind, number>();
  for (const kind of kinds) if (kind !== 'missing') counts.set(kind, (counts.get(kind) ?? 0) + 1);
  let most: CellKind = 'missing';
  let count = 0;
  for (const [kind, times] of counts) if (times > count) [most, count] = [kind, times];
  return most;
}
