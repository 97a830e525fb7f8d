import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COURSE_KINDS, type CourseSettings, gapMsBetween, type TemperatureCourse } from '@/lib/cure/course';
import { gapLimitMs, NO_READINGS, readingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { START_AT, steadyShop } from './make-course';

const SHOP: CourseSettings = {
  ...steadyShop(18),
  profileToleranceC: 2,
  sensorToleranceC: 0.5,
  floorC: 12,
  ceilingC: 26,
};

const series = (rows: readonly (readonly [number, number])[]) =>
  readingSeries(
    rows.map(([minute]) => START_AT + minute * MINUTE_MS),
    rows.map(([, temperatureC]) => temperatureC),
  );

const every = (stepMinutes: number, count: number, from = 0): [number, number][] =>
  Array.from({ length: count }, (_, index) => [from + index * stepMinutes, 20]);

/** What a course says at a minute: kind and the three lanes of the piece that covers it. */
function at(course: TemperatureCourse, minute: number) {
  const instant = START_AT + minute * MINUTE_MS;
  for (let i = 1; i < course.length; i++) {
    const startAt = course.at[i - 1] ?? 0;
    const endAt = course.at[i] ?? 0;
    if (instant < startAt || instant >= endAt) continue;
    const share = (instant - startAt) / (endAt - startAt);
    const value = (column: Float64Array) => (column[i - 1] ?? 0) * (1 - share) + (column[i] ?? 0) * share;
    return {
      kind: COURSE_KINDS[course.kinds[i - 1] ?? 0],
      lanes: [value(course.lowC), value(course.centralC), value(course.highC)].map((c) => Math.round(c * 1e6) / 1e6),
    };
  }
  return null;
}

const course = (rows: readonly (readonly [number, number])[], fromMinute: number, toMinute: number, shop = SHOP) =>
  temperatureCourse(series(rows), shop, START_AT + fromMinute * MINUTE_MS, START_AT + toMinute * MINUTE_MS);

describe('readings brought into a series', () => {
  it('are sorted, and those of one instant averaged', () => {
    expect(
      series([
        [15, 21],
        [0, 20],
        [15, 21.4],
      ]),
    ).toEqual(
      series([
        [0, 20],
        [15, 21.2],
      ]),
    );
  });

  it('count once however often they came, in any order', () => {
    const rows = fc.array(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 100, max: 250 })), {
      maxLength: 30,
    });
    fc.assert(
      fc.property(
        rows.chain((list) =>
          fc.tuple(fc.constant(list), fc.shuffledSubarray([...list, ...list], { minLength: list.length * 2 })),
        ),
        ([once, twice]) => {
          expect(series(twice.map(([m, c]) => [m, c / 10]))).toEqual(series(once.map(([m, c]) => [m, c / 10])));
        },
      ),
    );
  });

  it('may come several a second', () => {
    const fast = readingSeries([START_AT, START_AT + 200, START_AT + 400], [20, 20.1, 20.2]);
    expect([...fast.at]).toEqual([START_AT, START_AT + 200, START_AT + 400]);
  });

  it('that are in order are taken without a copy', () => {
    const columns = { at: Float64Array.of(1, 2), temperatureC: Float64Array.of(20, 21) };
    expect(readingSeries(columns.at, columns.temperatureC).at).toBe(columns.at);
  });

  it.each([
    [[Number.NaN], [20]],
    [[0], [Number.NaN]],
    [[0], [Number.POSITIVE_INFINITY]],
    [[0], [-91]],
    [[0], [151]],
    [[0, 1], [20]],
  ])('%j and %j are refused', (instants, temperatures) => {
    expect(() => readingSeries(instants, temperatures)).toThrow(RangeError);
  });

  it.each([
    ['no readings', [], 30],
    ['one reading', every(1, 1), 30],
    ['every minute', every(1, 100), 30],
    ['every ten minutes', every(10, 100), 30],
    ['every quarter of an hour', every(15, 100), 45],
    ['every hour', every(60, 100), 180],
    [
      'an even number of unlike intervals',
      [
        [0, 20],
        [20, 20],
        [60, 20],
      ] as [number, number][],
      90,
    ],
  ])('of %s have a gap after %d minutes', (_, rows, minutes) => {
    expect(gapLimitMs(series(rows)) / MINUTE_MS).toBe(minutes);
  });
});

describe('course of temperature', () => {
  it('without readings is the profile with its tolerance', () => {
    const plain = temperatureCourse(NO_READINGS, SHOP, START_AT, START_AT + HOUR_MS);
    expect(at(plain, 30)).toEqual({ kind: 'profile', lanes: [16, 18, 20] });
    expect([plain.startAt, plain.endAt]).toEqual([START_AT, START_AT + HOUR_MS]);
  });

  it("runs straight from reading to reading, with the sensor's tolerance", () => {
    expect(
      at(
        course(
          [
            [0, 20],
            [10, 22],
          ],
          0,
          10,
        ),
        5,
      ),
    ).toEqual({ kind: 'reading', lanes: [20.5, 21, 21.5] });
  });

  it('has no gap at exactly the limit, and one just beyond', () => {
    expect(course([...every(10, 10), [120, 20]], 0, 120).gaps).toHaveLength(0);
    expect(course([...every(10, 10), [121, 20]], 0, 121).gaps).toHaveLength(1);
  });

  it("bridges a gap of six hours with a straight line, bounded by the readings and the room's range", () => {
    const rows: [number, number][] = [...every(10, 10), [450, 16], [460, 16]];
    expect(at(course(rows, 0, 460), 270)).toEqual({ kind: 'bridge', lanes: [12, 18, 26] });
    const mild = { ...SHOP, floorC: 18, ceilingC: 19 };
    expect(at(course(rows, 0, 460, mild), 270)).toEqual({ kind: 'bridge', lanes: [15.5, 18, 20.5] });
  });

  it('falls back on the profile in a longer gap, and keeps it between the bounds', () => {
    const rows: [number, number][] = [...every(10, 10), [451, 21], [461, 21]];
    const hot = { ...SHOP, profile: { otherwiseC: 30, periods: [] } };
    expect(at(course(rows, 0, 461), 270)).toEqual({ kind: 'gap', lanes: [12, 18, 26] });
    expect(at(course(rows, 0, 461, hot), 270)).toEqual({ kind: 'gap', lanes: [12, 30, 30] });
  });

  it('holds the first reading back for one gap limit, and the profile holds before that', () => {
    const late = course(
      [
        [60, 10],
        [70, 10],
      ],
      0,
      70,
    );
    expect(at(late, 20)).toEqual({ kind: 'profile', lanes: [16, 18, 20] });
    expect(at(late, 40)).toEqual({ kind: 'held', lanes: [9.5, 10, 20] });
    expect(at(late, 65)).toEqual({ kind: 'reading', lanes: [9.5, 10, 10.5] });
  });

  it('holds the last reading for one gap limit, next to the profile, which holds after that', () => {
    const early = course(
      [
        [0, 25],
        [10, 25],
      ],
      0,
      100,
    );
    expect(at(early, 30)).toEqual({ kind: 'held', lanes: [16, 25, 25.5] });
    expect(at(early, 41)).toEqual({ kind: 'profile', lanes: [16, 18, 20] });
  });

  it('takes readings around the asked stretch, and nothing from far away', () => {
    const long = course(every(10, 1000), 5_000, 5_100);
    expect(long.startAt).toBe(START_AT + 5_000 * MINUTE_MS);
    expect(long.endAt).toBeGreaterThanOrEqual(START_AT + 5_100 * MINUTE_MS);
    expect(long.length).toBeLessThan(20);
  });

  it('starts after the last reading when that is long ago', () => {
    const old = course(every(10, 10), 10_000, 10_010);
    expect(at(old, 10_005)).toEqual({ kind: 'profile', lanes: [16, 18, 20] });
  });

  it('counts the time in gaps', () => {
    const rows: [number, number][] = [...every(10, 10), [450, 16], [460, 16]];
    const gappy = course(rows, 0, 460);
    expect(gapMsBetween(gappy, START_AT, START_AT + 460 * MINUTE_MS)).toBe(360 * MINUTE_MS);
    expect(gapMsBetween(gappy, START_AT + 100 * MINUTE_MS, START_AT + 110 * MINUTE_MS)).toBe(10 * MINUTE_MS);
    expect(gapMsBetween(gappy, START_AT, START_AT + 90 * MINUTE_MS)).toBe(0);
  });

  it('keeps low at or below central at or below high, in order of time, over any log', () => {
    const rows = fc.array(fc.tuple(fc.integer({ min: 0, max: 5_000 }), fc.integer({ min: -100, max: 400 })), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(rows, fc.integer({ min: 0, max: 5_000 }), (list, fromMinute) => {
        const any = course(
          list.map(([m, c]) => [m, c / 10]),
          fromMinute,
          fromMinute + 2_000,
        );
        expect(any.startAt).toBeLessThanOrEqual(START_AT + fromMinute * MINUTE_MS);
        expect(any.endAt).toBeGreaterThanOrEqual(START_AT + (fromMinute + 2_000) * MINUTE_MS);
        for (let i = 0; i < any.length; i++) {
          expect(any.lowC[i]).toBeLessThanOrEqual(any.centralC[i] ?? Number.NaN);
          expect(any.centralC[i]).toBeLessThanOrEqual(any.highC[i] ?? Number.NaN);
          if (i > 0) expect(any.at[i]).toBeGreaterThanOrEqual(any.at[i - 1] ?? Number.NaN);
        }
      }),
    );
  });

  it('refuses settings that cannot be', () => {
    const build =
      (settings: CourseSettings, toAt = START_AT) =>
      () =>
        temperatureCourse(NO_READINGS, settings, START_AT, toAt);
    expect(build({ ...SHOP, sensorToleranceC: -1 })).toThrow(RangeError);
    expect(build({ ...SHOP, floorC: 30 })).toThrow(RangeError);
    expect(build(SHOP, START_AT - 1)).toThrow(RangeError);
    expect(build({ ...SHOP, zone: 'Nowhere/Land' }, START_AT + HOUR_MS)).toThrow(RangeError);
  });
});
