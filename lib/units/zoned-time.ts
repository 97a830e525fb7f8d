import { tzOffset } from '@date-fns/tz/tzOffset';
import { millisecondsInDay as DAY_MS } from 'date-fns/constants';
import { parseISO } from 'date-fns/parseISO';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';

/**
 * Wall time in the shop's zone, and back. Instants are UTC; a zone is an IANA name such as `America/Chicago`.
 * Rules for wall times that occur twice or not at all: RFC 5545 section 3.3.5 (seen).
 */

/** A calendar day in the shop, `YYYY-MM-DD`. */
export type CalendarDay = string;

/** ISO 8601 weekday: 1 Monday to 7 Sunday. */
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** What the wall clock and the calendar in the shop show at an instant. */
export interface WallTime {
  readonly day: CalendarDay;
  readonly weekday: Weekday;
  /** Minutes the clock shows since 00:00, 0 to 1439, without seconds. */
  readonly minuteOfDay: number;
}

/** Some fifty years of days in one zone; then the look-up begins anew. */
const MOST_DAYS = 20_000;

/** The offset of each UTC day that has one only, by zone. Asking the platform takes microseconds, and screens ask a lot. */
const steadyDays = new Map<string, Map<number, number | null>>();

/**
 * How far the zone's wall clock is ahead of UTC at an instant, ms (Chicago in winter: -21,600,000).
 * Throws RangeError for a zone that the platform does not know, and for an instant that is no date.
 */
export function zoneOffsetMs(at: Instant, zone: string): number {
  const day = Math.floor(at / DAY_MS);
  let days = steadyDays.get(zone);
  let offsetMs = days?.get(day);
  if (offsetMs === undefined) {
    const startMs = askedOffsetMs(day * DAY_MS, zone);
    // No zone changes its clocks twice within a day: equal ends mean one offset all day.
    offsetMs = startMs === askedOffsetMs((day + 1) * DAY_MS, zone) ? startMs : null;
    if (days === undefined || days.size >= MOST_DAYS) {
      days = new Map();
      steadyDays.set(zone, days);
    }
    days.set(day, offsetMs);
  }
  return offsetMs ?? askedOffsetMs(at, zone);
}

/** Whether a text is a day of the calendar, YYYY-MM-DD. */
export function isCalendarDay(text: string): text is CalendarDay {
  return !Number.isNaN(readDayMs(text));
}

/** The weekday of a calendar day. Throws RangeError for anything but YYYY-MM-DD. */
export function weekdayOf(day: CalendarDay): Weekday {
  return weekdayOfUtcMs(utcMsOfDay(day));
}

/** The calendar day `count` days later (earlier when negative). Days are counted on the calendar, not in hours. */
export function addDays(day: CalendarDay, count: number): CalendarDay {
  return dayOfUtcMs(utcMsOfDay(day) + count * DAY_MS);
}

/** What the wall clock shows at an instant. Throws RangeError for an unknown zone. */
export function wallTimeAt(at: Instant, zone: string): WallTime {
  const wallMs = at + zoneOffsetMs(at, zone);
  const dayMs = Math.floor(wallMs / DAY_MS) * DAY_MS;
  return {
    day: dayOfUtcMs(dayMs),
    weekday: weekdayOfUtcMs(dayMs),
    minuteOfDay: Math.floor((wallMs - dayMs) / MINUTE_MS),
  };
}

/**
 * The instant at which the shop's wall clock shows `minuteOfDay` on `day`. 1440 is the midnight that ends the day;
 * more than that counts on into the next day. A wall time that occurs twice means the first; one that does not
 * occur is read with the offset before the gap (2026-03-08 02:30 in Chicago is 03:30 CDT).
 * Throws RangeError for an unknown zone or a malformed day. Source: RFC 5545 section 3.3.5.
 */
export function instantOfWallTime(day: CalendarDay, minuteOfDay: number, zone: string): Instant {
  return instantOfWallMs(utcMsOfDay(day) + minuteOfDay * MINUTE_MS, zone);
}

/**
 * The same for a wall time to the millisecond, given as if it were UTC (`Date.UTC(year, month - 1, day, ...)`):
 * what a logger's local stamp is read with. `which` picks the second of two occurrences, where there are two.
 */
export function instantOfWallMs(wallMs: number, zone: string, which: 'first' | 'second' = 'first'): Instant {
  // Offsets are within 14 hours of UTC, so these instants lie before and after the wall time whatever the offset.
  const offsetBefore = zoneOffsetMs(wallMs - DAY_MS, zone);
  const offsetAfter = zoneOffsetMs(wallMs + DAY_MS, zone);
  const before = wallMs - offsetBefore;
  if (offsetBefore === offsetAfter) return before;
  const after = wallMs - offsetAfter;
  const beforeHolds = zoneOffsetMs(before, zone) === offsetBefore;
  const afterHolds = zoneOffsetMs(after, zone) === offsetAfter;
  if (beforeHolds && afterHolds) return which === 'first' ? before : after;
  return afterHolds ? after : before;
}

/** True on a calendar day on which the zone changes its clocks (a day of 23, 25 or otherwise not 24 hours). */
export function isClockChangeDay(day: CalendarDay, zone: string): boolean {
  return dayLengthMs(day, zone) !== DAY_MS;
}

/** How long a calendar day lasts in a zone, ms: 24 hours but for days on which the clocks change. */
export function dayLengthMs(day: CalendarDay, zone: string): number {
  return instantOfWallTime(day, 1440, zone) - instantOfWallTime(day, 0, zone);
}

function askedOffsetMs(at: Instant, zone: string): number {
  const minutes = tzOffset(zone, new Date(at));
  if (Number.isNaN(minutes))
    throw new RangeError(`zoneOffsetMs needs an IANA time zone and a date, got ${zone}, ${at}`);
  return Math.round(minutes * MINUTE_MS);
}

function utcMsOfDay(day: CalendarDay): number {
  const ms = readDayMs(day);
  if (Number.isNaN(ms)) throw new RangeError(`a calendar day needs a date of the form YYYY-MM-DD, got ${day}`);
  return ms;
}

function readDayMs(text: string): number {
  // Not Date.parse: it takes the 30th of February for the 2nd of March.
  return /^\d{4}-\d{2}-\d{2}$/.test(text) ? parseISO(`${text}T00:00:00Z`).getTime() : Number.NaN;
}

function dayOfUtcMs(ms: number): CalendarDay {
  return new Date(ms).toISOString().slice(0, 10);
}

function weekdayOfUtcMs(ms: number): Weekday {
  // 1970-01-01 was a Thursday, ISO weekday 4.
  const index = (((Math.floor(ms / DAY_MS) + 3) % 7) + 7) % 7;
  return WEEKDAYS[index] ?? 1;
}
