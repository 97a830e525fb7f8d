import type { Cells } from './cells';
import { isMissing, isSpace, parseDecimal } from './decimal';
import type { ReadingLayout, TimeColumns } from './reading-layout';
import { readStamp, readTimeOfDay } from './stamp';
import { StampParts } from './stamp-parts';
import { toCelsius } from './temperature-unit';
import { ordinal, wallMidnight, wallTime } from './wall-time';

/** Why a row holds no reading. */
export const REFUSAL_REASONS = [
  'no-time',
  'bad-time',
  'no-value',
  'bad-value',
  'out-of-range',
  'power-up-value',
  'too-few-fields',
  'open-quote',
  'line-too-long',
] as const;
export type RefusalReason = (typeof REFUSAL_REASONS)[number];

/** What a sensor of a workshop can measure, degC. Source: rule 8 of section 7 of the reference pack. */
const SENSOR_RANGE_C = { lowest: -40, highest: 85 } as const;

/** Numbers below this are Unix seconds, above it milliseconds: the seconds reach the year 5138. Chosen. */
const EPOCH_MS_FROM = 100_000_000_000;
const SERIAL_DAY_ZERO_MS = Date.UTC(1899, 11, 30);
const SERIAL_LAST_DAY = 73_051;
const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const MINUTE_MS = 60_000;
const SECOND_MS = 1_000;
const LATEST_MS = Date.UTC(2100, 0, 1);

/**
 * Reads the fields of one row after another under a layout. One object serves the whole file; what a row said stands
 * in its properties until the next one.
 */
export class RowReader {
  /** Wall time, or the instant itself when `isInstant`; NaN under an order of day and month that has no such date. */
  wallMs = Number.NaN;
  /** The same with day and month the other way round; equal to `wallMs` where nothing is open. */
  otherWallMs = Number.NaN;
  isInstant = false;
  temperatureC = Number.NaN;
  /** The temperature as it stands in the file. */
  written = Number.NaN;
  humidityPct = Number.NaN;
  /** Unix times in seconds and in milliseconds that were met. */
  readonly epochRows = { seconds: 0, milliseconds: 0 };
  /** Rows whose humidity was no number from 0 to 100. */
  badHumidityRows = 0;

  readonly #layout: ReadingLayout;
  readonly #parts = new StampParts();
  readonly #clock = new StampParts();
  #year: number;
  #lastMonth = 0;

  constructor(layout: ReadingLayout) {
    this.#layout = layout;
    this.#year = layout.firstYear ?? 0;
  }

  /** Reads a row; null when it holds a reading, else why it does not. */
  read(cells: Cells): RefusalReason | null {
    const { temperatureColumn, humidityColumn, unit, decimalCut, time } = this.#layout;
    if (decimalCut !== null && cells.count === decimalCut.width) putTogether(cells, decimalCut.at);
    if (temperatureColumn >= cells.count) return 'too-few-fields';
    const refusal = this.#readTime(cells, time);
    if (refusal !== null) return refusal;
    const from = cells.start(temperatureColumn);
    const to = cells.end(temperatureColumn);
    this.written = parseDecimal(cells.text, from, to);
    if (!Number.isFinite(this.written)) return isMissing(cells.text, from, to) ? 'no-value' : 'bad-value';
    this.temperatureC = toCelsius(this.written, unit);
    this.humidityPct = humidityColumn === null ? Number.NaN : this.#readHumidity(cells, humidityColumn);
    const isInRange = this.temperatureC >= SENSOR_RANGE_C.lowest && this.temperatureC <= SENSOR_RANGE_C.highest;
    return isInRange ? null : 'out-of-range';
  }

  #readHumidity(cells: Cells, column: number): number {
    const from = cells.start(column);
    const to = cells.end(column);
    const value = parseDecimal(cells.text, from, to);
    if (value >= 0 && value <= 100) return value;
    if (!isMissing(cells.text, from, to)) this.badHumidityRows += 1;
    return Number.NaN;
  }

  #readTime(cells: Cells, time: TimeColumns): RefusalReason | null {
    this.isInstant = false;
    switch (time.form) {
      case 'stamp':
        return this.#readStamp(cells, time.column);
      case 'date-and-clock':
        return this.#readDateAndClock(cells, time.date, time.clock);
      case 'date-and-number': {
        const clockMs = clockOfNumber(numberIn(cells, time.number), time.unit);
        if (Number.isNaN(clockMs)) return 'bad-time';
        return this.#readDate(cells, time.date, clockMs);
      }
      case 'epoch':
        return this.#take(this.#epoch(numberIn(cells, time.column)), cells, time.column, true);
      case 'serial-day':
        return this.#take(serialDay(cells, time.column), cells, time.column, false);
      case 'day-of-year': {
        const year = numberIn(cells, time.year);
        const clockMs = time.clock === null ? 0 : clockOfNumber(numberIn(cells, time.clock), time.unit);
        const wallMs = wallMidnight(year, 1, 1) + ordinal(year, numberIn(cells, time.day)) + clockMs;
        return this.#take(wallMs, cells, time.day, false);
      }
      case 'parts':
        return this.#take(this.#partsTime(cells, time), cells, time.day, false);
    }
  }

  #readStamp(cells: Cells, column: number): RefusalReason | null {
    const from = cells.start(column);
    const to = cells.end(column);
    if (!readStamp(cells.text, from, to, this.#parts)) return isMissing(cells.text, from, to) ? 'no-time' : 'bad-time';
    return this.#takeParts();
  }

  #readDateAndClock(cells: Cells, date: number, clock: number): RefusalReason | null {
    const from = cells.start(clock);
    const to = cells.end(clock);
    if (!readTimeOfDay(cells.text, from, to, this.#clock))
      return isMissing(cells.text, from, to) ? 'no-time' : 'bad-time';
    return this.#readDate(cells, date, this.#clock.clockMs, this.#clock.offsetMinutes);
  }

  #readDate(cells: Cells, column: number, clockMs: number, offsetMinutes = Number.NaN): RefusalReason | null {
    const from = cells.start(column);
    const to = cells.end(column);
    if (!readStamp(cells.text, from, to, this.#parts)) return isMissing(cells.text, from, to) ? 'no-time' : 'bad-time';
    this.#parts.clockMs = clockMs; // a spreadsheet may write the date as a stamp at midnight
    this.#parts.offsetMinutes = offsetMinutes;
    return this.#takeParts();
  }

  #takeParts(): RefusalReason | null {
    const parts = this.#parts;
    const order = this.#layout.dayOrder ?? 'day-first';
    const isOpen = parts.style === 'slash' || parts.style === 'dots';
    let wallMs = wallTime(parts, order);
    let otherWallMs = isOpen ? wallTime(parts, order === 'day-first' ? 'month-first' : 'day-first') : wallMs;
    if (Number.isNaN(wallMs) && Number.isNaN(otherWallMs)) return 'bad-time';
    this.isInstant = !Number.isNaN(parts.offsetMinutes);
    if (this.isInstant) {
      wallMs -= parts.offsetMinutes * MINUTE_MS;
      otherWallMs -= parts.offsetMinutes * MINUTE_MS;
    }
    this.wallMs = wallMs;
    this.otherWallMs = otherWallMs;
    return null;
  }

  #take(wallMs: number, cells: Cells, column: number, isInstant: boolean): RefusalReason | null {
    if (!(wallMs >= 0 && wallMs < LATEST_MS)) {
      return isMissing(cells.text, cells.start(column), cells.end(column)) ? 'no-time' : 'bad-time';
    }
    this.wallMs = wallMs;
    this.otherWallMs = wallMs;
    this.isInstant = isInstant;
    return null;
  }

  #epoch(value: number): number {
    const isMs = value >= EPOCH_MS_FROM;
    if (isMs) this.epochRows.milliseconds += 1;
    else this.epochRows.seconds += 1;
    return Math.round(isMs ? value : value * SECOND_MS);
  }

  /** A year that is not in the file grows by one when the months start anew. */
  #partsTime(cells: Cells, time: Extract<TimeColumns, { form: 'parts' }>): number {
    const month = numberIn(cells, time.month);
    const hour = numberIn(cells, time.hour);
    const minute = time.minute === null ? 0 : numberIn(cells, time.minute);
    if (time.year === null) {
      if (this.#lastMonth === 12 && month === 1) this.#year += 1;
      if (this.#lastMonth === 1 && month === 12) this.#year -= 1;
      this.#lastMonth = month;
    }
    const year = time.year === null ? this.#year : numberIn(cells, time.year);
    const isClock = Number.isInteger(hour) && hour >= 0 && hour <= 24 && minute >= 0 && minute < 60;
    if (!isClock || (hour === 24 && minute > 0)) return Number.NaN;
    return wallMidnight(year, month, numberIn(cells, time.day)) + hour * HOUR_MS + Math.round(minute * MINUTE_MS);
  }
}

function numberIn(cells: Cells, column: number): number {
  return parseDecimal(cells.text, cells.start(column), cells.end(column));
}

/** Milliseconds since midnight of an hour (0 to 24) or of hhmm (0 to 2400), or NaN. */
function clockOfNumber(value: number, unit: 'hour' | 'hhmm'): number {
  const hour = unit === 'hour' ? value : Math.floor(value / 100);
  const minute = unit === 'hour' ? 0 : value % 100;
  const isClock = Number.isInteger(value) && hour >= 0 && minute < 60 && hour * 60 + minute <= 1440;
  return isClock ? hour * HOUR_MS + minute * MINUTE_MS : Number.NaN;
}

/**
 * Wall time of a serial day. Written with 4 decimals or fewer it is meant to the minute, with more to the second:
 * half a unit of the fourth decimal is 4.3 s, of the fifth 0.4 s.
 */
function serialDay(cells: Cells, column: number): number {
  const value = numberIn(cells, column);
  if (!(value >= 1 && value < SERIAL_LAST_DAY)) return Number.NaN;
  let end = cells.end(column);
  while (end > cells.start(column) && isSpace(cells.text.charCodeAt(end - 1))) end -= 1;
  const point = Math.max(cells.text.lastIndexOf('.', end - 1), cells.text.lastIndexOf(',', end - 1));
  const decimals = point >= cells.start(column) ? end - 1 - point : 0;
  const precision = decimals <= 4 ? MINUTE_MS : SECOND_MS;
  return SERIAL_DAY_ZERO_MS + Math.round((value * DAY_MS) / precision) * precision;
}

/** Makes one field of the two that a decimal comma cut. */
function putTogether(cells: Cells, at: number): void {
  const fields: string[] = [];
  for (let index = 0; index < cells.count; index += 1)
    fields.push(cells.text.slice(cells.from[index], cells.to[index]));
  cells.setFields([
    ...fields.slice(0, at),
    `${fields[at] ?? ''}.${(fields[at + 1] ?? '').trim()}`,
    ...fields.slice(at + 2),
  ]);
}
