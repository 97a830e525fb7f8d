import { describe, expect, it } from 'vitest';
import { benchSessions, type DayException } from '@/lib/schedule/bench-sessions';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import type { WeeklyHours } from '@/lib/units/weekly-hours';
import { instantOfWallTime } from '@/lib/units/zoned-time';

/** Saturdays 9 to 12 and Sundays 1 to 6 o'clock, the night's hours in which the clocks change. */
const WEEKLY: readonly WeeklyHours[] = [
  { weekday: 6, fromMinute: 540, toMinute: 720 },
  { weekday: 7, fromMinute: 60, toMinute: 360 },
];
const SATURDAY = '2026-03-28';
/** The clocks go from 2 to 3. */
const SPRING = '2026-03-29';
const AUTUMN = '2026-10-25';
const ZONE = 'Europe/Berlin';

/** Sessions of one day as `from-to` on the wall, with their true length. */
function hoursOf(day: string, exceptions: readonly DayException[], weekly = WEEKLY): readonly string[] {
  const startAt = instantOfWallTime(day, 0, ZONE);
  const endAt = instantOfWallTime(day, 1440, ZONE);
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone: ZONE, timeStyle: 'short' });
  return benchSessions(weekly, exceptions, ZONE, startAt, startAt, endAt).map(({ startMinute, endMinute }) => {
    const at = (minute: number) => clock.format(startAt + minute * MINUTE_MS);
    return `${at(startMinute)}-${at(endMinute)} ${((endMinute - startMinute) * MINUTE_MS) / HOUR_MS} h`;
  });
}

const day = (onDate: string, effect: DayException['effect'], from?: number, to?: number): DayException => ({
  onDate,
  effect,
  hours: from === undefined || to === undefined ? null : { fromMinute: from * 60, toMinute: to * 60 },
});

describe('a day of the whole shop that differs', () => {
  it('takes hours away from who would be there, and gives none to who would not', () => {
    expect(hoursOf(SATURDAY, [day(SATURDAY, 'within', 8, 10)])).toEqual(['09:00-10:00 1 h']);
    expect(hoursOf(SATURDAY, [day(SATURDAY, 'within', 14, 18)])).toEqual([]);
    expect(hoursOf(SATURDAY, [day(SATURDAY, 'within', 8, 10)], [])).toEqual([]);
    expect(hoursOf(SATURDAY, [day(SATURDAY, 'within')])).toEqual([]);
    expect(hoursOf('2026-04-04', [day(SATURDAY, 'within')])).toEqual(['09:00-12:00 3 h']);
  });

  it('opens hours for everybody where it says so, beside their own', () => {
    expect(hoursOf(SATURDAY, [day(SATURDAY, 'beside', 14, 18)])).toEqual(['09:00-12:00 3 h', '14:00-18:00 4 h']);
    expect(hoursOf(SATURDAY, [day(SATURDAY, 'beside', 14, 18)], [])).toEqual(['14:00-18:00 4 h']);
    const shutButOpen = [day(SATURDAY, 'within'), day(SATURDAY, 'beside', 14, 18)];
    expect(hoursOf(SATURDAY, shutButOpen)).toEqual(['14:00-18:00 4 h']);
  });

  it('adds up: open in two stretches', () => {
    const two = [day(SATURDAY, 'within', 8, 10), day(SATURDAY, 'within', 11, 14)];
    expect(hoursOf(SATURDAY, two)).toEqual(['09:00-10:00 1 h', '11:00-12:00 1 h']);
  });

  it('counts the hours of a night in which the clocks change as long as they are', () => {
    expect(hoursOf(SPRING, [])).toEqual(['01:00-06:00 4 h']);
    expect(hoursOf(SPRING, [day(SPRING, 'within', 0, 4)])).toEqual(['01:00-04:00 2 h']);
    expect(hoursOf(SPRING, [day(SPRING, 'beside', 5, 8)])).toEqual(['01:00-08:00 6 h']);
    expect(hoursOf(AUTUMN, [day(AUTUMN, 'within', 0, 4)])).toEqual(['01:00-04:00 4 h']);
    expect(hoursOf(AUTUMN, [day(AUTUMN, 'within', 5, 8)])).toEqual(['05:00-06:00 1 h']);
  });

  it('cuts what begins the evening before a shut day nowhere', () => {
    const nights: readonly WeeklyHours[] = [{ weekday: 6, fromMinute: 1320, toMinute: 120 }];
    expect(hoursOf(SPRING, [day(SPRING, 'within')], nights)).toEqual(['00:00-03:00 2 h']);
  });
});
