import { describe, expect, it } from 'vitest';
import {
  activationEnergyOfDoubling,
  doublingOfActivationEnergy,
  fitActivationEnergy,
} from '@/lib/cure/activation-energy';
import type { TemperatureCourse } from '@/lib/cure/course';
import { CureIndex } from '@/lib/cure/cure-index';
import { oneCurve, rateOn } from '@/lib/cure/lane-rate';
import { arrheniusCurve, doublingCurve, type RateCurve, ZERO_C_IN_K } from '@/lib/cure/rate-curve';
import { courseOfLog, courseOfSteps, steadyShop } from '../lib/cure/make-course';

/**
 * Equivalent age and its rate laws against published figures. "Pack" is the project's own reference pack of formulas
 * and check values; what it computed itself (with scipy) is marked so, what it read elsewhere names that source.
 */

const NEVER_STOPS = Number.NEGATIVE_INFINITY;
const DAY_H = 24;

function ageHours(course: TemperatureCourse, curve: RateCurve, stopBelowC = NEVER_STOPS): number {
  return new CureIndex(course, 'central', oneCurve(curve, stopBelowC)).ageBetween(course.startAt, course.endAt);
}

/** Nurse-Saul maturity: the temperature above a datum. */
function nurseSaul(datumC: number): RateCurve {
  return {
    rateAt: (temperatureC) => Math.max(0, temperatureC - datumC),
    logSlopeAt: (temperatureC) => 1 / Math.max(1e-9, temperatureC - datumC),
    logCurvatureAt: () => 0,
  };
}

/** `exp(a - q / (zero + t))` with a document's own constants. */
function reciprocal(a: number, q: number, zero: number): RateCurve {
  return {
    rateAt: (temperatureC) => Math.exp(a - q / (zero + temperatureC)),
    logSlopeAt: (temperatureC) => q / (zero + temperatureC) ** 2,
    logCurvatureAt: (temperatureC) => (q / (zero + temperatureC) ** 2) ** 2 - (2 * q) / (zero + temperatureC) ** 3,
  };
}

/** fib Model Code 2010 Eq. 5.1-85, the same as EN 1992-1-1 (B.10); its zero is 273. */
const MODEL_CODE_2010 = reciprocal(13.65, 4000, 273);

describe('published worked examples of maturity', () => {
  it('E1 Nurse-Saul: 28 days at 15 degC over a datum of -11 degC are 728 degC d (engineering notes on Plowman, pack S44)', () => {
    const course = courseOfSteps([[28 * DAY_H, 15]]);
    expect(ageHours(course, nurseSaul(-11)) / DAY_H).toBeCloseTo(728, 9);
  });

  it('E2 Nurse-Saul: 3500 degC h at 23 degC take 152 h; 49 degC give them in 72 h (engineering notes, pack S48)', () => {
    const course = courseOfSteps([[1000, 23]]);
    const index = new CureIndex(course, 'central', oneCurve(nurseSaul(0), NEVER_STOPS));
    const at = index.instantAtAge(course.startAt, 3500) ?? Number.NaN;
    expect(Math.round((at - course.startAt) / 3_600_000)).toBe(152);
    expect(Math.round(ageHours(courseOfSteps([[72, 3500 / 72]]), nurseSaul(0)))).toBe(3500);
    expect(Math.round(3500 / 72)).toBe(49);
  });

  it('E3 Arrhenius: 7 d at 20 and 7 d at 25 degC are 15.7723 d (fib Model Code 2010 Eq. 5.1-85, unit test of the federation)', () => {
    const course = courseOfSteps([
      [7 * DAY_H, 20],
      [7 * DAY_H, 25],
    ]);
    expect(ageHours(course, MODEL_CODE_2010) / DAY_H).toBeCloseTo(15.77227331, 8);
  });

  it.each([
    [0, 0.36714],
    [10, 0.61614],
    [25, 1.25506],
    [30, 1.56624],
    [40, 2.38798],
  ])('EN 1992-1-1 (B.10): factor at %d degC is %d (pack 2.3, computed there)', (temperatureC, factor) => {
    expect(ageHours(courseOfSteps([[1, temperatureC]]), MODEL_CODE_2010)).toBeCloseTo(factor, 5);
  });

  it('EN 1992-1-1 (B.10): three steps add up to 10.516197 d, 28 d at 10 degC to 17.252014 d (pack 2.3, computed there)', () => {
    const steps = courseOfSteps([
      [3 * DAY_H, 5],
      [4 * DAY_H, 12],
      [7 * DAY_H, 18],
    ]);
    expect(ageHours(steps, MODEL_CODE_2010) / DAY_H).toBeCloseTo(10.516197, 6);
    expect(ageHours(courseOfSteps([[28 * DAY_H, 10]]), MODEL_CODE_2010) / DAY_H).toBeCloseTo(17.252014, 6);
  });

  it.each([
    [0, 0.2868],
    [5, 0.3986],
    [10, 0.5475],
    [15, 0.7438],
    [23, 1.1886],
    [30, 1.7553],
    [40, 2.9723],
  ])(
    'ASTM C1074 form, Q = 5000 K, Ts = 20 degC: factor at %d degC is %d (pack 2.3, computed there)',
    (temperatureC, factor) => {
      const curve = reciprocal(5000 / (20 + ZERO_C_IN_K), 5000, ZERO_C_IN_K);
      expect(rateOn(oneCurve(curve, NEVER_STOPS), temperatureC)).toBeCloseTo(factor, 4);
    },
  );

  it('E4 Arrhenius pair: 100 kJ/mol, 10 against 25 degC is 0.1180088 (inputs: documentation of rpmodel, ftemp_arrh)', () => {
    // That code has R = 8.3145; ours moves the factor by 1e-5 of itself.
    expect(arrheniusCurve(100, 25).rateAt(10)).toBeCloseTo(0.1180088, 5);
  });

  it.each([
    [[4, 4, 4, 4, 16], 8.1089],
    [[15, 20, 25, 30], 24.1041],
    [[20, 25, 30], 25.8582],
  ])(
    'E5 mean kinetic temperature of %j degC is %d degC (83.14472 kJ/mol; a public test asserts >= 8.0 for the first, pack S50)',
    (temperatures, expected) => {
      const energyKj = (83.14472 * 8.314462618) / 8.314472;
      const course = courseOfSteps(temperatures.map((temperatureC) => [1, temperatureC] as const));
      const mean = ageHours(course, arrheniusCurve(energyKj, 20)) / temperatures.length;
      const q = (energyKj * 1000) / 8.314462618;
      expect(1 / (1 / (20 + ZERO_C_IN_K) - Math.log(mean) / q) - ZERO_C_IN_K).toBeCloseTo(expected, 4);
    },
  );
});

describe('rate laws against the tables of the pack (section 2, computed there)', () => {
  it.each([
    [45, [0.2711, 0.3823, 0.4671, 0.5326, 0.6463, 0.7337, 0.8315, 0.8846, 1, 1.1286, 1.3491, 1.8023, 2.3858]],
    [50, [0.2345, 0.3435, 0.4292, 0.4966, 0.6157, 0.7089, 0.8146, 0.8727, 1, 1.1438, 1.3947, 1.9243, 2.6278]],
    [55, [0.2028, 0.3087, 0.3944, 0.463, 0.5866, 0.6849, 0.7981, 0.8609, 1, 1.1593, 1.4419, 2.0544, 2.8943]],
    [60, [0.1755, 0.2774, 0.3624, 0.4317, 0.5588, 0.6618, 0.7819, 0.8492, 1, 1.175, 1.4906, 2.1934, 3.1879]],
    [65, [0.1518, 0.2493, 0.333, 0.4025, 0.5324, 0.6394, 0.766, 0.8377, 1, 1.1909, 1.5411, 2.3418, 3.5113]],
  ])('Arrhenius factors of %d kJ/mol at 5 to 40 degC', (energyKj, factors) => {
    const temperatures = [5, 10, 13, 15, 18, 20, 22, 23, 25, 27, 30, 35, 40];
    for (const [index, temperatureC] of temperatures.entries()) {
      expect(arrheniusCurve(energyKj, 25).rateAt(temperatureC)).toBeCloseTo(factors[index] ?? Number.NaN, 4);
    }
  });

  it.each([
    [0, 44_573.6],
    [5, 46_191.0],
    [10, 47_837.2],
    [15, 49_512.3],
    [20, 51_216.2],
    [25, 52_948.9],
    [30, 54_710.4],
  ])('a rate that doubles from %d degC over 10 degrees has %d J/mol, and back', (fromC, jPerMol) => {
    expect(activationEnergyOfDoubling(10, fromC) * 1000).toBeCloseTo(jPerMol, 1);
    expect(doublingOfActivationEnergy(activationEnergyOfDoubling(10, fromC), fromC)).toBeCloseTo(10, 10);
    expect(arrheniusCurve(activationEnergyOfDoubling(10, fromC), fromC).rateAt(fromC + 10)).toBeCloseTo(2, 12);
  });

  it('doubles every 10 degrees exactly, the rule printed on many labels', () => {
    const curve = doublingCurve(10, 25);
    expect([5, 15, 25, 35].map((temperatureC) => curve.rateAt(temperatureC))).toEqual([
      expect.closeTo(0.25, 12),
      expect.closeTo(0.5, 12),
      1,
      expect.closeTo(2, 12),
    ]);
  });

  it('45 min at 20 and 22 min at 30 degC: 52 876.676 J/mol, 31.276029 min at 25, 65.568715 min at 15 degC', () => {
    const fit = fitActivationEnergy({ temperatureC: 20, minutes: 45 }, { temperatureC: 30, minutes: 22 });
    if (!fit.ok) throw new Error("the pack's fit was refused");
    expect(fit.kjPerMol * 1000).toBeCloseTo(52_876.676, 2);
    expect(45 / arrheniusCurve(fit.kjPerMol, 20).rateAt(25)).toBeCloseTo(31.276029, 5);
    expect(45 / arrheniusCurve(fit.kjPerMol, 20).rateAt(15)).toBeCloseTo(65.568715, 5);
  });

  it("sellers' practical figures of pot life, 40 min at 21 and 60 min at 10 degC, imply only 25.5 kJ/mol (pack S19)", () => {
    const fit = fitActivationEnergy({ temperatureC: 10, minutes: 60 }, { temperatureC: 21, minutes: 40 });
    expect(fit).toMatchObject({ ok: true, isUnusual: true, kjPerMol: expect.closeTo(25.5, 1) });
  });

  it.each([
    [10, 77.74],
    [15, 51.83],
    [18, 40.91],
    [20, 35.04],
    [22, 30.07],
    [30, 16.65],
  ])('24 h at 25 degC take at %d degC %d h', (temperatureC, hours) => {
    const course = courseOfSteps([[100, temperatureC]]);
    const at = new CureIndex(course, 'central', oneCurve(arrheniusCurve(55, 25), NEVER_STOPS)).instantAtAge(
      course.startAt,
      24,
    );
    expect(((at ?? Number.NaN) - course.startAt) / 3_600_000).toBeCloseTo(hours, 2);
  });
});

describe('logged series of the pack (section 2.4, computed there)', () => {
  const logA: [number, number][] = [
    [0, 20],
    [30, 20],
    [60, 22],
    [90, 24],
    [120, 26],
    [180, 26],
    [240, 24],
    [300, 20],
    [360, 16],
  ];
  const logB: [number, number][] = [18, 16, 14, 12, 10, 8, 7, 8, 11, 15, 18].map((c, hour) => [hour * 60, c]);

  it('log A: exact on straight lines 5.111287 h, between the mid-point and the trapezoid rule', () => {
    const hours = ageHours(courseOfLog(logA, steadyShop(20)), arrheniusCurve(55, 25));
    expect(hours).toBeCloseTo(5.111287, 6);
    expect(hours).toBeGreaterThan(5.104357);
    expect(hours).toBeLessThan(5.125152);
  });

  it('the hard ramp, 10 to 30 degC in an hour: 0.747668 h', () => {
    const ramp = courseOfLog(
      [
        [0, 10],
        [60, 30],
      ],
      steadyShop(20),
    );
    expect(ageHours(ramp, arrheniusCurve(55, 25))).toBeCloseTo(0.747668, 6);
  });

  it('log B, a cold night: 3.738161 h without a stop, 2.762478 h with none below 10 degC', () => {
    const course = courseOfLog(logB, steadyShop(20));
    expect(ageHours(course, arrheniusCurve(55, 25))).toBeCloseTo(3.738161, 6);
    // The pack prints 2.762483; 20,000 mid-point steps a ramp and Simpson's rule both give 2.762478 to 2.762480.
    expect(ageHours(course, arrheniusCurve(55, 25), 10)).toBeCloseTo(2.762478, 6);
    expect(ageHours(course, arrheniusCurve(55, 25), 10)).toBeCloseTo(2.762483, 4);
  });

  it('log G, a gap of four hours: 3.160134 h at the floor, 3.853418 h on the line, 5.308030 h at the ceiling', () => {
    const log: [number, number][] = [
      [0, 22],
      [15, 22],
      [30, 22],
      [45, 21.5],
      [60, 21],
      [300, 17],
      [315, 16.8],
      [330, 16.5],
      [345, 16.5],
      [360, 16],
    ];
    const course = courseOfLog(log, { ...steadyShop(20), floorC: 15, ceilingC: 25 });
    const curve = oneCurve(arrheniusCurve(55, 25), NEVER_STOPS);
    const [low, central, high] = (['slow', 'central', 'fast'] as const).map((lane) =>
      new CureIndex(course, lane, curve).ageBetween(course.startAt, course.endAt),
    );
    // The pack's totals have the trapezoid rule between readings, up to 1e-4 h more than straight lines.
    expect(low).toBeCloseTo(3.160134, 3);
    expect(central).toBeCloseTo(1.30803 + 2.545388, 3);
    expect(high).toBeCloseTo(5.30803, 3);
    expect(course.gaps).toEqual([
      {
        startAt: course.startAt + 3_600_000,
        endAt: course.startAt + 18_000_000,
        kind: 'bridge',
      },
    ]);
    const range = courseOfLog(log, { ...steadyShop(20), floorC: 17, ceilingC: 21 });
    const ends = (['slow', 'fast'] as const).map((lane) =>
      new CureIndex(range, lane, curve).ageBetween(range.startAt, range.endAt),
    );
    expect(ends[0]).toBeCloseTo(3.477673, 3);
    expect(ends[1]).toBeCloseTo(4.26625, 3);
  });
});
