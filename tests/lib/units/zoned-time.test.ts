import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { isTimeZone } from '@/lib/units/time-zone';
import { weeklySpans } from '@/lib/units/weekly-hours';
import {
  addDays,
  dayLengthMs,
  instantOfWallMs,
  instantOfWallTime,
  isCalendarDay,
  isClockChangeDay,
  wallTimeAt,
  weekdayOf,
  zoneOffsetMs,
} from '@/lib/units/zoned-time';

const ZONES = [
  'America/Chicago',
  'Europe/London',
  'Asia/Kolkata',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'America/Havana',
  'UTC',
];

const instants = fc.integer({ min: Date.UTC(2000, 0, 1), max: Date.UTC(2037, 0, 1) });

describe('wall time', () => {
  it('knows weekdays and counts days on the calendar', () => {
    expect(weekdayOf('2026-03-08')).toBe(7);
    expect(weekdayOf('1969-12-31')).toBe(3);
    expect(weekdayOf('2024-02-29')).toBe(4);
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2026-01-01', -1)).toBe('2025-12-31');
    expect(() => weekdayOf('2026-2-3')).toThrow(RangeError);
    expect(() => weekdayOf('2026-13-01')).toThrow(RangeError);
  });

  it.each([
    ['2024-02-29', true],
    ['2026-02-29', false],
    ['2026-02-30', false],
    ['2026-04-31', false],
    ['2026-00-10', false],
    ['2026-05-31T00:00', false],
    ['26-05-31', false],
    ['', false],
  ])('"%s" is a day of the calendar: %s', (text, answer) => {
    expect(isCalendarDay(text)).toBe(answer);
  });

  it('shows what the clock shows', () => {
    const at = Date.parse('2026-03-13T00:40:59Z');
    expect(wallTimeAt(at, 'America/Chicago')).toEqual({ day: '2026-03-12', weekday: 4, minuteOfDay: 1180 });
    expect(wallTimeAt(at, 'Asia/Kolkata')).toEqual({ day: '2026-03-13', weekday: 5, minuteOfDay: 370 });
  });

  it('goes there and back, but for the hour that occurs twice', () => {
    fc.assert(
      fc.property(instants, fc.constantFrom(...ZONES), (at, zone) => {
        const minuteAt = Math.floor(at / MINUTE_MS) * MINUTE_MS;
        const { day, minuteOfDay } = wallTimeAt(minuteAt, zone);
        const back = instantOfWallTime(day, minuteOfDay, zone);
        const second = instantOfWallMs(Date.parse(`${day}T00:00:00Z`) + minuteOfDay * MINUTE_MS, zone, 'second');
        expect([back, second]).toContain(minuteAt);
        expect(back).toBeLessThanOrEqual(minuteAt);
      }),
      { numRuns: 2_000 },
    );
  });

  it('skips the gap by the offset before it', () => {
    expect(instantOfWallTime('2026-03-08', 150, 'America/Chicago')).toBe(Date.parse('2026-03-08T08:30:00Z'));
    expect(instantOfWallTime('2026-03-29', 90, 'Europe/London')).toBe(Date.parse('2026-03-29T01:30:00Z'));
  });

  it('takes a midnight that does not occur for the first instant of the day', () => {
    // Cuba changes its clocks at midnight: 2026-03-08 begins at 01:00.
    const at = instantOfWallTime('2026-03-08', 0, 'America/Havana');
    expect(wallTimeAt(at, 'America/Havana')).toEqual({ day: '2026-03-08', weekday: 7, minuteOfDay: 60 });
    expect(dayLengthMs('2026-03-08', 'America/Havana')).toBe(23 * HOUR_MS);
    expect(dayLengthMs('2026-03-07', 'America/Havana')).toBe(24 * HOUR_MS);
  });

  it('knows days on which the clocks change', () => {
    expect(isClockChangeDay('2026-03-08', 'America/Chicago')).toBe(true);
    expect(isClockChangeDay('2026-03-09', 'America/Chicago')).toBe(false);
    expect(isClockChangeDay('2026-03-08', 'America/Phoenix')).toBe(false);
  });

  it('refuses a zone that the platform does not know', () => {
    expect(() => zoneOffsetMs(0, 'Nowhere/Land')).toThrow(RangeError);
    expect(() => wallTimeAt(0, '')).toThrow(RangeError);
  });

  it.each([
    ['America/Chicago', true],
    ['Europe/London', true],
    ['UTC', true],
    ['Etc/GMT+6', true],
    ['Chicago', false],
    ['+05:00', false],
    ['', false],
    ['America/Chicago ', false],
  ])('"%s" is a zone: %s', (name, answer) => {
    expect(isTimeZone(name)).toBe(answer);
  });
});

describe('weekly hours', () => {
  it('come back every week, also overnight and at the end of the day', () => {
    const hours = [
      { weekday: 1, fromMinute: 1080, toMinute: 1440 },
      { weekday: 5, fromMinute: 1320, toMinute: 120 },
    ] as const;
    const spans = weeklySpans(hours, 'UTC', Date.UTC(2026, 1, 2), Date.UTC(2026, 1, 16));
    expect(spans.map(({ startAt, endAt }) => [new Date(startAt).toISOString(), (endAt - startAt) / HOUR_MS])).toEqual([
      ['2026-02-02T18:00:00.000Z', 6],
      ['2026-02-06T22:00:00.000Z', 4],
      ['2026-02-09T18:00:00.000Z', 6],
      ['2026-02-13T22:00:00.000Z', 4],
    ]);
  });

  it('include hours that began before, and leave out those that only touch', () => {
    const hours = [{ weekday: 7, fromMinute: 1320, toMinute: 120 }] as const;
    const monday = Date.UTC(2026, 1, 2);
    expect(weeklySpans(hours, 'UTC', monday + HOUR_MS, monday + 2 * HOUR_MS)).toHaveLength(1);
    expect(weeklySpans(hours, 'UTC', monday + 2 * HOUR_MS, monday + 3 * HOUR_MS)).toHaveLength(0);
  });

  it('do not occur when a clock change swallows them', () => {
    const hours = [{ weekday: 7, fromMinute: 120, toMinute: 180 }] as const;
    const spans = weeklySpans(hours, 'America/Chicago', Date.UTC(2026, 2, 8), Date.UTC(2026, 2, 9));
    expect(spans).toEqual([]);
  });
});
