import type { MinuteSpan } from '@/lib/schedule/planning-problem';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { type TimeSpan, type WeeklyHours, weeklySpans } from '@/lib/units/weekly-hours';
import { addDays, type CalendarDay, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';

/** A day that differs from the week. Several of one day add up. */
export interface DayException {
  readonly onDate: CalendarDay;
  /**
   * `instead`: a person's own day, with these hours in place of the usual ones. `within`: the shop is open for these
   * hours only, so whoever would be there is there for what of it they have. `beside`: hours for everybody beside
   * their own.
   */
  readonly effect: 'instead' | 'within' | 'beside';
  /** null: no hours at all; away, or the shop shut. */
  readonly hours: { readonly fromMinute: number; readonly toMinute: number } | null;
}

/**
 * The stretches between two instants in which a person can attend, in minutes from `epochAt`: the weekly hours, except
 * on days with exceptions. A stretch belongs to the day on which it begins. Stretches that touch are one; starts are
 * rounded up and ends down to the minute; what has passed at `fromAt` is cut off. A night with a clock change is as
 * long as it is. Throws RangeError for an unknown zone or a malformed day.
 */
export function benchSessions(
  weekly: readonly WeeklyHours[],
  exceptions: readonly DayException[],
  zone: string,
  epochAt: Instant,
  fromAt: Instant,
  toAt: Instant,
): readonly MinuteSpan[] {
  const ofEffect = (effect: DayException['effect']) => exceptions.filter((exception) => exception.effect === effect);
  const isNear = ({ onDate }: DayException) => addDays(onDate, 2) >= wallTimeAt(fromAt, zone).day;
  const spansOf = (days: readonly DayException[]) => days.filter(isNear).flatMap((day) => spanOf(day, zone));
  const own = new Set(ofEffect('instead').map(({ onDate }) => onDate));
  const within = ofEffect('within');
  const narrowed = new Set(within.map(({ onDate }) => onDate));
  const usual = weeklySpans(weekly, zone, fromAt, toAt).flatMap((span) => {
    const { day } = wallTimeAt(span.startAt, zone);
    if (own.has(day)) return [];
    if (!narrowed.has(day)) return [span];
    return spansOf(within.filter(({ onDate }) => onDate === day)).flatMap((open) => overlap(span, open));
  });
  const spans = [...usual, ...spansOf(ofEffect('instead')), ...spansOf(ofEffect('beside'))];
  const cut = spans
    .flatMap((span) => overlap(span, { startAt: fromAt, endAt: toAt }))
    .map((span) => ({
      startMinute: Math.ceil((span.startAt - epochAt) / MINUTE_MS),
      endMinute: Math.floor((span.endAt - epochAt) / MINUTE_MS),
    }));
  return mergedSpans(cut);
}

/** The hours of a day that differs as instants; none where it has none, or where a clock change skips them. */
function spanOf({ onDate, hours }: DayException, zone: string): readonly TimeSpan[] {
  if (hours === null) return [];
  const toMinute = hours.toMinute <= hours.fromMinute ? hours.toMinute + 1440 : hours.toMinute;
  const startAt = instantOfWallTime(onDate, hours.fromMinute, zone);
  const endAt = instantOfWallTime(onDate, toMinute, zone);
  return endAt > startAt ? [{ startAt, endAt }] : [];
}

function overlap(a: TimeSpan, b: TimeSpan): readonly TimeSpan[] {
  const startAt = Math.max(a.startAt, b.startAt);
  const endAt = Math.min(a.endAt, b.endAt);
  return endAt > startAt ? [{ startAt, endAt }] : [];
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
