import type { Separator } from './cells';
import type { ClockRule } from './local-clock';
import type { TextEncodingName } from './text-encoding';
import type { DayOrder } from './wall-time';

export type TemperatureUnit = 'C' | 'F' | 'K';

/** Which columns hold the time, counted from 0, and in what form. */
export type TimeColumns =
  /** A whole stamp, or a date alone (its midnight). */
  | { readonly form: 'stamp'; readonly column: number }
  | { readonly form: 'date-and-clock'; readonly date: number; readonly clock: number }
  /** A date, and a number: the hour 0 to 24, or hours and minutes as hhmm. */
  | { readonly form: 'date-and-number'; readonly date: number; readonly number: number; readonly unit: 'hour' | 'hhmm' }
  /** Unix time in seconds or milliseconds; the size of each number tells which. */
  | { readonly form: 'epoch'; readonly column: number }
  /** Days since 1899-12-30, as spreadsheets count. */
  | { readonly form: 'serial-day'; readonly column: number }
  | {
      readonly form: 'day-of-year';
      readonly year: number;
      readonly day: number;
      readonly clock: number | null;
      readonly unit: 'hour' | 'hhmm';
    }
  | {
      readonly form: 'parts';
      readonly year: number | null;
      readonly month: number;
      readonly day: number;
      readonly hour: number;
      readonly minute: number | null;
    };

/** What decided a point that a file does not state outright. */
export type DecidedBy = 'file' | 'values' | 'habit' | 'series' | 'answer';

/** How a logger file was understood. It is kept with the import, so that the result can be computed again. */
export interface ReadingLayout {
  readonly encoding: TextEncodingName;
  readonly separator: Separator;
  /** Lines before the first row of readings, the headings among them; counted from the first line. */
  readonly linesBeforeRows: number;
  /** Headings of the columns; empty when the file has none. */
  readonly headings: readonly string[];
  readonly time: TimeColumns;
  /** Order of day and month; null when the dates leave nothing open, or when it is still to be asked. */
  readonly dayOrder: DayOrder | null;
  readonly dayOrderBy: DecidedBy | null;
  readonly clock: ClockRule;
  readonly clockBy: DecidedBy;
  readonly temperatureColumn: number;
  readonly humidityColumn: number | null;
  readonly unit: TemperatureUnit;
  readonly unitBy: DecidedBy;
  readonly decimal: 'point' | 'comma';
  /** Where decimal commas cut a field in two in a comma-separated file without quotes. */
  readonly decimalCut: DecimalCut | null;
  /** Year of the first row, where the file names none. */
  readonly firstYear: number | null;
}

/** Rows of `width` fields have one number in the fields `at` and `at + 1`; all columns are counted without the cut. */
export interface DecimalCut {
  readonly at: number;
  readonly width: number;
}

/** What the file leaves open and the maker must say. Nothing of it is guessed. */
export type LayoutQuestion =
  | { readonly kind: 'day-order'; readonly example: string }
  | { readonly kind: 'unit'; readonly lowest: number; readonly highest: number }
  | { readonly kind: 'decimal'; readonly example: string }
  | { readonly kind: 'temperature-column'; readonly choices: readonly ColumnChoice[] }
  | { readonly kind: 'year'; readonly example: string }
  /** The log has readings in an hour the clock skips, or passes once an hour the clock repeats. */
  | { readonly kind: 'clock'; readonly sign: 'skipped-hour' | 'no-repeated-hour'; readonly wallMs: number };

export interface ColumnChoice {
  readonly column: number;
  /** Its heading, or its first value where there is none. */
  readonly name: string;
  readonly example: string;
}

/** The maker's answers, and anything they set against what was understood. */
export interface LayoutAnswers {
  readonly dayOrder?: DayOrder;
  readonly unit?: TemperatureUnit;
  /** `comma`: 21,5 is one number; `point`: the comma separates two columns. */
  readonly decimal?: 'point' | 'comma';
  readonly temperatureColumn?: number;
  readonly firstYear?: number;
  /** Whether the logger follows summer time (`place`) or keeps standard time. */
  readonly clock?: 'place' | 'standard-all-year';
  readonly timeZone?: string;
}

/** What the shop knows before a file is opened. */
export interface LayoutContext {
  readonly timeZone: string;
  /** The shop's own unit: where it is F, a file without a unit is never taken for degC. */
  readonly temperatureUnit: 'C' | 'F';
  readonly answers: LayoutAnswers;
}
