import type { Instant } from '@/lib/units/instant';
import { addDays, instantOfWallTime, type Weekday, wallTimeAt, weekdayOf } from '@/lib/units/zoned-time';

/** A stretch of wall time that comes back every week. `toMinute` at or before `fromMinute` ends on the next day. */
export interface WeeklyHours {
  readonly weekday: Weekday;
  /** Minutes of the wall clock since 00:00, 0 to 1439. */
  readonly fromMinute: number;
  /** 1 to 1440; 1440 is the midnight that ends the day. */
  readonly toMinute: number;
}

/** A stretch of time between two instants, `startAt < endAt`. */
export interface TimeSpan {
  readonly startAt: Instant;
  readonly endAt: Instant;
}

/**
 * The occurrences of weekly hours that touch `[fromAt, toAt)`, in order of their start, whole (not cut at the ends).
 * Clock changes fall where they fall: 22:00 to 03:30 over a spring change lasts 4 h 30. Hours that the change
 * swallows whole do not occur. Throws RangeError for an unknown zone.
 */
export function weeklySpans(
  hours: readonly WeeklyHours[],
  zone: string,
  fromAt: Instant,
  toAt: Instant,
): readonly TimeSpan[] {
  const spans: TimeSpan[] = [];
  const lastDay = wallTimeAt(toAt, zone).day;
  for (let day = addDays(wallTimeAt(fromAt, zone).day, -1); day <= lastDay; day = addDays(day, 1)) {
    const weekday = weekdayOf(day);
    for (const rule of hours) {
      if (rule.weekday !== weekday) continue;
      const toMinute = rule.toMinute <= rule.fromMinute ? rule.toMinute + 1440 : rule.toMinute;
      const startAt = instantOfWallTime(day, rule.fromMinute, zone);
      const endAt = instantOfWallTime(day, toMinute, zone);
      if (endAt > startAt && endAt > fromAt && startAt < toAt) spans.push({ startAt, endAt });
    }
  }
  return spans.sort((a, b) => a.startAt - b.startAt || a.endAt - b.endAt);
}
