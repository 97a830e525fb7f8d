import { parse } from 'csv-parse/sync';

/** What stands between the fields of a line. */
export type Separator = ',' | ';' | '\t' | '|';

/** Most fields of a line that are looked at. Chosen: a logger writes a few dozen columns at most. */
const MOST_CELLS = 256;

/**
 * The fields of the line being read, as places in one text: nothing is copied, so that half a million rows take no
 * longer than they must. One object serves all lines of a file.
 */
export class Cells {
  text = '';
  count = 0;
  readonly from = new Int32Array(MOST_CELLS);
  readonly to = new Int32Array(MOST_CELLS);

  /** Takes a line without quotes. */
  setLine(line: string, separator: Separator): void {
    this.text = line;
    let count = 0;
    let start = 0;
    for (let end = line.indexOf(separator); end !== -1; end = line.indexOf(separator, start)) {
      if (count === MOST_CELLS - 1) break;
      this.from[count] = start;
      this.to[count] = end;
      count += 1;
      start = end + 1;
    }
    this.from[count] = start;
    this.to[count] = line.length;
    this.count = count + 1;
  }

  /** Takes fields that were already separated. */
  setFields(fields: readonly string[]): void {
    this.count = Math.min(fields.length, MOST_CELLS);
    this.text = fields.join('');
    let start = 0;
    for (let index = 0; index < this.count; index += 1) {
      this.from[index] = start;
      start += fields[index]?.length ?? 0;
      this.to[index] = start;
    }
  }

  /** Start of a field in `text`; a field that is not there is empty. */
  start(index: number): number {
    return index < this.count ? (this.from[index] ?? 0) : 0;
  }

  /** End of a field in `text`. */
  end(index: number): number {
    return index < this.count ? (this.to[index] ?? 0) : 0;
  }
}

/** Whether a line with quotes leaves one open: a reading stands on one line, so such a line is not one. */
export function hasOpenQuote(line: string): boolean {
  let quotes = 0;
  for (let at = line.indexOf('"'); at !== -1; at = line.indexOf('"', at + 1)) quotes += 1;
  return quotes % 2 === 1;
}

/**
 * Fields of lines that hold quotes (RFC 4180, section 2), one entry a line; null where a line cannot be taken apart.
 * Quotes are left to the library; lines without quotes never come here, which is what makes long files quick.
 */
export function quotedFields(lines: readonly string[], separator: Separator): (string[] | null)[] {
  const together = parsed(lines.join('\n'), separator);
  if (together !== null && together.length === lines.length) return together;
  return lines.map((line) => {
    const alone = parsed(line, separator);
    return alone !== null && alone.length === 1 ? (alone[0] ?? null) : null;
  });
}

function parsed(text: string, separator: Separator): string[][] | null {
  try {
    return parse(text, {
      delimiter: separator,
      record_delimiter: '\n',
      relax_quotes: true,
      relax_column_count: true,
      skip_empty_lines: false,
      ltrim: separator !== '\t',
      rtrim: separator !== '\t',
    });
  } catch {
    return null;
  }
}

/** Fields of one line, with or without quotes, without the spaces around them. */
export function fieldsOf(line: string, separator: Separator): string[] {
  const fields = line.includes('"') ? (quotedFields([line], separator)[0] ?? [line]) : line.split(separator);
  return fields.map((field) => field.trim());
}
