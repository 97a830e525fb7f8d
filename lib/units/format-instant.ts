import type { Instant } from '@/lib/units/instant';
import { addDays, isClockChangeDay, wallTimeAt } from '@/lib/units/zoned-time';

/**
 * Instants as the shop's wall clock shows them. English day and month names, 24-hour clock. On a day on which the
 * clocks change the zone is named too, for there 01:30 can mean two instants.
 */

const WEEKDAY_NAMES = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTH_NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** `19:40`; on a day of a clock change `19:40 CST`. Seconds are cut off. Throws RangeError for an unknown zone. */
export function clockText(at: Instant, zone: string): string {
  const { day, minuteOfDay } = wallTimeAt(at, zone);
  const clock = minuteText(minuteOfDay);
  return isClockChangeDay(day, zone) ? `${clock} ${zoneAbbreviation(at, zone)}` : clock;
}

/** `Thu 19:40`. */
export function weekdayClockText(at: Instant, zone: string): string {
  return `${weekdayText(at, zone)} ${clockText(at, zone)}`;
}

/** `Thu 12 Mar 2026`. */
export function dateText(at: Instant, zone: string): string {
  const { day } = wallTimeAt(at, zone);
  return `${weekdayText(at, zone)} ${dayMonthText(day)} ${day.slice(0, 4)}`;
}

/** `Thu 12 Mar 2026 19:40`. */
export function dateClockText(at: Instant, zone: string): string {
  return `${dateText(at, zone)} ${clockText(at, zone)}`;
}

/**
 * As short as it is clear when read at `nowAt`: `19:40` on the same day, `Thu 19:40` within the six days before and
 * after, `Thu 12 Mar 19:40` within the year, and the full date beyond.
 */
export function whenText(at: Instant, nowAt: Instant, zone: string): string {
  const { day } = wallTimeAt(at, zone);
  const today = wallTimeAt(nowAt, zone).day;
  if (day === today) return clockText(at, zone);
  if (day >= addDays(today, -6) && day <= addDays(today, 6)) return weekdayClockText(at, zone);
  if (day.slice(0, 4) !== today.slice(0, 4)) return dateClockText(at, zone);
  return `${weekdayText(at, zone)} ${dayMonthText(day)} ${clockText(at, zone)}`;
}

/** Minutes since midnight as `06:30`; 1440 is `24:00`. */
export function minuteText(minuteOfDay: number): string {
  const hours = Math.floor(minuteOfDay / 60);
  return `${String(hours).padStart(2, '0')}:${String(minuteOfDay % 60).padStart(2, '0')}`;
}

function weekdayText(at: Instant, zone: string): string {
  return WEEKDAY_NAMES[wallTimeAt(at, zone).weekday - 1] ?? '';
}

function dayMonthText(day: string): string {
  return `${Number(day.slice(8, 10))} ${MONTH_NAMES[Number(day.slice(5, 7)) - 1] ?? ''}`;
}

const nameFormats = new Map<string, Intl.DateTimeFormat>();

/** `CST`, `BST`; where the platform has no letters for a zone, its offset (`GMT+5:30`). */
function zoneAbbreviation(at: Instant, zone: string): string {
  // American English has letters for American zones only, British English for European ones.
  const american = shortZoneName(at, zone, 'en-US');
  return american.startsWith('GMT') ? shortZoneName(at, zone, 'en-GB') : american;
}

function shortZoneName(at: Instant, zone: string, locale: string): string {
  const key = `${locale} ${zone}`;
  let format = nameFormats.get(key);
  if (format === undefined) {
    format = new Intl.DateTimeFormat(locale, { timeZone: zone, timeZoneName: 'short' });
    nameFormats.set(key, format);
  }
  return format.formatToParts(at).find((part) => part.type === 'timeZoneName')?.value ?? '';
}
