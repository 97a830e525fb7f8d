import type { ColumnSample } from './column-sample';
import type { TimeColumns } from './reading-layout';

/** Unix time of 1990 and of 2100, in seconds: numbers between them can be stamps. Chosen. */
const EPOCH_FROM_S = 631_152_000;
const EPOCH_TO_S = 4_102_444_800;

/** Serial days of 2009 and 2064. Chosen, a little wider than rule 6 of section 7 of the reference pack. */
const SERIAL_FROM = 40_000;
const SERIAL_TO = 60_000;

/** Finds the columns that hold the time, by what is in them and by their headings; null when none does. */
export function findTimeColumns(columns: readonly ColumnSample[]): TimeColumns | null {
  return stampColumn(columns) ?? dateColumns(columns) ?? partColumns(columns) ?? countedColumn(columns);
}

function stampColumn(columns: readonly ColumnSample[]): TimeColumns | null {
  const stamps = columns.filter((column) => column.kind === 'stamp');
  const best = stamps.find((column) => column.role === 'stamp' || column.role === 'clock') ?? stamps[0];
  return best === undefined ? null : { form: 'stamp', column: best.index };
}

function dateColumns(columns: readonly ColumnSample[]): TimeColumns | null {
  const date = columns.find((column) => column.kind === 'date');
  if (date === undefined) return null;
  const clock = columns.find((column) => column.kind === 'clock');
  if (clock !== undefined) return { form: 'date-and-clock', date: date.index, clock: clock.index };
  const number = columns.find(
    (column) =>
      column.kind === 'number' && (column.role === 'hour' || column.role === 'clock') && isClockNumber(column),
  );
  if (number === undefined) return { form: 'stamp', column: date.index };
  return { form: 'date-and-number', date: date.index, number: number.index, unit: clockUnit(number) };
}

function isClockNumber(column: ColumnSample): boolean {
  return column.numbers.every((value) => Number.isInteger(value) && value >= 0 && value <= 2400 && value % 100 < 60);
}

/** hhmm when the heading says so or a number is no hour of a day. */
function clockUnit(column: ColumnSample): 'hour' | 'hhmm' {
  return /hh:?mm/i.test(column.heading) || column.numbers.some((value) => value > 24) ? 'hhmm' : 'hour';
}

/** Columns for year, day of the year and hhmm, or for month, day and hour. */
function partColumns(columns: readonly ColumnSample[]): TimeColumns | null {
  const numbers = columns.filter((column) => column.kind === 'number');
  const of = (role: ColumnSample['role']) => numbers.find((column) => column.role === role);
  const year = of('year');
  const month = of('month');
  const day = of('day');
  const hour = of('hour') ?? of('clock');
  const dayOfYear = of('day-of-year');
  if (year !== undefined && dayOfYear !== undefined) {
    return {
      form: 'day-of-year',
      year: year.index,
      day: dayOfYear.index,
      clock: hour?.index ?? null,
      unit: hour === undefined ? 'hour' : clockUnit(hour),
    };
  }
  if (month !== undefined && day !== undefined && hour !== undefined) {
    return {
      form: 'parts',
      year: year?.index ?? null,
      month: month.index,
      day: day.index,
      hour: hour.index,
      minute: of('minute')?.index ?? null,
    };
  }
  return unheadedDayOfYear(columns);
}

/** `2009,105,1051,...`: a year, a day of it and hhmm next to each other, known by their ranges alone. */
function unheadedDayOfYear(columns: readonly ColumnSample[]): TimeColumns | null {
  for (const [index, year] of columns.entries()) {
    const day = columns[index + 1];
    const clock = columns[index + 2];
    if (day === undefined || clock === undefined) return null;
    const isYear = isWholeWithin(year, 1990, 2099);
    if (isYear && isWholeWithin(day, 1, 366) && isWholeWithin(clock, 0, 2400) && isClockNumber(clock)) {
      return { form: 'day-of-year', year: index, day: index + 1, clock: index + 2, unit: 'hhmm' };
    }
  }
  return null;
}

function isWholeWithin(column: ColumnSample, from: number, to: number): boolean {
  const { kind, numbers } = column;
  return kind === 'number' && numbers.every((value) => Number.isInteger(value) && value >= from && value <= to);
}

/** A column that counts seconds, milliseconds or days. */
function countedColumn(columns: readonly ColumnSample[]): TimeColumns | null {
  for (const column of columns) {
    if (column.kind !== 'number') continue;
    if (column.numbers.every(isEpoch)) return { form: 'epoch', column: column.index };
    const isTime = column.role === null || column.role === 'stamp' || column.role === 'date' || column.role === 'clock';
    const isSerial = column.numbers.every((value) => value >= SERIAL_FROM && value < SERIAL_TO);
    if (isTime && isSerial && column.numbers.length > 0) return { form: 'serial-day', column: column.index };
  }
  return null;
}

function isEpoch(value: number): boolean {
  const seconds = value >= EPOCH_TO_S ? value / 1000 : value;
  return seconds >= EPOCH_FROM_S && seconds < EPOCH_TO_S;
}
