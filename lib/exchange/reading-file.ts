import { dayOrderOfSeries } from './day-order';
import { findLayout } from './find-layout';
import { LineSplitter } from './line-splitter';
import { logPaces } from './log-pace';
import { LogRows } from './log-rows';
import { mergeRows, powerUpRows } from './merge-rows';
import type { ReadingFileReport, ReadingFileResult, UnreadableCode } from './reading-file-result';
import type { LayoutContext, LayoutQuestion, ReadingLayout } from './reading-layout';
import { shownLine } from './refusals';
import type { ClockEvidence, RowClock } from './row-clock';
import { seriesNotes } from './series-notes';
import { PLAUSIBLE_WITHOUT_UNIT_C } from './temperature-unit';
import { type ChunkDecoder, chunkDecoder, textEncodingOf } from './text-encoding';

/** The beginning of a file that its layout is told from. Chosen: longer than any preamble seen. */
const HEAD_BYTES = 65_536;
const HEAD_LINES = 400;
const SHOWN_LINES = 5;

/**
 * Reads one logger file that arrives in pieces, in memory bounded by its number of rows: some 30 bytes each.
 *
 * Give it the bytes by `push` in order, then call `finish` once. Whatever the bytes are, it ends with readings, with
 * questions, or with a reason; it never throws for a bad file and never gives NaN for a temperature or an instant.
 */
export class ReadingFile {
  readonly #context: LayoutContext;
  readonly #maxRows: number;
  readonly #splitter = new LineSplitter();
  #headBytes: Uint8Array[] = [];
  #headSize = 0;
  #decoder: ChunkDecoder | null = null;
  #log: LogRows | null = null;
  #layout: ReadingLayout | null = null;
  #questions: readonly LayoutQuestion[] = [];
  #isDayOrderOpen = false;
  #failure: UnreadableCode | null = null;
  #firstLines: string[] = [];
  #lineCount = 0;

  /** `maxRows`: a longer file is refused as `too-many-rows`. RangeError when the time zone is unknown. */
  constructor(context: LayoutContext, maxRows: number) {
    this.#context = context;
    this.#maxRows = maxRows;
  }

  /** Lines read so far. */
  get lineCount(): number {
    return this.#log?.lineCount ?? this.#lineCount;
  }

  /** Takes the next bytes of the file; false when it is clear that the file cannot be read and the rest is not needed. */
  push(bytes: Uint8Array): boolean {
    if (this.#failure !== null) return false;
    if (this.#decoder !== null) {
      this.#takeLines(this.#splitter.push(this.#decoder.decode(bytes)));
    } else {
      this.#headBytes.push(bytes);
      this.#headSize += bytes.length;
      if (this.#headSize >= HEAD_BYTES) this.#begin(false);
    }
    return this.#failure === null;
  }

  /** What came of the file. */
  finish(): ReadingFileResult {
    if (this.#decoder === null) this.#begin(true);
    else if (this.#failure === null) {
      this.#takeLines(this.#splitter.push(this.#decoder.end()));
      this.#takeLines(this.#splitter.end());
    }
    if (this.#failure !== null || this.#log === null || this.#layout === null)
      return this.#unreadable(this.#failure ?? 'empty');
    return this.#result(this.#log, this.#layout);
  }

  /** Tells the layout from the head, then reads the head. */
  #begin(isWhole: boolean): void {
    const head = joined(this.#headBytes, this.#headSize);
    this.#headBytes = [];
    this.#decoder = chunkDecoder(textEncodingOf(head));
    const lines = this.#splitter.push(this.#decoder.decode(head));
    if (isWhole) lines.push(...this.#splitter.push(this.#decoder.end()), ...this.#splitter.end());
    this.#firstLines = lines.slice(0, SHOWN_LINES).map(shownLine);
    this.#lineCount = lines.length;
    if (lines.every((line) => line.trim() === '')) {
      this.#failure = isWhole ? 'empty' : 'no-rows';
      return;
    }
    const sample = lines.slice(0, HEAD_LINES);
    const found = findLayout(sample, this.#decoder.encoding, this.#context);
    if (!found.ok) {
      this.#failure = found.code;
      return;
    }
    const { pace, otherPace } = logPaces(sample, found.layout);
    this.#layout = found.layout;
    this.#questions = found.questions;
    this.#isDayOrderOpen = found.isDayOrderOpen;
    this.#log = new LogRows(found.layout, found.isDayOrderOpen, pace, otherPace);
    this.#takeLines(lines);
  }

  #takeLines(lines: readonly string[]): void {
    this.#log?.readLines(lines);
    if (this.lineCount > this.#maxRows) this.#failure = 'too-many-rows';
  }

  #unreadable(code: UnreadableCode): ReadingFileResult {
    const refusedRows = this.#log?.refusals.inOrder() ?? [];
    return { state: 'unreadable', code, lines: this.lineCount, firstLines: this.#firstLines, refusedRows };
  }

  #result(log: LogRows, found: ReadingLayout): ReadingFileResult {
    const questions = [...this.#questions];
    const order = this.#isDayOrderOpen ? decideDayOrder(log, found) : null;
    const isOther = order?.isOther ?? false;
    const layout: ReadingLayout = order === null ? found : { ...found, dayOrder: order.dayOrder, dayOrderBy: order.by };
    if (order !== null && order.dayOrder === null) {
      questions.unshift({ kind: 'day-order', example: log.shown[0]?.text ?? '' });
    }

    const at = (isOther ? log.rows.otherAt : log.rows.at).slice();
    refuseLate(log, at, isOther);
    const merged = mergeRows(log.rows, at);

    const isUnitDoubtful =
      layout.unitBy === 'values' && layout.unit === 'C' && log.highestWritten >= PLAUSIBLE_WITHOUT_UNIT_C;
    if (isUnitDoubtful && !questions.some(({ kind }) => kind === 'unit')) {
      questions.push({ kind: 'unit', lowest: log.lowestWritten, highest: log.highestWritten });
    }
    const clock: RowClock = isOther ? log.otherClock : log.clock;
    const evidence = clock.evidence();
    // Which rows fall into which hour is only known once the dates are.
    const isDateOpen = questions.some(({ kind }) => kind === 'day-order' || kind === 'year');
    if (!isDateOpen && this.#context.answers.clock === undefined) questions.push(...clockQuestion(evidence));

    const hasReadings = merged.readings.at.length > 0;
    if (!hasReadings && questions.length === 0) return this.#unreadable('no-reading');
    const { epochRows } = log.reader;
    const report: ReadingFileReport = {
      layout,
      counts: {
        lines: log.lineCount,
        heading: log.headLines,
        blank: log.blankLines,
        accepted: merged.readings.at.length,
        duplicate: merged.duplicateRows,
        refused: log.refusals.count,
      },
      firstRows: firstRows(log, at),
      refusedRows: log.refusals.inOrder(),
      refusedBy: log.refusals.counts,
      notes: hasReadings ? seriesNotes(merged.readings.at, merged.readings.temperatureC) : null,
      clock: evidence,
      outOfOrderRows: merged.outOfOrderRows,
      isBackwards: merged.isBackwards,
      isEpochMixed: epochRows.seconds > 0 && epochRows.milliseconds > 0,
      badHumidityRows: log.reader.badHumidityRows,
    };
    return questions.length > 0
      ? { state: 'asks', report, questions }
      : { state: 'read', report, readings: merged.readings };
  }
}

function joined(parts: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** The order of day and month once the whole file was heard; `isOther`: not the one the rows were read under. */
function decideDayOrder(log: LogRows, layout: ReadingLayout) {
  const readAs = layout.dayOrder ?? 'day-first';
  const other = readAs === 'day-first' ? 'month-first' : 'day-first';
  if (log.lost.length !== log.lostOther.length && (log.lost.length === 0 || log.lostOther.length === 0)) {
    const isOther = log.lost.length > 0;
    return { dayOrder: isOther ? other : readAs, by: 'values', isOther } as const;
  }
  if (layout.dayOrder !== null) return { dayOrder: layout.dayOrder, by: layout.dayOrderBy, isOther: false } as const;
  const [dayFirst, monthFirst] = [log.rows.at, log.rows.otherAt];
  const dayOrder = log.lost.length > 0 ? null : dayOrderOfSeries(dayFirst, monthFirst);
  return { dayOrder, by: dayOrder === null ? null : 'series', isOther: dayOrder === other } as const;
}

/** Refuses the rows that only the whole file shows to be wrong: their instants in `at` become NaN. */
function refuseLate(log: LogRows, at: Float64Array, isOther: boolean): void {
  const texts = new Map((isOther ? log.lostOther : log.lost).map(({ line, text }) => [line, text]));
  const lines = log.rows.line;
  for (let row = 0; row < at.length; row += 1) {
    if (!Number.isNaN(at[row] ?? Number.NaN)) continue;
    const line = lines[row] ?? 0;
    log.refusals.add(line, 'bad-time', texts.get(line) ?? '');
  }
  for (const row of powerUpRows(log.rows.temperatureC)) {
    if (Number.isNaN(at[row] ?? Number.NaN)) continue;
    at[row] = Number.NaN;
    log.refusals.add(lines[row] ?? 0, 'power-up-value', '85');
  }
}

function clockQuestion(evidence: ClockEvidence): LayoutQuestion[] {
  if (evidence.firstSkippedWallMs !== null) {
    return [{ kind: 'clock', sign: 'skipped-hour', wallMs: evidence.firstSkippedWallMs }];
  }
  if (evidence.passedOnceWallMs === null) return [];
  return [{ kind: 'clock', sign: 'no-repeated-hour', wallMs: evidence.passedOnceWallMs }];
}

function firstRows(log: LogRows, at: Float64Array): ReadingFileReport['firstRows'] {
  return log.shown.flatMap(({ row, line, text }) => {
    const instant = at[row] ?? Number.NaN;
    const humidity = log.rows.humidityPct?.[row] ?? Number.NaN;
    if (Number.isNaN(instant)) return [];
    const humidityPct = Number.isNaN(humidity) ? null : humidity;
    return [{ line, text, at: instant, temperatureC: log.rows.temperatureC[row] ?? 0, humidityPct }];
  });
}
