import { type CellKind, cellKind } from './cell-kind';
import { fieldsOf, hasOpenQuote, type Separator } from './cells';

/** One line of the beginning of a file, taken apart. */
interface HeadRow {
  /** Place of the line in the file, from 0. */
  readonly line: number;
  readonly fields: readonly string[];
  readonly kinds: readonly CellKind[];
}

/** Where the rows of readings begin, and what separates their fields. */
export interface RowsFound {
  readonly separator: Separator;
  readonly linesBeforeRows: number;
  readonly headings: readonly string[];
  readonly rows: readonly HeadRow[];
}

/** In this order when two separate a file equally well: the comma last, since it may also be a decimal sign. */
const SEPARATORS: readonly Separator[] = [';', '\t', '|', ','];

/** Rows that the separator is judged by. Source: rule 2 of section 7 of the reference pack (the first 20 lines). */
const JUDGED_ROWS = 20;

/** Rows that columns are judged by. Chosen. */
const SAMPLED_ROWS = 60;

/** Most lines of headings that are put together; some loggers write names, units and kinds below each other. */
const HEADING_LINES = 3;

/**
 * Finds the rows of readings below whatever a logger writes before them, or null when the beginning of the file holds
 * none. `lines`: the first lines of the file.
 *
 * A line looks like a reading when it has a date and a number, or two numbers at least. The shape most of them share
 * (fields, and place of the time) is that of the file; the separator is the one under which most lines share a shape.
 */
export function findRows(lines: readonly string[]): RowsFound | null {
  const named = separatorNamed(lines[0] ?? '');
  const start = named === null ? 0 : 1;
  let best: Shape | null = null;
  for (const separator of named === null ? SEPARATORS : [named]) {
    const shape = shapeUnder(lines, start, separator);
    if (shape !== null && (best === null || shape.score > best.score)) best = shape;
  }
  if (best === null) return null;
  const firstLine = firstRowLine(lines, start, best);
  return {
    separator: best.separator,
    linesBeforeRows: firstLine,
    headings: headingsAbove(lines, start, firstLine, best),
    rows: best.rows,
  };
}

/** Separator of a first line such as `sep=;`, which spreadsheets write and heed; null for any other line. */
function separatorNamed(line: string): Separator | null {
  const named = /^\s*"?sep=(.)"?\s*$/i.exec(line)?.[1];
  return SEPARATORS.find((separator) => separator === named) ?? null;
}

interface Shape {
  readonly separator: Separator;
  readonly score: number;
  readonly firstRow: HeadRow;
  readonly rows: readonly HeadRow[];
}

function shapeUnder(lines: readonly string[], start: number, separator: Separator): Shape | null {
  const bySignature = new Map<string, HeadRow[]>();
  let most: HeadRow[] = [];
  for (let line = start; line < lines.length; line += 1) {
    const text = lines[line] ?? '';
    if (text.trim() === '') continue;
    const fields = fieldsOf(text, separator);
    if (fields.length < 2) continue;
    const kinds = fields.map(cellKind);
    if (!isReadingLike(kinds)) continue;
    const signature = `${fields.length}:${kinds.findIndex((kind) => kind === 'stamp' || kind === 'date')}`;
    const alike = bySignature.get(signature) ?? [];
    bySignature.set(signature, alike);
    alike.push({ line, fields, kinds });
    if (alike.length > most.length) most = alike;
    if (alike.length >= SAMPLED_ROWS) break;
  }
  const firstRow = most[0];
  return firstRow === undefined ? null : { separator, score: Math.min(most.length, JUDGED_ROWS), firstRow, rows: most };
}

function isReadingLike(kinds: readonly CellKind[]): boolean {
  const numbers = kinds.filter((kind) => kind === 'number').length;
  const hasDate = kinds.includes('stamp') || kinds.includes('date');
  return hasDate ? numbers > 0 || kinds.includes('missing') : numbers >= 2;
}

/** The first row may be a spoiled one: it has its time where the others have theirs, but no number, or an open quote. */
function firstRowLine(lines: readonly string[], start: number, shape: Shape): number {
  let first = shape.firstRow.line;
  for (let line = first - 1; line >= start; line -= 1) {
    const text = lines[line] ?? '';
    if (text.trim() === '') continue;
    if (!hasTimeInPlace(text, shape)) break;
    first = line;
  }
  return first;
}

function hasTimeInPlace(text: string, { separator, firstRow }: Shape): boolean {
  const fields = hasOpenQuote(text) ? text.split(separator) : fieldsOf(text, separator);
  const dated = firstRow.kinds.findIndex((kind) => kind === 'stamp' || kind === 'date');
  if (dated !== -1) return fields.length > dated && cellKind(fields[dated] ?? '') === firstRow.kinds[dated];
  return fields.length === firstRow.fields.length && cellKind(fields[0] ?? '') === 'number';
}

/** Texts of the lines just above the first row that are taken apart alike, put together column by column. */
function headingsAbove(lines: readonly string[], start: number, firstLine: number, shape: Shape): string[] {
  const width = shape.firstRow.fields.length;
  const found: string[][] = [];
  for (let line = firstLine - 1; line >= start && found.length < HEADING_LINES; line -= 1) {
    const text = lines[line] ?? '';
    if (text.trim() === '' && found.length === 0) continue;
    const fields = fieldsOf(text, shape.separator);
    const isAlike =
      found[0] === undefined
        ? fields.length >= 2 && Math.abs(fields.length - width) <= 1
        : fields.length === found[0].length;
    if (!isAlike || isReadingLike(fields.map(cellKind))) break;
    found.unshift(fields);
  }
  const [first, ...others] = found;
  if (first === undefined) return [];
  return first.map((name, column) =>
    [name, ...others.map((more) => more[column] ?? '')].filter((part) => part !== '').join(' '),
  );
}
