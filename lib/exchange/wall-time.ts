import type { StampParts } from './stamp-parts';
import { FIRST_YEAR, LAST_YEAR } from './stamp-parts';

/** Which of two open numbers of a date comes first. */
export type DayOrder = 'day-first' | 'month-first';

const DAY_MS = 86_400_000;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Midnight of a calendar date as if it were UTC, in ms, or NaN when there is no such date between FIRST_YEAR and
 * LAST_YEAR. What a wall clock and a calendar show is written this way all through the import ("wall time").
 */
export function wallMidnight(year: number, month: number, day: number): number {
  if (!(year >= FIRST_YEAR && year <= LAST_YEAR && month >= 1 && month <= 12 && day >= 1)) return Number.NaN;
  const isLeapFebruary = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (day > (isLeapFebruary ? 29 : (DAYS_IN_MONTH[month - 1] ?? 0))) return Number.NaN;
  return Date.UTC(year, month - 1, day);
}

/** Wall time of a stamp under an order of day and month, or NaN when the date does not exist under it. */
export function wallTime(parts: StampParts, order: DayOrder): number {
  const { style, year, month, day } = parts;
  if (style === 'year-first' && day > 31) return wallMidnight(year, 1, 1) + ordinal(year, day) + parts.clockMs;
  const isOpen = style === 'slash' || style === 'dots';
  const midnight = isOpen && order === 'day-first' ? wallMidnight(year, day, month) : wallMidnight(year, month, day);
  return midnight + parts.clockMs;
}

/** Milliseconds from 1 January to a day of the year, or NaN when the year has no such day. */
export function ordinal(year: number, dayOfYear: number): number {
  const days = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 366 : 365;
  return dayOfYear >= 1 && dayOfYear <= days ? (dayOfYear - 1) * DAY_MS : Number.NaN;
}
