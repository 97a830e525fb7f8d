import { fieldsOf, hasOpenQuote } from './cells';
import { LineSplitter } from './line-splitter';
import { shownLine } from './refusals';
import { readStamp } from './stamp';
import { StampParts } from './stamp-parts';
import { findStockLayout, type StockColumn, type StockLayout } from './stock-columns';
import { readStockRow, type StockRefusal, type StockRow } from './stock-row';
import { chunkDecoder, textEncodingOf } from './text-encoding';
import type { DayOrder } from './wall-time';

export interface RefusedStockRow {
  readonly line: number;
  readonly reason: StockRefusal;
  readonly text: string;
}

/** What came of a list of stock. */
export type StockFileResult =
  | {
      readonly state: 'read';
      readonly rows: readonly StockRow[];
      readonly refused: readonly RefusedStockRow[];
      readonly blankLines: number;
    }
  /** 3/4/2026 could be March or April: the maker must say. */
  | { readonly state: 'asks-day-order'; readonly example: string }
  | { readonly state: 'unreadable'; readonly code: 'empty' | 'no-headings' | 'too-long' };

/** A longer file is no list of a workshop's stock. Chosen: some 8,000 lots. */
export const MOST_STOCK_BYTES = 900_000;

/**
 * Reads a list of stock: any usual encoding and separator, headings in any order and wording, quantities with their
 * units as makers write them. Never throws for a bad file; every line is read, refused with a reason, or blank.
 */
export function readStockFile(bytes: Uint8Array, currency: string, dayOrder: DayOrder | null): StockFileResult {
  if (bytes.length > MOST_STOCK_BYTES) return { state: 'unreadable', code: 'too-long' };
  const decoder = chunkDecoder(textEncodingOf(bytes));
  const splitter = new LineSplitter();
  const lines = [...splitter.push(decoder.decode(bytes) + decoder.end()), ...splitter.end()];
  if (lines.every((line) => line.trim() === '')) return { state: 'unreadable', code: 'empty' };
  const layout = findStockLayout(lines);
  if (layout === null) return { state: 'unreadable', code: 'no-headings' };
  const body = lines.slice(layout.headingLine).map((line) => cellsOf(line, layout));
  const open = body.flatMap((cell) => DAY_COLUMNS.map(cell)).find(isOpenDay);
  if (open !== undefined && dayOrder === null) return { state: 'asks-day-order', example: shownLine(open) };
  const rules = { unit: layout.unit, currency, dayOrder: dayOrder ?? 'day-first' };
  const rows: StockRow[] = [];
  const refused: RefusedStockRow[] = [];
  let blankLines = 0;
  for (const [index, cell] of body.entries()) {
    const text = lines[layout.headingLine + index] ?? '';
    const line = layout.headingLine + 1 + index;
    if (fieldsOf(text, layout.separator).every((field) => field === '')) {
      blankLines += 1;
      continue;
    }
    const read = hasOpenQuote(text)
      ? { ok: false as const, reason: 'open-quote' as const }
      : readStockRow(cell, line, rules);
    if (read.ok) rows.push(read.row);
    else refused.push({ line, reason: read.reason, text: shownLine(text) });
  }
  return { state: 'read', rows, refused, blankLines };
}

const DAY_COLUMNS: readonly StockColumn[] = ['received', 'opened', 'expires'];

/** The text of a column of a line, without the apostrophe that keeps a spreadsheet from taking it for a formula. */
function cellsOf(line: string, { separator, columns }: StockLayout): (column: StockColumn) => string {
  const fields = fieldsOf(line, separator);
  return (column) => {
    const index = columns.get(column);
    return index === undefined ? '' : (fields[index] ?? '').replace(/^'(?=[=+\-@])/, '').trim();
  };
}

/** Whether a date reads differently with day and month the other way round. */
function isOpenDay(text: string): boolean {
  const parts = new StampParts();
  if (!readStamp(text, 0, text.length, parts)) return false;
  return (parts.style === 'slash' || parts.style === 'dots') && parts.month !== parts.day && isMonth(parts);
}

function isMonth({ month, day }: StampParts): boolean {
  return month <= 12 && day <= 12;
}
