import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AdhesiveSheet, RateLaw } from '@/lib/cure/adhesive-sheet';
import type { CourseSettings } from '@/lib/cure/course';
import { cureLanes, lanesOfCourse } from '@/lib/cure/cure-lanes';
import { NO_READINGS, readingSeries } from '@/lib/cure/reading-series';
import { recoatStateAt, recoatWindow } from '@/lib/cure/recoat-window';
import { type CureClock, release } from '@/lib/cure/release';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { courseOfSteps, law, START_AT, sheet, steadyShop } from './make-course';

const hoursAfterStart = (at: number | null) => ((at ?? Number.NaN) - START_AT) / HOUR_MS;

const clockOf = (figures: AdhesiveSheet, mixedMinutesBefore = 0): CureClock => ({
  setAt: START_AT,
  mixedAt: START_AT - mixedMinutesBefore * MINUTE_MS,
  sheet: figures,
});

const shop = (temperatureC: number, toleranceC: number): CourseSettings => ({
  ...steadyShop(temperatureC),
  profileToleranceC: toleranceC,
});

const profileLanes = (temperatureC: number, toleranceC: number, figures: AdhesiveSheet, days = 30) =>
  cureLanes(
    temperatureCourse(
      NO_READINGS,
      shop(temperatureC, toleranceC),
      START_AT - 12 * HOUR_MS,
      START_AT + days * 24 * HOUR_MS,
    ),
    figures,
  );

describe('release', () => {
  const glue = sheet({ milestoneHours: { handle: 24 } });

  it('is told with its band: 24 h at 25 degC are about 51.83 h at 15 degC', () => {
    const result = release(clockOf(glue), profileLanes(15, 0, glue), 'handle');
    expect(result).toMatchObject({ kind: 'release', milestone: 'handle', gapMs: 0 });
    if (result.kind !== 'release') return;
    // 65 and 45 kJ/mol at 15 degC: 24 / 0.4025 and 24 / 0.5326.
    expect(hoursAfterStart(result.earliestAt)).toBeCloseTo(45.06, 1);
    expect(hoursAfterStart(result.centralAt)).toBeCloseTo(51.83, 2);
    expect(hoursAfterStart(result.latestAt)).toBeCloseTo(59.62, 1);
    expect(Number.isInteger(result.latestAt)).toBe(true);
  });

  it('is wider with a profile that may be off', () => {
    const sure = release(clockOf(glue), profileLanes(20, 0, glue), 'handle');
    const vague = release(clockOf(glue), profileLanes(20, 3, glue), 'handle');
    if (sure.kind !== 'release' || vague.kind !== 'release') throw new Error('no release');
    expect(vague.earliestAt).toBeLessThan(sure.earliestAt);
    expect(vague.latestAt).toBeGreaterThan(sure.latestAt);
    expect(vague.centralAt).toBe(sure.centralAt);
  });

  it('is not stated where the sheet is silent', () => {
    expect(release(clockOf(glue), profileLanes(20, 0, glue), 'ship')).toEqual({
      kind: 'not-stated',
      milestone: 'ship',
    });
  });

  it('is never sure in a shop that may stay below the least temperature', () => {
    const result = release(clockOf(glue), profileLanes(11, 2, glue), 'handle');
    expect(result).toMatchObject({ kind: 'beyond-horizon', horizonAt: START_AT + 30 * 24 * HOUR_MS });
    if (result.kind !== 'beyond-horizon') return;
    expect(result.earliestAt).not.toBeNull();
    expect(result.centralAt).not.toBeNull();
    const colder = release(clockOf(glue), profileLanes(9, 0, glue), 'handle');
    expect(colder).toMatchObject({ kind: 'beyond-horizon', centralAt: null });
  });

  it('counts what opens from the joint and what closes from the mix', () => {
    const coat = sheet({ milestoneHours: { 'recoat-from': 4, 'recoat-by': 24 } });
    const lanes = profileLanes(25, 0, coat);
    const clock = clockOf(coat, 30);
    expect(release(clock, lanes, 'recoat-from')).toMatchObject({ latestAt: START_AT + 4 * HOUR_MS });
    expect(release(clock, lanes, 'recoat-by')).toMatchObject({ earliestAt: START_AT + 23.5 * HOUR_MS });
  });

  it('runs by the clock for plain hours, however cold', () => {
    const lacquer = sheet({ rateLaw: { kind: 'plain-hours' }, milestoneHours: { sand: 2 } });
    const at = START_AT + 2 * HOUR_MS;
    expect(release(clockOf(lacquer), profileLanes(5, 3, lacquer), 'sand')).toEqual({
      kind: 'release',
      milestone: 'sand',
      earliestAt: at,
      centralAt: at,
      latestAt: at,
      gapMs: 0,
    });
  });

  it('refuses a clock that began outside the course', () => {
    const lanes = profileLanes(20, 0, glue);
    expect(() => release({ ...clockOf(glue), setAt: START_AT - 24 * HOUR_MS }, lanes, 'handle')).toThrow(RangeError);
  });

  it('is not judged when more than half of its time is a gap of the log', () => {
    const quick = sheet({ milestoneHours: { handle: 3 } });
    const at = [0, 10, 20, 30, 300, 310, 320].map((minute) => START_AT + minute * MINUTE_MS);
    const temperatures = at.map(() => 25);
    const course = temperatureCourse(readingSeries(at, temperatures), shop(25, 0), START_AT, START_AT + 24 * HOUR_MS);
    expect(release(clockOf(quick), cureLanes(course, quick), 'handle')).toEqual({
      kind: 'not-judged',
      milestone: 'handle',
      reason: 'log-has-a-gap',
      gapMs: 150 * MINUTE_MS,
      ofMs: 180 * MINUTE_MS,
    });
    const slow = sheet({ milestoneHours: { handle: 10 } });
    expect(release(clockOf(slow), cureLanes(course, slow), 'handle')).toMatchObject({
      kind: 'release',
      gapMs: 270 * MINUTE_MS,
    });
    const lacquer = sheet({ rateLaw: { kind: 'plain-hours' }, milestoneHours: { handle: 3 } });
    expect(release(clockOf(lacquer), cureLanes(course, lacquer), 'handle')).toMatchObject({ kind: 'release' });
  });

  it('stands still in a gap in which the shop may have been too cold', () => {
    const at = [0, 10, 20, 320, 330, 340].map((minute) => START_AT + minute * MINUTE_MS);
    const cold = { ...shop(25, 0), floorC: 5 };
    const course = temperatureCourse(
      readingSeries(
        at,
        at.map(() => 25),
      ),
      cold,
      START_AT,
      START_AT + 48 * HOUR_MS,
    );
    const result = release(clockOf(sheet({ milestoneHours: { handle: 12 } })), cureLanes(course, law(10)), 'handle');
    expect(result).toMatchObject({ latestAt: START_AT + 17 * HOUR_MS, centralAt: START_AT + 12 * HOUR_MS });
  });

  it('keeps earliest, central and latest in order, for any sheet and any log', () => {
    const laws: fc.Arbitrary<RateLaw> = fc.oneof(
      fc.record({
        kind: fc.constant('arrhenius' as const),
        activationEnergyKjPerMol: fc
          .array(fc.integer({ min: 10, max: 120 }), { minLength: 3, maxLength: 3 })
          .map((values) => [...values].sort((a, b) => a - b))
          .map(([low = 45, central = 55, high = 65]) => ({ low, central, high })),
      }),
      fc.record({
        kind: fc.constant('doubling' as const),
        doublingC: fc
          .array(fc.integer({ min: 4, max: 30 }), { minLength: 3, maxLength: 3 })
          .map((values) => [...values].sort((a, b) => a - b))
          .map(([low = 8, central = 10, high = 12]) => ({ low, central, high })),
      }),
      fc.constant<RateLaw>({ kind: 'plain-hours' }),
    );
    const logs = fc.array(fc.tuple(fc.integer({ min: 0, max: 4_000 }), fc.integer({ min: -50, max: 380 })), {
      maxLength: 40,
    });
    fc.assert(
      fc.property(laws, logs, fc.integer({ min: 1, max: 200 }), (rateLaw, log, hours) => {
        const figures = sheet({ rateLaw, milestoneHours: { handle: hours, 'recoat-by': hours } });
        const series = readingSeries(
          log.map(([minute]) => START_AT + minute * MINUTE_MS),
          log.map(([, tenths]) => tenths / 10),
        );
        const settings = { ...shop(18, 2), sensorToleranceC: 0.5, floorC: 8, ceilingC: 28 };
        const lanes = cureLanes(temperatureCourse(series, settings, START_AT, START_AT + 40 * 24 * HOUR_MS), figures);
        for (const milestone of ['handle', 'recoat-by'] as const) {
          const result = release(clockOf(figures), lanes, milestone);
          if (result.kind !== 'release') continue;
          expect(result.earliestAt).toBeGreaterThanOrEqual(START_AT);
          expect(result.earliestAt).toBeLessThanOrEqual(result.centralAt);
          expect(result.centralAt).toBeLessThanOrEqual(result.latestAt);
          if (milestone === 'recoat-by') expect(result.latestAt).toBeLessThanOrEqual(START_AT + hours * HOUR_MS);
        }
      }),
      { numRuns: process.env.SOAK === '1' ? 3_000 : 300 },
    );
  });

  it('moves later with a cold night in the log', () => {
    const hourly = (night: number) =>
      Array.from({ length: 48 }, (_, hour) => (hour >= 4 && hour <= 12 ? night : 21) as number);
    const at = Array.from({ length: 48 }, (_, hour) => START_AT + hour * HOUR_MS);
    const latest = (night: number) => {
      const course = temperatureCourse(
        readingSeries(at, hourly(night)),
        shop(21, 1),
        START_AT,
        START_AT + 20 * 24 * HOUR_MS,
      );
      const result = release(clockOf(glue), cureLanes(course, glue), 'handle');
      return result.kind === 'release' ? result.latestAt : Number.NaN;
    };
    expect(latest(9) - latest(21)).toBeGreaterThan(6 * HOUR_MS);
  });
});

describe('lanes of a course', () => {
  it('are summed once for each different law', () => {
    const lanesOf = lanesOfCourse(courseOfSteps([[10, 20]]));
    expect(lanesOf(law(10))).toBe(lanesOf({ ...law(10) }));
    expect(lanesOf(law(10))).not.toBe(lanesOf(law(12)));
    expect(lanesOf(sheet({ milestoneHours: { handle: 1 } }))).toBe(lanesOf(law(10)));
  });
});

describe('recoat window', () => {
  const coat = sheet({ milestoneHours: { 'recoat-from': 4, 'recoat-by': 24 } });

  it('opens at its latest, closes at its earliest, and is closed from then on', () => {
    const window = recoatWindow(clockOf(coat), profileLanes(25, 0, coat));
    expect(window).toMatchObject({ closesBeforeOpening: false, remedy: 'wash, dry, sand' });
    const opensAt = START_AT + 4 * HOUR_MS;
    const closesAt = START_AT + 24 * HOUR_MS;
    expect([opensAt - 1, opensAt, closesAt - 1, closesAt].map((at) => recoatStateAt(window, at))).toEqual([
      'not-yet',
      'open',
      'open',
      'closed',
    ]);
  });

  it('is never stretched by cold: the hours of the sheet, or its own limit, are the end by the clock', () => {
    const cold = recoatWindow(clockOf(coat), profileLanes(12, 0, coat));
    expect(cold.closesAt).toBe(START_AT + 24 * HOUR_MS);
    const limited = sheet({ ...coat, recoatCapHours: 18 });
    expect(recoatWindow(clockOf(limited), profileLanes(25, 0, limited)).closesAt).toBe(START_AT + 18 * HOUR_MS);
    const wide = sheet({ ...coat, recoatCapHours: 72 });
    const wideWindow = recoatWindow(clockOf(wide), profileLanes(15, 0, wide));
    expect(hoursAfterStart(wideWindow.closesAt)).toBeCloseTo(45.06, 1);
  });

  it('is shortened by warmth', () => {
    const warm = recoatWindow(clockOf(coat), profileLanes(30, 0, coat));
    expect(hoursAfterStart(warm.closesAt)).toBeCloseTo(15.57, 2);
  });

  it("says when it closes before it is sure to open, and gives the sheet's own remedy", () => {
    const tight = sheet({
      milestoneHours: { 'recoat-from': 20, 'recoat-by': 24 },
      recoatRemedy: 'scuff with a grey pad',
    });
    const window = recoatWindow(clockOf(tight), profileLanes(15, 2, tight));
    expect(window).toMatchObject({ closesBeforeOpening: true, remedy: 'scuff with a grey pad' });
    expect(recoatStateAt(window, START_AT + 23 * HOUR_MS)).toBe('not-yet');
    expect(recoatStateAt(window, START_AT + 24 * HOUR_MS)).toBe('closed');
    const frozen = recoatWindow(clockOf(tight), profileLanes(5, 0, tight));
    expect(frozen.closesBeforeOpening).toBe(true);
  });

  it('without an end stays open, without a beginning is not stated until it closes', () => {
    const endless = sheet({ milestoneHours: { 'recoat-from': 1 } });
    const open = recoatWindow(clockOf(endless), profileLanes(25, 0, endless));
    expect(open.closesAt).toBeNull();
    expect(recoatStateAt(open, START_AT + 1_000 * HOUR_MS)).toBe('open');
    const headless = sheet({ milestoneHours: { 'recoat-by': 24 } });
    const window = recoatWindow(clockOf(headless), profileLanes(25, 0, headless));
    expect(recoatStateAt(window, START_AT + HOUR_MS)).toBe('not-stated');
    expect(recoatStateAt(window, START_AT + 25 * HOUR_MS)).toBe('closed');
  });
});
