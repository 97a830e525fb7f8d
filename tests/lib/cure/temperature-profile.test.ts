import { describe, expect, it } from 'vitest';
import { profilePieces, profileTemperatureC, type TemperatureProfile } from '@/lib/cure/temperature-profile';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';

const WORKDAYS: TemperatureProfile = {
  otherwiseC: 14,
  periods: [
    { weekdays: [1, 2, 3, 4, 5], fromMinute: 7 * 60, toMinute: 22 * 60, temperatureC: 20 },
    { weekdays: [5], fromMinute: 21 * 60, toMinute: 60, temperatureC: 23 },
  ],
};

describe('weekly temperature profile', () => {
  it.each([
    [1, 0, 14],
    [1, 6 * 60 + 59, 14],
    [1, 7 * 60, 20],
    [1, 21 * 60 + 59, 20],
    [1, 22 * 60, 14],
    [5, 21 * 60, 23],
    [5, 23 * 60, 23],
    [6, 59, 23],
    [6, 60, 14],
    [7, 12 * 60, 14],
  ] as const)('on weekday %d at minute %d it is %d degC', (weekday, minute, temperatureC) => {
    expect(profileTemperatureC(WORKDAYS, weekday, minute)).toBe(temperatureC);
  });

  it('runs overnight from Sunday into Monday', () => {
    const sunday: TemperatureProfile = {
      otherwiseC: 10,
      periods: [{ weekdays: [7], fromMinute: 1320, toMinute: 360, temperatureC: 16 }],
    };
    expect(profileTemperatureC(sunday, 1, 300)).toBe(16);
    expect(profileTemperatureC(sunday, 1, 360)).toBe(10);
  });

  it('is one piece where it never changes', () => {
    const flat = { otherwiseC: 18, periods: [] };
    expect(profilePieces(flat, 'America/Chicago', 0, 90 * 24 * HOUR_MS)).toEqual([
      { startAt: 0, endAt: 90 * 24 * HOUR_MS, temperatureC: 18 },
    ]);
    expect(profilePieces(flat, 'UTC', 5, 5)).toEqual([]);
  });

  it('has a night an hour shorter in spring and an hour longer in autumn', () => {
    const nights: TemperatureProfile = {
      otherwiseC: 20,
      periods: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], fromMinute: 22 * 60, toMinute: 6 * 60, temperatureC: 15 }],
    };
    const nightHours = (from: string, to: string) =>
      profilePieces(nights, 'America/Chicago', Date.parse(from), Date.parse(to))
        .filter((piece) => piece.temperatureC === 15)
        .map((piece) => (piece.endAt - piece.startAt) / HOUR_MS);
    expect(nightHours('2026-03-06T18:00:00Z', '2026-03-09T18:00:00Z')).toEqual([8, 7, 8]);
    expect(nightHours('2026-10-30T18:00:00Z', '2026-11-02T18:00:00Z')).toEqual([8, 9, 8]);
  });

  it.each(['America/Chicago', 'Europe/London', 'Australia/Lord_Howe', 'America/Havana', 'Asia/Kolkata'])(
    'agrees with the wall clock at every quarter of an hour of a year in %s',
    (zone) => {
      // Periods in and around the hours in which clocks change.
      const profile: TemperatureProfile = {
        otherwiseC: 10,
        periods: [
          { weekdays: [7], fromMinute: 30, toMinute: 90, temperatureC: 11 },
          { weekdays: [6, 7], fromMinute: 110, toMinute: 150, temperatureC: 12 },
          { weekdays: [1, 2, 3, 4, 5, 6, 7], fromMinute: 1425, toMinute: 15, temperatureC: 13 },
        ],
      };
      const from = Date.UTC(2026, 0, 1);
      const pieces = profilePieces(profile, zone, from, from + 365 * 24 * HOUR_MS);
      let startAt = from;
      for (const piece of pieces) {
        expect(piece.startAt).toBe(startAt);
        startAt = piece.endAt;
        for (const at of [piece.startAt, piece.endAt - 1]) {
          const { weekday, minuteOfDay } = wallTimeAt(at, zone);
          expect(profileTemperatureC(profile, weekday, minuteOfDay)).toBe(piece.temperatureC);
        }
      }
      let index = 0;
      for (let at = from; at < startAt; at += 15 * MINUTE_MS) {
        while ((pieces[index]?.endAt ?? Number.POSITIVE_INFINITY) <= at) index++;
        const { weekday, minuteOfDay } = wallTimeAt(at, zone);
        if (pieces[index]?.temperatureC !== profileTemperatureC(profile, weekday, minuteOfDay)) {
          throw new Error(`differs at ${new Date(at).toISOString()}`);
        }
      }
      expect(startAt).toBe(from + 365 * 24 * HOUR_MS);
    },
  );

  it('refuses an end before the start and an unknown zone', () => {
    expect(() => profilePieces(WORKDAYS, 'UTC', 1, 0)).toThrow(RangeError);
    expect(() => profilePieces(WORKDAYS, 'Nowhere/Land', 0, 1)).toThrow(RangeError);
  });
});
