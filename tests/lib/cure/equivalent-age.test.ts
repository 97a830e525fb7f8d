import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RateLaw } from '@/lib/cure/adhesive-sheet';
import { CureIndex } from '@/lib/cure/cure-index';
import { type CureLaw, LANES, laneRate, oneCurve, rateOn } from '@/lib/cure/lane-rate';
import { rampAge } from '@/lib/cure/ramp-age';
import { arrheniusCurve } from '@/lib/cure/rate-curve';
import { readingSeries } from '@/lib/cure/reading-series';
import { temperatureCourse } from '@/lib/cure/temperature-course';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { courseOfLog, cutsOf, fineRampAge, law, START_AT, steadyShop } from './make-course';

const PROFILES = 1_000;

/** Temperatures to a millionth of a degree: finer ones are below what the reference quadrature resolves. */
const millionths = (least: number, most: number) =>
  fc.integer({ min: least * 1e6, max: most * 1e6 }).map((value) => value / 1e6);

const rateLaws: fc.Arbitrary<RateLaw> = fc.oneof(
  fc
    .tuple(fc.double({ min: 10, max: 110, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true }))
    .map(([low, width]) => ({
      kind: 'arrhenius' as const,
      activationEnergyKjPerMol: { low, central: low + width / 2, high: low + width },
    })),
  fc
    .double({ min: 3, max: 30, noNaN: true })
    .map((low) => ({ kind: 'doubling' as const, doublingC: { low, central: low + 1, high: low + 3 } })),
);

const laws: fc.Arbitrary<CureLaw> = fc.record({
  referenceC: fc.double({ min: 15, max: 30, noNaN: true }),
  minCureC: fc.double({ min: 0, max: 20, noNaN: true }),
  rateLaw: rateLaws,
});

const logs = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 29 }), millionths(-10, 45)), {
    minLength: 2,
    maxLength: 60,
  })
  .map((steps) => {
    let minute = 0;
    return steps.map(([wait, temperatureC]) => {
      minute += wait;
      return [minute, temperatureC] as const;
    });
  });

describe('equivalent age of a course', () => {
  it(`agrees with fine quadrature to 1e-9 on ${PROFILES} random profiles, on every lane`, () => {
    let worst = 0;
    fc.assert(
      fc.property(laws, logs, (cureLaw, log) => {
        const course = courseOfLog(log, { ...steadyShop(20), sensorToleranceC: 0.5 });
        for (const lane of LANES) {
          const rate = laneRate(cureLaw, lane);
          const column = { slow: course.lowC, central: course.centralC, fast: course.highC }[lane];
          let expected = 0;
          for (let i = 1; i < course.length; i++) {
            const hours = ((course.at[i] ?? 0) - (course.at[i - 1] ?? 0)) / HOUR_MS;
            const mean = fineRampAge((t) => rateOn(rate, t), cutsOf(rate), column[i - 1] ?? 0, column[i] ?? 0);
            expected += hours * mean;
          }
          const age = new CureIndex(course, lane, rate).ageBetween(course.startAt, course.endAt);
          const error = expected === 0 ? Math.abs(age) : Math.abs(age / expected - 1);
          worst = Math.max(worst, error);
          expect(error).toBeLessThan(1e-9);
        }
      }),
      { numRuns: PROFILES },
    );
    console.log(`worst relative error on ${PROFILES} profiles x 3 lanes: ${worst.toExponential(1)}`);
  });

  it('is the span times the rate where the temperature is constant, whatever the span', () => {
    const rate = oneCurve(arrheniusCurve(55, 25), Number.NEGATIVE_INFINITY);
    expect(rampAge(rate, 25, 25, 24)).toBe(24);
    expect(rampAge(rate, 15, 15, 24)).toBeCloseTo(24 * 0.46304, 3);
  });

  it('counts nothing below the least temperature, and cuts a ramp exactly where it crosses', () => {
    const rate = oneCurve(arrheniusCurve(55, 25), 10);
    expect(rampAge(rate, 5, 9.99, 10)).toBe(0);
    expect(rampAge(rate, 5, 15, 10)).toBeCloseTo(rampAge(rate, 10, 15, 5), 12);
    expect(rampAge(rate, 15, 5, 10)).toBeCloseTo(rampAge(rate, 10, 15, 5), 12);
  });

  it('counts at the least temperature itself', () => {
    const rate = oneCurve(arrheniusCurve(55, 25), 10);
    expect(rampAge(rate, 10, 10, 1)).toBeCloseTo(0.3087, 4);
  });

  it('adds up: a to c is a to b and b to c', () => {
    fc.assert(
      fc.property(logs, fc.double({ min: 0, max: 1, noNaN: true }), (log, share) => {
        const course = courseOfLog(log, steadyShop(20));
        const index = new CureIndex(course, 'central', laneRate(law(), 'central'));
        const middleAt = course.startAt + share * (course.endAt - course.startAt);
        const parts = index.ageBetween(course.startAt, middleAt) + index.ageBetween(middleAt, course.endAt);
        const whole = index.ageBetween(course.startAt, course.endAt);
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * whole + 1e-12);
      }),
    );
  });

  it('finds the instant of an age: inverse and forward agree to a millisecond', () => {
    fc.assert(
      fc.property(laws, logs, fc.double({ min: 0, max: 1, noNaN: true }), (cureLaw, log, share) => {
        const course = courseOfLog(log, { ...steadyShop(20), sensorToleranceC: 0.5 });
        for (const lane of LANES) {
          const index = new CureIndex(course, lane, laneRate(cureLaw, lane));
          const fromAt = course.startAt + (share / 3) * (course.endAt - course.startAt);
          // Short of all: an age reached only where the cure then stands still has no single instant.
          const hours = share * 0.99 * index.ageBetween(fromAt, course.endAt);
          const at = index.instantAtAge(fromAt, hours);
          if (at === null) throw new Error('an age within the course was not found');
          expect(at).toBeGreaterThanOrEqual(fromAt);
          const ageAt = (instant: number) =>
            index.ageBetween(fromAt, Math.min(course.endAt, Math.max(fromAt, instant)));
          expect(ageAt(at - 1)).toBeLessThanOrEqual(hours + 1e-12);
          expect(ageAt(at + 1)).toBeGreaterThanOrEqual(hours - 1e-12);
        }
      }),
      {
        numRuns: 1_000,
        // Starts a hair before the cure stops for good: its age once came out above that of the piece's end.
        examples: [
          [
            {
              referenceC: 15,
              minCureC: 11.586319341412615,
              rateLaw: { kind: 'doubling', doublingC: { low: 3, central: 4, high: 6 } },
            },
            [
              [1, 16.465308],
              [2, 3.328342],
            ],
            0.9999999938964844,
          ],
        ],
      },
    );
  });

  it('finds no instant for an age beyond the course, and the first one where the cure stands still', () => {
    const course = courseOfLog(
      [
        [0, 25],
        [20, 25],
        [21, 5],
        [40, 5],
        [41, 25],
        [60, 25],
      ],
      steadyShop(20),
    );
    const index = new CureIndex(course, 'central', laneRate(law(10), 'central'));
    expect(index.instantAtAge(START_AT, 24)).toBeNull();
    const ageAtStop = index.ageBetween(START_AT, START_AT + 30 * MINUTE_MS);
    const at = index.instantAtAge(START_AT, ageAtStop);
    expect(((at ?? 0) - START_AT) / MINUTE_MS).toBeCloseTo(20.75, 2);
    expect(index.instantAtAge(START_AT + 30 * MINUTE_MS, 0)).toBe(START_AT + 30 * MINUTE_MS);
  });

  it('refuses instants outside the course, a wrong order and a negative age', () => {
    const course = courseOfLog(
      [
        [0, 20],
        [10, 20],
      ],
      steadyShop(20),
    );
    const index = new CureIndex(course, 'fast', laneRate(law(), 'fast'));
    expect(() => index.ageBetween(START_AT - 1, START_AT)).toThrow(RangeError);
    expect(() => index.ageBetween(START_AT + 2, START_AT + 1)).toThrow(RangeError);
    expect(() => index.instantAtAge(START_AT, -1)).toThrow(RangeError);
    expect(() => index.instantAtAge(Number.NaN, 1)).toThrow(RangeError);
  });

  it('a warmer history never reaches an age later, on any lane', () => {
    const warmed = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 600 }), millionths(-5, 35), fc.double({ min: 0, max: 8, noNaN: true })),
      { minLength: 1, maxLength: 40 },
    );
    fc.assert(
      fc.property(laws, warmed, fc.double({ min: 0.1, max: 60, noNaN: true }), (cureLaw, steps, hours) => {
        let minute = 0;
        const at = steps.map(([wait]) => {
          minute += wait;
          return START_AT + minute * MINUTE_MS;
        });
        const settings = { ...steadyShop(18), profileToleranceC: 3, sensorToleranceC: 0.5, floorC: 8, ceilingC: 26 };
        const courses = [0, 1].map((share) =>
          temperatureCourse(
            readingSeries(
              at,
              steps.map(([, temperatureC, more]) => temperatureC + share * more),
            ),
            settings,
            START_AT,
            START_AT + 30 * 24 * HOUR_MS,
          ),
        );
        for (const lane of LANES) {
          const [colder, warmer] = courses.map((course) =>
            new CureIndex(course, lane, laneRate(cureLaw, lane)).instantAtAge(START_AT, hours),
          );
          expect(warmer ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual((colder ?? Number.POSITIVE_INFINITY) + 1);
        }
      }),
      { numRuns: process.env.SOAK === '1' ? 2_000 : 200 },
    );
  });

  it('the slow lane is never ahead of the central one, nor that of the fast one', () => {
    fc.assert(
      fc.property(laws, fc.double({ min: -20, max: 60, noNaN: true }), (cureLaw, temperatureC) => {
        const [slow = 0, central = 0, fast = 0] = LANES.map((lane) => rateOn(laneRate(cureLaw, lane), temperatureC));
        expect(slow).toBeLessThanOrEqual(central * (1 + 1e-12));
        expect(central).toBeLessThanOrEqual(fast * (1 + 1e-12));
      }),
    );
  });

  it('plain hours run by the clock on every lane, even below the least temperature', () => {
    const plain: CureLaw = { referenceC: 25, minCureC: 10, rateLaw: { kind: 'plain-hours' } };
    for (const lane of LANES) expect(rateOn(laneRate(plain, lane), -5)).toBe(1);
  });
});
