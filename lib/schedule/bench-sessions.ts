import type { MinuteSpan } from '@/lib/schedule/planning-problem';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { type TimeSpan, type WeeklyHours, weeklySpans } from '@/lib/units/weekly-hours';
import { addDays, type CalendarDay, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';

/** A day that differs from the week: other hours, or none (away, a holiday). Several of one day add up. */
export interface DayException {
  readonly onDate: CalendarDay;
  /** null: not at all on that day. */
  readonly hours: { readonly fromMinute: number; readonly toMinute: number } | null;
}

/**
 * The stretches between two instants in which a person can attend, in minutes from `epochAt`: the weekly hours, except
 * on days with exceptions, where those hold instead. A stretch belongs to the day on which it begins. Stretches that
 * touch are one; starts are rounded up and ends down to the minute; what has passed at `fromAt` is cut off.
 * A night with a clock change is as long as it is. Throws RangeError for an unknown zone or a malformed day.
 */
export function benchSessions(
  weekly: readonly WeeklyHours[],
  exceptions: readonly DayException[],
  zone: string,
  epochAt: Instant,
  fromAt: Instant,
  toAt: Instant,
): readonly MinuteSpan[] {
  const differing = new Set(exceptions.map((exception) => exception.onDate));
  const spans: TimeSpan[] = weeklySpans(weekly, zone, fromAt, toAt).filter(
    (span) => !differing.has(wallTimeAt(span.startAt, zone).day),
  );
  for (const { onDate, hours } of exceptions) {
    if (hours === null) continue;
    const toMinute = hours.toMinute <= hours.fromMinute ? hours.toMinute + 1440 : hours.toMinute;
    const startAt = instantOfWallTime(onDate, hours.fromMinute, zone);
    const endAt = instantOfWallTime(onDate, toMinute, zone);
    const isNear = addDays(onDate, 2) >= wallTimeAt(fromAt, zone).day;
    if (isNear && endAt > startAt && endAt > fromAt && startAt < toAt) spans.push({ startAt, endAt });
  }
  const cut = spans.map((span) => ({
    startMinute: Math.ceil((Math.max(span.startAt, fromAt) - epochAt) / MINUTE_MS),
    endMinute: Math.floor((Math.min(span.endAt, toAt) - epochAt) / MINUTE_MS),
  }));
  return mergedSpans(cut);
}

/** Spans in order, with those that touch or overlap made one and empty ones left out. */
export function mergedSpans(spans: readonly MinuteSpan[]): readonly MinuteSpan[] {
  const merged: MinuteSpan[] = [];
  for (const span of [...spans].sort((a, b) => a.startMinute - b.startMinute)) {
    if (span.endMinute <= span.startMinute) continue;
    const last = merged.at(-1);
    if (last !== undefined && span.startMinute <= last.endMinute) {
      merged[merged.length - 1] = {
        startMinute: last.startMinute,
        endMinute: Math.max(last.endMinute, span.endMinute),
      };
    } else merged.push(span);
  }
  return merged;
}
