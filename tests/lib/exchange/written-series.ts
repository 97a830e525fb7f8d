import fc from 'fast-check';
import { wallTimeAt, zoneOffsetMs } from '@/lib/units/zoned-time';

/** One way a logger may write a series. */
export interface WritingForm {
  readonly separator: ',' | ';' | '\t' | '|';
  readonly decimal: '.' | ',';
  readonly unit: 'C' | 'F' | 'K';
  readonly time:
    | 'iso-utc'
    | 'iso-offset'
    | 'iso-local'
    | 'dots'
    | 'day-first'
    | 'month-first-12h'
    | 'split'
    | 'unix-s'
    | 'unix-ms'
    | 'serial'
    | 'year-day';
  readonly encoding: 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'windows-1252';
  readonly hasHeadings: boolean;
  readonly hasPreamble: boolean;
  readonly isQuoted: boolean;
  readonly isBackwards: boolean;
  readonly lineEnd: '\n' | '\r\n' | '\r';
  readonly zone: string;
}

export interface Series {
  readonly at: readonly number[];
  /** Tenths of a degree of the unit it is written in. */
  readonly tenths: readonly number[];
}

const ZONES = [
  'UTC',
  'America/Chicago',
  'Europe/Vienna',
  'Asia/Kolkata',
  'Australia/Lord_Howe',
  'America/Phoenix',
  'America/St_Johns',
];

export const writingForm: fc.Arbitrary<WritingForm> = fc.record({
  separator: fc.constantFrom(',', ';', '\t', '|'),
  decimal: fc.constantFrom('.', ','),
  unit: fc.constantFrom('C', 'F', 'K'),
  time: fc.constantFrom(
    'iso-utc',
    'iso-offset',
    'iso-local',
    'dots',
    'day-first',
    'month-first-12h',
    'split',
    'unix-s',
    'unix-ms',
    'serial',
    'year-day',
  ),
  encoding: fc.constantFrom('utf-8', 'utf-8-bom', 'utf-16le', 'windows-1252'),
  hasHeadings: fc.boolean(),
  hasPreamble: fc.boolean(),
  isQuoted: fc.boolean(),
  isBackwards: fc.boolean(),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  zone: fc.constantFrom(...ZONES),
});

const TENTHS_WITHIN = { C: [-390, 840], F: [-380, 1840], K: [2340, 3570] } as const;

/** A series in steps of whole minutes, at any time of 2012 to 2040, near a clock change as often as not. */
export function seriesOf(unit: 'C' | 'F' | 'K'): fc.Arbitrary<Series> {
  const [from, to] = TENTHS_WITHIN[unit];
  const start = fc.oneof(
    fc.integer({ min: Date.UTC(2012, 0, 1) / 60_000, max: Date.UTC(2040, 0, 1) / 60_000 }),
    fc
      .tuple(
        fc.constantFrom(Date.UTC(2026, 2, 8), Date.UTC(2026, 10, 1), Date.UTC(2026, 2, 29), Date.UTC(2026, 3, 5)),
        fc.integer({ min: -1500, max: 1500 }),
      )
      .map(([day, minutes]) => day / 60_000 + minutes),
  );
  return fc
    .record({
      startMinute: start,
      stepMinutes: fc.constantFrom(1, 5, 10, 15, 30, 60, 120),
      tenths: fc.array(fc.integer({ min: from, max: to }), { minLength: 2, maxLength: 40 }),
    })
    .map(({ startMinute, stepMinutes, tenths }) => ({
      at: tenths.map((_, row) => (startMinute + row * stepMinutes) * 60_000),
      tenths,
    }));
}

/** The file in the given form. */
export function writtenFile(series: Series, form: WritingForm): Uint8Array {
  const lines: string[] = [];
  if (form.hasPreamble) lines.push('Logger 7', 'Serial: 0042', '');
  if (form.hasHeadings) lines.push(headings(form).join(form.separator));
  const order = series.at.map((_, row) => row);
  if (form.isBackwards) order.reverse();
  for (const row of order) {
    const value = ((series.tenths[row] ?? 0) / 10).toFixed(1).replace('.', form.decimal);
    lines.push([...stamp(series.at[row] ?? 0, form), value].map((field) => quoted(field, form)).join(form.separator));
  }
  return encoded(`${lines.join(form.lineEnd)}${form.lineEnd}`, form.encoding);
}

function quoted(field: string, form: WritingForm): string {
  return form.isQuoted || field.includes(form.separator) ? `"${field}"` : field;
}

function headings(form: WritingForm): string[] {
  const temperature = `Temp [${form.unit === 'K' ? 'K' : `°${form.unit}`}]`;
  switch (form.time) {
    case 'split':
      return ['Date', 'Time', temperature];
    case 'year-day':
      return ['Year', 'DOY', 'hhmm', temperature];
    default:
      return ['Timestamp', temperature];
  }
}

function stamp(at: number, form: WritingForm): string[] {
  const offset = zoneOffsetMs(at, form.zone);
  const wall = new Date(at + offset);
  const iso = wall.toISOString().slice(0, 19);
  const [year, month, day] = [iso.slice(0, 4), iso.slice(5, 7), iso.slice(8, 10)];
  const clock = iso.slice(11, 19);
  switch (form.time) {
    case 'iso-utc':
      return [new Date(at).toISOString()];
    case 'iso-offset': {
      const size = Math.abs(offset) / 60_000;
      const hours = `${Math.floor(size / 60)}`.padStart(2, '0');
      return [`${iso}${offset < 0 ? '-' : '+'}${hours}:${`${size % 60}`.padStart(2, '0')}`];
    }
    case 'iso-local':
      return [iso.replace('T', ' ')];
    case 'dots':
      return [`${day}.${month}.${year.slice(2)} ${clock.slice(0, 5)}`];
    case 'day-first':
      return [`${day}/${month}/${year} ${clock}`];
    case 'month-first-12h': {
      const hour = Number(clock.slice(0, 2));
      return [
        `${month}/${day}/${year} ${hour % 12 === 0 ? 12 : hour % 12}${clock.slice(2)} ${hour < 12 ? 'AM' : 'PM'}`,
      ];
    }
    case 'split':
      return [`${year}-${month}-${day}`, clock.slice(0, 5)];
    case 'unix-s':
      return [`${at / 1000}`];
    case 'unix-ms':
      return [`${at}`];
    case 'serial':
      return [((wall.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000).toFixed(6).replace('.', form.decimal)];
    case 'year-day': {
      const dayOfYear = Math.floor((wall.getTime() - Date.UTC(Number(year), 0, 1)) / 86_400_000) + 1;
      return [year, `${dayOfYear}`, `${Number(clock.slice(0, 2)) * 100 + Number(clock.slice(3, 5))}`];
    }
  }
}

function encoded(text: string, encoding: WritingForm['encoding']): Uint8Array {
  switch (encoding) {
    case 'utf-8':
      return new TextEncoder().encode(text);
    case 'utf-8-bom':
      return new TextEncoder().encode(`\uFEFF${text}`);
    case 'windows-1252':
      return Uint8Array.from(text, (character) => character.charCodeAt(0));
    case 'utf-16le':
      return new Uint8Array(Uint16Array.from(`\uFEFF${text}`, (character) => character.charCodeAt(0)).buffer);
  }
}

/** Whether a wall time of the series occurs twice, so that a file without offsets may not tell which one is meant. */
export function touchesRepeatedHour(series: Series, zone: string): boolean {
  const day = 24 * 3_600_000;
  return series.at.some(
    (at) => zoneOffsetMs(at - day, zone) > zoneOffsetMs(at + day, zone) && wallTimeAt(at, zone).minuteOfDay < 240,
  );
}
