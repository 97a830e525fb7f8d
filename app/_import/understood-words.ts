import type { ReadingFileReport } from '@/lib/exchange/reading-file-result';
import type { DecidedBy, ReadingLayout } from '@/lib/exchange/reading-layout';
import type { RefusalReason } from '@/lib/exchange/row-reader';

/** How a logger's file was understood, in words. */

const SEPARATOR_WORDS: { readonly [S in ReadingLayout['separator']]: string } = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'upright stroke',
};

const ENCODING_WORDS: { readonly [E in ReadingLayout['encoding']]: string } = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16, big end first',
  'windows-1252': 'Windows-1252',
};

const TIME_WORDS: { readonly [F in ReadingLayout['time']['form']]: string } = {
  stamp: 'date and time in one column',
  'date-and-clock': 'date and time in two columns',
  'date-and-number': 'date in one column, hour in another',
  epoch: 'Unix time',
  'serial-day': 'days counted as spreadsheets do',
  'day-of-year': 'year and day of the year',
  parts: 'month, day and hour in columns of their own',
};

const BY_WORDS: { readonly [B in DecidedBy]: string } = {
  file: 'the file says so',
  values: 'told by the values',
  habit: 'taken as usual, please check',
  series: 'told by how the dates run on',
  answer: 'as you said',
};

export const REASON_WORDS: { readonly [R in RefusalReason]: string } = {
  'no-time': 'no time',
  'bad-time': 'no such time',
  'no-value': 'no temperature',
  'bad-value': 'the temperature is not a number',
  'out-of-range': 'outside −40 to 85 °C',
  'power-up-value': '85 °C far from its neighbours, as some sensors say when switched on',
  'too-few-fields': 'too few columns',
  'open-quote': 'a quotation mark is not closed',
  'line-too-long': 'the line is too long',
};

/** Label and value of each point. `isUnitOpen`: whether the unit is still to be answered. */
export function understoodWords(layout: ReadingLayout, isUnitOpen: boolean): { label: string; value: string }[] {
  const { unit, unitBy, dayOrder, dayOrderBy, decimal, temperatureColumn, humidityColumn } = layout;
  const points = [
    { label: 'Time', value: TIME_WORDS[layout.time.form] },
    { label: 'Zone', value: zoneWords(layout) },
    { label: 'Temperature', value: columnName(layout, temperatureColumn) },
    { label: 'Unit', value: `${unit === 'K' ? 'kelvin' : `°${unit}`} (${isUnitOpen ? 'for now' : BY_WORDS[unitBy]})` },
    { label: 'Humidity', value: humidityColumn === null ? 'none' : columnName(layout, humidityColumn) },
    { label: 'Columns separated by', value: SEPARATOR_WORDS[layout.separator] },
    { label: 'Decimal sign', value: decimal },
    { label: 'Text', value: ENCODING_WORDS[layout.encoding] },
  ];
  if (dayOrder !== null && dayOrderBy !== null) {
    const order = dayOrder === 'day-first' ? 'day first' : 'month first';
    points.splice(1, 0, { label: 'Dates', value: `${order} (${BY_WORDS[dayOrderBy]})` });
  }
  return points;
}

function columnName({ headings }: ReadingLayout, column: number): string {
  const heading = headings[column] ?? '';
  return heading === '' ? `column ${column + 1}` : heading;
}

function zoneWords({ clock, time }: ReadingLayout): string {
  if (time.form === 'epoch') return 'UTC';
  switch (clock.kind) {
    case 'place':
      return `${clock.timeZone}, where a row names no zone`;
    case 'standard-all-year':
      return `${clock.timeZone}, standard time all year`;
    case 'fixed': {
      const size = Math.abs(clock.offsetMinutes);
      const minutes = `${size % 60}`.padStart(2, '0');
      return `UTC${clock.offsetMinutes < 0 ? '−' : '+'}${Math.floor(size / 60)}:${minutes} (${BY_WORDS.file})`;
    }
  }
}

/** Where the lines of the file went, for those of which there are any. */
export function countWords({ counts }: ReadingFileReport): { label: string; value: string }[] {
  const all = [
    { label: 'Readings', count: counts.accepted },
    { label: 'Rows averaged into another of the same instant', count: counts.duplicate },
    { label: 'Rows refused', count: counts.refused },
    { label: 'Lines before the rows', count: counts.heading },
    { label: 'Empty lines', count: counts.blank },
    { label: 'Lines in all', count: counts.lines },
  ];
  return all.filter(({ count }) => count > 0).map(({ label, count }) => ({ label, value: numberWords(count) }));
}

/** 500,000. */
export function numberWords(count: number): string {
  return count.toLocaleString('en-US');
}
