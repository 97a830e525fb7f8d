import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';
import type { ColumnSample } from './column-sample';
import type { DecidedBy, TimeColumns } from './reading-layout';
import { readStamp } from './stamp';
import { StampParts } from './stamp-parts';
import type { DayOrder } from './wall-time';

export interface DayOrderFound {
  /** Null: the dates leave nothing open (year first, named months), or the first rows do not tell. */
  readonly dayOrder: DayOrder | null;
  readonly by: DecidedBy | null;
  /** Whether both orders must be followed through the file until its end tells. */
  readonly isOpen: boolean;
}

/**
 * Order of day and month, from the dates of the first rows: a number above 12 decides. Without one, dates with dots
 * are taken day first, and dates with slashes month first when the clock has AM and PM and the temperature is degF;
 * both are habits (common practice, no source), so a later row may still overrule them. Anything else stays open.
 */
export function findDayOrder(
  columns: readonly ColumnSample[],
  time: TimeColumns,
  isFahrenheit: boolean,
  answer: DayOrder | undefined,
): DayOrderFound {
  const styles = new Set<string>();
  let isTwelveHour = false;
  let decided: DayOrder | null = null;
  const parts = new StampParts();
  for (const cell of dateCells(columns, time)) {
    if (!readStamp(cell, 0, cell.length, parts)) continue;
    styles.add(parts.style);
    isTwelveHour ||= parts.isTwelveHour;
    if (parts.style === 'slash' || parts.style === 'dots') decided ??= orderOf(parts);
  }
  if (time.form === 'date-and-clock') {
    isTwelveHour = (columns[time.clock]?.cells ?? []).some((cell) => /[ap]\.?m\.?$/i.test(cell));
  }
  if (!styles.has('slash') && !styles.has('dots')) return { dayOrder: null, by: null, isOpen: false };
  if (answer !== undefined) return { dayOrder: answer, by: 'answer', isOpen: false };
  if (decided !== null) return { dayOrder: decided, by: 'values', isOpen: false };
  if (!styles.has('slash')) return { dayOrder: 'day-first', by: 'habit', isOpen: true };
  if (isTwelveHour && isFahrenheit) return { dayOrder: 'month-first', by: 'habit', isOpen: true };
  return { dayOrder: null, by: null, isOpen: true };
}

function dateCells(columns: readonly ColumnSample[], time: TimeColumns): readonly string[] {
  switch (time.form) {
    case 'stamp':
      return columns[time.column]?.cells ?? [];
    case 'date-and-clock':
    case 'date-and-number':
      return columns[time.date]?.cells ?? [];
    default:
      return [];
  }
}

function orderOf(parts: StampParts): DayOrder | null {
  if (parts.month > 12) return 'day-first';
  return parts.day > 12 ? 'month-first' : null;
}

/**
 * Order of day and month from the whole log, when no single date tells: the order under which the log runs on without
 * jumps is the right one, and when both do, the one with the smaller usual step. Null when that does not tell either.
 *
 * `dayFirstAt`, `monthFirstAt`: the instants of the same rows, in file order, under each order.
 * Source: rule 6 of section 7 of the reference pack ("monotonicity and smallest median step decides; else ask"). A jump
 * is a step back or a gap as section 2.4 of the pack defines it.
 */
export function dayOrderOfSeries(dayFirstAt: Float64Array, monthFirstAt: Float64Array): DayOrder | null {
  const dayFirst = jumpiness(dayFirstAt);
  const monthFirst = jumpiness(monthFirstAt);
  if (dayFirst.jumps !== monthFirst.jumps) return dayFirst.jumps < monthFirst.jumps ? 'day-first' : 'month-first';
  if (dayFirst.usualStepMs * 2 < monthFirst.usualStepMs) return 'day-first';
  if (monthFirst.usualStepMs * 2 < dayFirst.usualStepMs) return 'month-first';
  return null;
}

function jumpiness(at: Float64Array): { jumps: number; usualStepMs: number } {
  const steps = new Float64Array(Math.max(0, at.length - 1));
  let forward = 0;
  for (let row = 0; row < steps.length; row += 1) {
    const step = (at[row + 1] ?? 0) - (at[row] ?? 0);
    steps[row] = step;
    forward += Math.sign(step);
  }
  const direction = forward < 0 ? -1 : 1;
  const sizes = steps
    .map(Math.abs)
    .filter((size: Instant) => size > 0)
    .sort();
  const usualStepMs = sizes[sizes.length >> 1] ?? 0;
  const longest = Math.max(3 * usualStepMs, 30 * MINUTE_MS);
  let jumps = 0;
  for (const step of steps) if (step * direction < 0 || step * direction > longest) jumps += 1;
  return { jumps, usualStepMs };
}
