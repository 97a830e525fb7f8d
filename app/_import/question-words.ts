import type { LayoutQuestion, ReadingLayout } from '@/lib/exchange/reading-layout';
import type { QuestionView } from './import-view';

/** The questions and settings of an import in words. */

const UNIT_OPTIONS = [
  { value: 'C', label: '°C' },
  { value: 'F', label: '°F' },
  { value: 'K', label: 'kelvin' },
];

const DAY_ORDER_OPTIONS = [
  { value: 'day-first', label: 'Day first (31/12)' },
  { value: 'month-first', label: 'Month first (12/31)' },
];

const CLOCK_OPTIONS = [
  { value: 'place', label: 'It follows the clock here, summer time and all' },
  { value: 'standard-all-year', label: 'It keeps standard time all year' },
];

/** A question of the file as a field of the form. `wallText` writes a wall time that is given as if it were UTC. */
export function questionView(question: LayoutQuestion, wallText: (wallMs: number) => string): QuestionView {
  switch (question.kind) {
    case 'day-order':
      return {
        name: 'dayOrder',
        label: 'Does the day or the month come first?',
        hint: `The dates of this file can be read both ways: ${question.example}`,
        options: DAY_ORDER_OPTIONS,
      };
    case 'unit':
      return {
        name: 'unit',
        label: 'In which unit are the temperatures?',
        hint: `The file does not say. Its values go from ${question.lowest} to ${question.highest}.`,
        options: UNIT_OPTIONS,
      };
    case 'decimal':
      return {
        name: 'decimal',
        label: `What does ${question.example} mean?`,
        hint: 'The comma separates columns in this file, but it may also be a decimal sign.',
        options: [
          { value: 'comma', label: `One number, ${question.example.replace(',', '.')}` },
          { value: 'point', label: 'Two columns' },
        ],
      };
    case 'temperature-column':
      return {
        name: 'temperatureColumn',
        label: 'Which column is the temperature of the shop?',
        hint: 'Several could be. Only one is taken in.',
        options: question.choices.map(({ column, name, example }) => ({
          value: String(column),
          label: name === '' ? `Column ${column + 1}, for example ${example}` : `${name}, for example ${example}`,
        })),
      };
    case 'year':
      return {
        name: 'firstYear',
        label: 'Of which year is the first row?',
        hint: `The file has months and days but no year: ${question.example}`,
        options: [],
      };
    case 'clock':
      return {
        name: 'clock',
        label: 'Does the clock of this logger change to summer time?',
        hint:
          question.sign === 'skipped-hour'
            ? `It has a reading at ${wallText(question.wallMs)}, an hour that the clock here skips.`
            : `It passes ${wallText(question.wallMs)} without showing the hour before it twice, as the clock here does.`,
        options: CLOCK_OPTIONS,
      };
  }
}

/** What can be read differently than it was understood, each with its present value. */
export function settingViews(layout: ReadingLayout): (QuestionView & { value: string })[] {
  const views: (QuestionView & { value: string })[] = [
    {
      name: 'timeZone',
      label: 'Time zone of the logger',
      hint: 'Region and city. Counts only where the rows name no zone of their own.',
      options: [],
      value: layout.clock.kind === 'fixed' ? '' : layout.clock.timeZone,
    },
    {
      name: 'clock',
      label: 'Summer time',
      hint: '',
      options: CLOCK_OPTIONS,
      value: layout.clock.kind === 'standard-all-year' ? 'standard-all-year' : 'place',
    },
    { name: 'unit', label: 'Unit', hint: '', options: UNIT_OPTIONS, value: layout.unit },
  ];
  if (layout.dayOrder !== null) {
    views.push({ name: 'dayOrder', label: 'Dates', hint: '', options: DAY_ORDER_OPTIONS, value: layout.dayOrder });
  }
  return views;
}
