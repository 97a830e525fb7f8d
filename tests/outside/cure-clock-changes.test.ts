import { describe, expect, it } from 'vitest';
import { cureLanes } from '@/lib/cure/cure-lanes';
import { NO_READINGS } from '@/lib/cure/reading-series';
import { recoatWindow } from '@/lib/cure/recoat-window';
import { release } from '@/lib/cure/release';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { clockText, weekdayClockText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import { weeklySpans } from '@/lib/units/weekly-hours';
import { dayLengthMs, instantOfWallMs, instantOfWallTime, weekdayOf } from '@/lib/units/zoned-time';
import { sheet, steadyShop } from '../lib/cure/make-course';

/**
 * Releases and bench hours over the clock changes of 2026 in America/Chicago: 2026-03-08T08:00Z and
 * 2026-11-01T07:00Z. Source of the rows D1 to D16: the project's reference pack, section 6.2, computed there from the
 * IANA time zone database 2025b; the rules for wall times that occur twice or never are RFC 5545 section 3.3.5.
 */

const CHICAGO = 'America/Chicago';

/** A joint set at an instant in a shop of just the reference temperature: its hours are hours by the clock. */
function releaseAfter(setAt: Instant, hours: number): Instant {
  const glue = sheet({ milestoneHours: { 'pull-test': hours } });
  const lanes = cureLanes(temperatureCourse(NO_READINGS, steadyShop(25, CHICAGO), setAt, setAt + 200 * HOUR_MS), glue);
  const result = release({ setAt, mixedAt: setAt, sheet: glue }, lanes, 'pull-test');
  if (result.kind !== 'release') throw new Error(result.kind);
  expect(result.earliestAt).toBe(result.latestAt);
  return result.latestAt;
}

const local = (day: string, clock: string) => {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return instantOfWallTime(day, hours * 60 + minutes, CHICAGO);
};

describe('release times in the weeks of the clock changes', () => {
  it.each([
    ['D1', '2026-03-07', '20:00', 12, '2026-03-08T14:00:00Z', 'Sun 09:00 CDT'],
    ['D2', '2026-03-07', '20:00', 24, '2026-03-09T02:00:00Z', 'Sun 21:00 CDT'],
    ['D3', '2026-10-31', '20:00', 12, '2026-11-01T13:00:00Z', 'Sun 07:00 CST'],
    ['D4', '2026-10-31', '20:00', 24, '2026-11-02T01:00:00Z', 'Sun 19:00 CST'],
    ['D5', '2026-03-07', '22:30', 4, '2026-03-08T08:30:00Z', 'Sun 03:30 CDT'],
    ['D6', '2026-10-31', '22:30', 4, '2026-11-01T07:30:00Z', 'Sun 01:30 CST'],
    ['D7', '2026-03-07', '22:00', 72, '2026-03-11T04:00:00Z', 'Tue 23:00'],
    ['D7', '2026-10-31', '22:00', 72, '2026-11-04T03:00:00Z', 'Tue 21:00'],
  ])('%s: set on %s at %s, %d h later it is %s, shown as %s', (_, day, clock, hours, utc, shown) => {
    const at = releaseAfter(local(day, clock), hours);
    expect(new Date(at).toISOString()).toBe(utc.replace('Z', '.000Z'));
    expect(weekdayClockText(at, CHICAGO)).toBe(shown);
  });

  it('D8: 02:30 on 2026-03-08 does not occur and means 03:30 CDT', () => {
    expect(local('2026-03-08', '02:30')).toBe(Date.parse('2026-03-08T08:30:00Z'));
  });

  it('D9: 01:30 on 2026-11-01 occurs twice and means the first, unless the second is asked for', () => {
    expect(local('2026-11-01', '01:30')).toBe(Date.parse('2026-11-01T06:30:00Z'));
    const second = instantOfWallMs(Date.UTC(2026, 10, 1, 1, 30), CHICAGO, 'second');
    expect(second).toBe(Date.parse('2026-11-01T07:30:00Z'));
    expect(clockText(local('2026-11-01', '01:30'), CHICAGO)).toBe('01:30 CDT');
    expect(clockText(second, CHICAGO)).toBe('01:30 CST');
  });

  it.each([
    ['D10', CHICAGO, '2026-03-08', 23],
    ['D10', CHICAGO, '2026-11-01', 25],
    ['D16', 'Europe/London', '2026-03-29', 23],
    ['D16', 'Europe/London', '2026-10-25', 25],
    ['D16', 'Australia/Lord_Howe', '2026-04-05', 24.5],
    ['D16', 'America/Phoenix', '2026-03-08', 24],
    ['D16', 'Asia/Kolkata', '2026-03-29', 24],
  ])('%s: in %s %s lasts %d h', (_, zone, day, hours) => {
    expect(dayLengthMs(day, zone)).toBe(hours * HOUR_MS);
  });

  it.each([
    ['2026-03-07', '2026-03-08T00:30:00Z', '2026-03-08T03:30:00Z'],
    ['2026-03-08', '2026-03-08T23:30:00Z', '2026-03-09T02:30:00Z'],
    ['2026-10-31', '2026-10-31T23:30:00Z', '2026-11-01T02:30:00Z'],
    ['2026-11-01', '2026-11-02T00:30:00Z', '2026-11-02T03:30:00Z'],
  ])('D11: bench hours 18:30 to 21:30 on %s are %s to %s', (day, start, end) => {
    const hours = [{ weekday: weekdayOf(day), fromMinute: 1110, toMinute: 1290 }];
    const spans = weeklySpans(hours, CHICAGO, local(day, '12:00'), local(day, '23:59'));
    expect(spans).toEqual([{ startAt: Date.parse(start), endAt: Date.parse(end) }]);
  });

  it("D12: from 18:30 to the next day's 18:30 are 23 h in spring and 25 h in autumn", () => {
    expect(local('2026-03-08', '18:30') - local('2026-03-07', '18:30')).toBe(23 * HOUR_MS);
    expect(local('2026-11-01', '18:30') - local('2026-10-31', '18:30')).toBe(25 * HOUR_MS);
  });

  it.each([
    ['2026-03-07', 4.5],
    ['2026-10-31', 6.5],
  ])('D13: a session from 22:00 on %s to 03:30 lasts %d h', (day, hours) => {
    const session = [{ weekday: weekdayOf(day), fromMinute: 1320, toMinute: 210 }];
    const [span] = weeklySpans(session, CHICAGO, local(day, '22:00'), local(day, '23:00'));
    expect((span?.endAt ?? 0) - (span?.startAt ?? 0)).toBe(hours * HOUR_MS);
  });

  it.each([
    ['D14', '2026-03-07', '23:00 ', '2026-03-08', '20:00 CDT'],
    ['D15', '2026-10-31', '23:00 ', '2026-11-01', '18:00 CST'],
  ])(
    '%s: a window of 4 to 24 h from 19:00 on %s opens at %s and closes on %s at %s',
    (_, day, opens, _closingDay, closes) => {
      const setAt = local(day, '19:00');
      const coat = sheet({ milestoneHours: { 'recoat-from': 4, 'recoat-by': 24 } });
      const course = temperatureCourse(NO_READINGS, steadyShop(25, CHICAGO), setAt, setAt + 72 * HOUR_MS);
      const window = recoatWindow({ setAt, mixedAt: setAt, sheet: coat }, cureLanes(course, coat));
      if (window.opens.kind !== 'release' || window.closesAt === null) throw new Error('no window');
      expect(clockText(window.opens.latestAt, CHICAGO)).toBe(opens.trim());
      expect(clockText(window.closesAt, CHICAGO)).toBe(closes);
    },
  );

  it('D14 and D15: the close falls inside the bench hours in spring and before them in autumn', () => {
    expect(local('2026-03-07', '19:00') + 24 * HOUR_MS).toBeGreaterThan(local('2026-03-08', '18:30'));
    expect(local('2026-10-31', '19:00') + 24 * HOUR_MS).toBeLessThan(local('2026-11-01', '18:30'));
  });
});
