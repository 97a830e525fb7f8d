import type { ColumnSample } from './column-sample';
import { isRowCount } from './column-sample';
import type { ColumnChoice, TimeColumns } from './reading-layout';

/** The columns a temperature may stand in: one is taken, several are asked about. */
export function temperatureChoices(columns: readonly ColumnSample[], time: TimeColumns): ColumnSample[] {
  const taken = timeColumnsOf(time);
  const free = columns.filter((column) => !taken.includes(column.index));
  const numeric = free.filter((column) => column.kind === 'number');
  // A logger that failed at first has a temperature column without a single value in its first rows.
  const open = numeric.length > 0 ? numeric : free.filter((column) => column.kind === 'missing');
  const named = open.filter((column) => column.role === 'temperature');
  if (named.length > 0) return named;
  const others = open.filter((column) => column.role === 'other-temperature' && /temp|°/i.test(column.heading));
  if (others.length > 0) return others;
  const unnamed = open.filter((column) => column.role === null || column.role === 'index');
  // A temperature that rises by one a row looks like a row count, but then it is all there is.
  const measured = unnamed.filter((column) => !isRowCount(column));
  return measured.length > 0 ? measured : unnamed;
}

/** The column of relative humidity, or null. */
export function humidityColumn(columns: readonly ColumnSample[]): number | null {
  return columns.find((column) => column.role === 'humidity' && column.kind === 'number')?.index ?? null;
}

/** What to show of a column so that a maker knows which it is. */
export function columnChoice(column: ColumnSample): ColumnChoice {
  const example = column.cells.find((cell) => cell !== '') ?? '';
  return { column: column.index, name: column.heading, example };
}

/** Every column that the time is read from. */
function timeColumnsOf(time: TimeColumns): number[] {
  switch (time.form) {
    case 'stamp':
    case 'epoch':
    case 'serial-day':
      return [time.column];
    case 'date-and-clock':
      return [time.date, time.clock];
    case 'date-and-number':
      return [time.date, time.number];
    case 'day-of-year':
      return [time.year, time.day, ...(time.clock === null ? [] : [time.clock])];
    case 'parts':
      return [time.year, time.month, time.day, time.hour, time.minute].filter((column) => column !== null);
  }
}
