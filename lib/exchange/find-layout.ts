import { type ColumnSample, columnSamples } from './column-sample';
import { findDayOrder } from './day-order';
import { findDecimalCut, withoutCut } from './decimal-cut';
import { findRows, type RowsFound } from './find-rows';
import { headingOffsetMinutes } from './heading-words';
import type { ClockRule } from './local-clock';
import type { DecidedBy, LayoutContext, LayoutQuestion, ReadingLayout, TimeColumns } from './reading-layout';
import { columnChoice, humidityColumn, temperatureChoices } from './temperature-column';
import { findUnit } from './temperature-unit';
import type { TextEncodingName } from './text-encoding';
import { findTimeColumns } from './time-columns';

/** What the beginning of a file tells of its layout, and what it leaves open. */
export type LayoutFound =
  | {
      readonly ok: true;
      readonly layout: ReadingLayout;
      readonly questions: readonly LayoutQuestion[];
      /** Whether the order of day and month is a habit or unknown, so that the whole file must be heard on it. */
      readonly isDayOrderOpen: boolean;
    }
  | { readonly ok: false; readonly code: 'no-rows' | 'no-time' | 'no-temperature' };

/**
 * Understands a logger file from its first lines. Where a question is open the layout holds a provisional choice, good
 * for showing the first rows and for nothing else.
 */
export function findLayout(lines: readonly string[], encoding: TextEncodingName, context: LayoutContext): LayoutFound {
  const found = findRows(lines);
  if (found === null) return { ok: false, code: 'no-rows' };
  const { answers } = context;
  const questions: LayoutQuestion[] = [];

  const cutFound = findDecimalCut(found);
  const isCut = cutFound.kind === 'sure' || (cutFound.kind === 'open' && answers.decimal === 'comma');
  if (cutFound.kind === 'open' && answers.decimal === undefined)
    questions.push({ kind: 'decimal', example: cutFound.example });
  const rows = isCut ? withoutCut(found, cutFound.cut) : alignedHeadings(found);
  const columns = columnSamples(rows);

  const time = findTimeColumns(columns);
  if (time === null) return { ok: false, code: 'no-time' };
  const choices = temperatureChoices(columns, time);
  const chosen = choices.find((column) => column.index === answers.temperatureColumn) ?? choices[0];
  if (chosen === undefined) return { ok: false, code: 'no-temperature' };
  const isColumnOpen = choices.length > 1 && chosen.index !== answers.temperatureColumn;
  // Whether 21,5 is one number decides whether there are two columns at all, so that comes first.
  if (isColumnOpen && questions.length === 0) {
    questions.push({ kind: 'temperature-column', choices: choices.map(columnChoice) });
  }

  const unit = findUnit(chosen, context);
  if (unit.question !== null && !isColumnOpen) questions.push(unit.question);
  const order = findDayOrder(columns, time, unit.unit === 'F', answers.dayOrder);
  const hasNoYear = time.form === 'parts' && time.year === null;
  if (hasNoYear && answers.firstYear === undefined)
    questions.push({ kind: 'year', example: found.rows[0]?.fields.join(' ') ?? '' });

  const isComma = isCut || chosen.cells.some((cell) => /^[^.]*,\d+[^.]*$|\.\d{3},/.test(cell));
  return {
    ok: true,
    questions,
    isDayOrderOpen: order.isOpen,
    layout: {
      encoding,
      separator: found.separator,
      linesBeforeRows: found.linesBeforeRows,
      headings: rows.headings,
      time,
      dayOrder: order.dayOrder,
      dayOrderBy: order.by,
      ...clockRule(columns, time, context),
      temperatureColumn: chosen.index,
      humidityColumn: humidityColumn(columns),
      unit: unit.unit,
      unitBy: unit.by,
      decimal: isComma ? 'comma' : 'point',
      decimalCut: isCut ? cutFound.cut : null,
      firstYear: hasNoYear ? (answers.firstYear ?? PROVISIONAL_YEAR) : null,
    },
  };
}

/** Stands in while the year is asked: a leap year, so that no day is refused before the answer. */
const PROVISIONAL_YEAR = 2024;

/** Puts headings above their columns where the column of row numbers has none. */
function alignedHeadings(found: RowsFound): RowsFound {
  const width = found.rows[0]?.fields.length ?? 0;
  return found.headings.length === width - 1 && found.rows[0]?.kinds[0] === 'number'
    ? { ...found, headings: ['', ...found.headings] }
    : found;
}

function clockRule(
  columns: readonly ColumnSample[],
  time: TimeColumns,
  context: LayoutContext,
): { clock: ClockRule; clockBy: DecidedBy } {
  const { answers } = context;
  if (answers.timeZone !== undefined || answers.clock !== undefined) {
    const timeZone = answers.timeZone ?? context.timeZone;
    return { clock: { kind: answers.clock ?? 'place', timeZone }, clockBy: 'answer' };
  }
  const named = timeHeadings(columns, time)
    .map(headingOffsetMinutes)
    .find((offset) => offset !== null);
  if (named !== undefined && named !== null) return { clock: { kind: 'fixed', offsetMinutes: named }, clockBy: 'file' };
  return { clock: { kind: 'place', timeZone: context.timeZone }, clockBy: 'habit' };
}

function timeHeadings(columns: readonly ColumnSample[], time: TimeColumns): string[] {
  const first = 'column' in time ? time.column : 'date' in time ? time.date : time.day;
  const second = time.form === 'date-and-clock' ? time.clock : first;
  return [columns[first]?.heading ?? '', columns[second]?.heading ?? ''];
}
