import { Cells, hasOpenQuote, quotedFields } from './cells';
import { LONGEST_LINE } from './line-splitter';
import { RowColumns } from './reading-columns';
import type { ReadingLayout } from './reading-layout';
import { LISTED_REFUSALS, Refusals, shownLine } from './refusals';
import { type LogPace, RowClock } from './row-clock';
import { type RefusalReason, RowReader } from './row-reader';

/** Rows of a file that are shown as they were read. Source: rule 4 of section 7 of the reference pack. */
const SHOWN_ROWS = 5;

/** A row shown: its place among the accepted rows, its line and its text. */
export interface ShownRow {
  readonly row: number;
  readonly line: number;
  readonly text: string;
}

/** A row whose date exists under one order of day and month only. */
export interface LostRow {
  readonly line: number;
  readonly text: string;
}

/**
 * The rows of one file under one layout: reads them line by line, turns their times into instants, keeps what is a
 * reading and says why the others are not. Where the order of day and month is open it follows both.
 */
export class LogRows {
  readonly rows: RowColumns;
  readonly refusals = new Refusals();
  readonly reader: RowReader;
  readonly clock: RowClock;
  readonly otherClock: RowClock;
  readonly shown: ShownRow[] = [];
  /** The first rows lost under the layout's order, and under the other one. */
  readonly lost: LostRow[] = [];
  readonly lostOther: LostRow[] = [];
  lineCount = 0;
  headLines = 0;
  blankLines = 0;
  lowestWritten = Number.POSITIVE_INFINITY;
  highestWritten = Number.NEGATIVE_INFINITY;

  readonly #layout: ReadingLayout;
  readonly #followsBoth: boolean;
  readonly #cells = new Cells();

  constructor(layout: ReadingLayout, followsBoth: boolean, pace: LogPace, otherPace: LogPace) {
    this.#layout = layout;
    this.#followsBoth = followsBoth;
    this.rows = new RowColumns(followsBoth, layout.humidityColumn !== null);
    this.reader = new RowReader(layout);
    this.clock = new RowClock(layout.clock, pace);
    this.otherClock = new RowClock(layout.clock, otherPace);
  }

  /** Reads the next lines of the file. */
  readLines(lines: readonly string[]): void {
    const { separator, linesBeforeRows } = this.#layout;
    for (let index = 0; index < lines.length; index += 1) {
      const line = lines[index] ?? '';
      if (line.includes('"') && this.lineCount >= linesBeforeRows) {
        index += this.#readQuoted(lines, index) - 1;
        continue;
      }
      this.lineCount += 1;
      if (this.lineCount <= linesBeforeRows) this.headLines += 1;
      else if (isBlank(line)) this.blankLines += 1;
      else if (line.length >= LONGEST_LINE) this.refusals.add(this.lineCount, 'line-too-long', line);
      else {
        this.#cells.setLine(line, separator);
        this.#readRow(line);
      }
    }
  }

  /** Reads the run of lines with quotes that begins at `from`, and gives how many lines it has. */
  #readQuoted(lines: readonly string[], from: number): number {
    let to = from;
    while (to < lines.length && isQuotedRow(lines[to] ?? '')) to += 1;
    if (to === from) {
      const line = lines[from] ?? '';
      this.lineCount += 1;
      this.refusals.add(this.lineCount, line.length >= LONGEST_LINE ? 'line-too-long' : 'open-quote', line);
      return 1;
    }
    const run = lines.slice(from, to);
    for (const [index, fields] of quotedFields(run, this.#layout.separator).entries()) {
      const line = run[index] ?? '';
      this.lineCount += 1;
      if (fields === null) this.refusals.add(this.lineCount, 'open-quote', line);
      else {
        this.#cells.setFields(fields);
        this.#readRow(line);
      }
    }
    return run.length;
  }

  #readRow(line: string): void {
    const { reader } = this;
    reader.written = Number.NaN;
    const refusal: RefusalReason | null = reader.read(this.#cells);
    if (reader.written < this.lowestWritten) this.lowestWritten = reader.written;
    if (reader.written > this.highestWritten) this.highestWritten = reader.written;
    if (refusal !== null) {
      this.refusals.add(this.lineCount, refusal, line);
      return;
    }
    const { isInstant, wallMs } = reader;
    const at = isInstant || Number.isNaN(wallMs) ? wallMs : this.clock.instant(wallMs);
    let otherAt = at;
    if (this.#followsBoth) otherAt = this.#other();
    else if (Number.isNaN(at)) {
      this.refusals.add(this.lineCount, 'bad-time', line);
      return;
    }
    if (this.#followsBoth) this.#noteLost(at, otherAt, line);
    if (this.shown.length < SHOWN_ROWS) {
      this.shown.push({ row: this.rows.count, line: this.lineCount, text: shownLine(line) });
    }
    this.rows.add(at, otherAt, reader.temperatureC, reader.humidityPct, this.lineCount);
  }

  #other(): number {
    const { isInstant, otherWallMs } = this.reader;
    return isInstant || Number.isNaN(otherWallMs) ? otherWallMs : this.otherClock.instant(otherWallMs);
  }

  #noteLost(at: number, otherAt: number, line: string): void {
    const lostRow = { line: this.lineCount, text: line };
    if (Number.isNaN(at) && this.lost.length < LISTED_REFUSALS) this.lost.push(lostRow);
    if (Number.isNaN(otherAt) && this.lostOther.length < LISTED_REFUSALS) this.lostOther.push(lostRow);
  }
}

function isBlank(line: string): boolean {
  return line === '' || line.trim() === '';
}

function isQuotedRow(line: string): boolean {
  return line.length < LONGEST_LINE && line.includes('"') && !hasOpenQuote(line);
}
