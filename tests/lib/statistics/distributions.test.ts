import { describe, expect, test } from 'vitest';
import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { censoredLognormalFit } from '@/lib/statistics/censored-lognormal';
import { complementaryError } from '@/lib/statistics/error-function';
import { incompleteBeta } from '@/lib/statistics/incomplete-beta';
import { integral } from '@/lib/statistics/integral';
import { logGamma } from '@/lib/statistics/log-gamma';
import { characteristicLoad, lognormalSample, predictedLowLoad } from '@/lib/statistics/lognormal-sample';
import { noncentralTProbability } from '@/lib/statistics/noncentral-t';
import {
  logNormalUpperTail,
  normalDensity,
  normalHazard,
  normalProbability,
  normalQuantile,
} from '@/lib/statistics/normal-distribution';
import { studentProbability, studentQuantile } from '@/lib/statistics/student-t';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';

/** Largest relative difference over pairs of computed and expected values. */
function worst(pairs: readonly (readonly [number, number])[]): number {
  return Math.max(...pairs.map(([got, want]) => Math.abs(got - want) / Math.abs(want)));
}

describe('against 30-digit arithmetic (mpmath)', () => {
  test('complementary error function', () => {
    const pairs = [
      [complementaryError(-3), 1.9999779095030015],
      [complementaryError(-0.3), 1.3286267594591274],
      [complementaryError(0.2), 0.7772974107895215],
      [complementaryError(0.47), 0.5062549491139179],
      [complementaryError(1.3), 0.06599205505934755],
      [complementaryError(3.9), 3.4792248597231765e-8],
      [complementaryError(4.1), 6.700027654084918e-9],
      [complementaryError(9), 4.13703174651381e-37],
      [complementaryError(20), 5.395865611607901e-176],
    ] as const;
    expect(worst(pairs)).toBeLessThan(1e-14);
  });

  test('normal probability, tail, hazard and quantile', () => {
    const pairs = [
      [normalProbability(-30), 4.906713927148187e-198],
      [normalProbability(-8), 6.220960574271784e-16],
      [normalProbability(-2.5), 0.006209665325776135],
      [normalProbability(0.3), 0.6179114221889527],
      [normalProbability(4), 0.9999683287581669],
      [logNormalUpperTail(-5), -2.866516129637636e-7],
      [logNormalUpperTail(0), -Math.LN2],
      [logNormalUpperTail(0.9), -1.6924928065613383],
      [logNormalUpperTail(1.1), -1.997558846986297],
      [logNormalUpperTail(6), -20.736768949974707],
      [logNormalUpperTail(200), -20006.21728089819],
      [normalHazard(-5), 1.4867199409049056e-6],
      [normalHazard(1.5), 1.9386771666225433],
      [normalHazard(60), 60.016657420241124],
      [normalQuantile(1e-12), -7.034483825301132],
      [normalQuantile(1e-6), -4.753424308822899],
      [normalQuantile(0.05), -1.6448536269514726],
      [normalQuantile(0.3), -0.5244005127080408],
      [normalQuantile(0.999), 3.090232306167813],
      [normalDensity(1), 0.24197072451914337],
    ] as const;
    expect(worst(pairs)).toBeLessThan(1e-12);
    expect(normalQuantile(0.5)).toBe(0);
  });

  test('gamma and incomplete beta functions', () => {
    const pairs = [
      [logGamma(0.1), 2.252712651734206],
      [logGamma(0.5), 0.5723649429247001],
      [logGamma(10.3), 13.482036786138359],
      [logGamma(150), 600.0094705553274],
      [logGamma(5000), 37582.62631568535],
      [incompleteBeta(0.1, 0.5, 0.5), 0.20483276469913347],
      [incompleteBeta(0.5, 3, 2.5), 0.40890292510187043],
      [incompleteBeta(0.9, 10, 0.5), 0.15164090963470997],
      [incompleteBeta(0.45, 400, 500), 0.6321423803003792],
    ] as const;
    expect(worst(pairs)).toBeLessThan(2e-13);
  });

  test('Student and noncentral t', () => {
    const pairs = [
      [studentProbability(-2, 1), 0.14758361765043326],
      [studentProbability(-3.7, 17), 0.000888916866244446],
      [studentProbability(-1.645, 500), 0.050299149008345916],
      [studentQuantile(0.05, 1), -6.313751514675044],
      [studentQuantile(0.05, 7), -1.8945786050900066],
      [studentQuantile(0.95, 1000), 1.6463788172854643],
      [studentQuantile(0.001, 30), -3.385184866829305],
      [noncentralTProbability(2, 2, 1.5), 0.5660595455586215],
      [noncentralTProbability(5.4, 2, 2.849), 0.7455445692926834],
      [noncentralTProbability(30, 1, 2.3), 0.9388252046204771],
      [noncentralTProbability(-1, 5, 1), 0.030807353260750216],
      [noncentralTProbability(9, 49, 11.6), 0.025846051584959978],
      [noncentralTProbability(0, 3, 1), 0.15865525393145705],
    ] as const;
    expect(worst(pairs)).toBeLessThan(5e-12);
  });
});

// k(n; 0.95, confidence), mpmath with 30 digits, agreeing with scipy and R.
test.each([
  [2, 0.75, 5.1215097783],
  [3, 0.75, 3.151842138185],
  [5, 0.75, 2.463383243175],
  [10, 0.75, 2.103667548937],
  [50, 0.75, 1.810875438977],
])('tolerance factor of %i readings at confidence %f', (n, confidence, expected) => {
  expect(Math.abs(toleranceFactor(n, 0.95, confidence) / expected - 1)).toBeLessThan(1e-9);
});

test('a sample has a geometric mean, a characteristic value and a prediction limit', () => {
  const loads = [112, 128, 121, 99, 135];
  const { logMean, logSd } = lognormalSample(loads);
  expect(Math.exp(logMean)).toBeCloseTo(118.31, 2);
  expect(logSd).toBeCloseTo(0.121319, 6);
  expect(characteristicLoad(loads)).toBeCloseTo(87.75, 2);
  // The prediction factor of unknown scatter at n = 5 is 2.3353.
  expect(predictedLowLoad(loads)).toBeCloseTo(118.31 * Math.exp(-2.3353 * 0.121319), 2);
});

test('equal readings still get the least scatter, one reading shows none', () => {
  expect(characteristicLoad([100, 101, 102])).toBeCloseTo(86.2712, 3);
  expect(lognormalSample([100])).toEqual({ n: 1, logMean: Math.log(100), logSd: null });
});

describe('censored fit', () => {
  test('NIST e-Handbook 8.4.1.3: ten failures, ten still running at 500 hours', () => {
    const failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    const fit = censoredLognormalFit([
      ...failures.map((hours) => ({ y: Math.log(hours), isLowerBound: false })),
      ...failures.map(() => ({ y: Math.log(500), isLowerBound: true })),
    ]);
    if (!fit.ok) throw new Error(fit.code);
    expect(fit.logMean).toBeCloseTo(6.22601506856, 8);
    expect(fit.logSd).toBeCloseTo(0.90891403943, 8);
    const jacobian = failures.reduce((sum, hours) => sum + Math.log(hours), 0);
    expect(fit.logLikelihood - jacobian).toBeCloseTo(-75.196270778884, 8);
  });

  test('without lower bounds it is the mean and the scatter with divisor n', () => {
    const fit = censoredLognormalFit([1, 2, 4].map((y) => ({ y, isLowerBound: false })));
    expect(fit).toMatchObject({ ok: true });
    if (fit.ok) expect(fit.logMean).toBeCloseTo(7 / 3, 10);
    if (fit.ok) expect(fit.logSd).toBeCloseTo(Math.sqrt(14 / 9), 10);
  });

  test('refuses what it cannot know', () => {
    expect(censoredLognormalFit([])).toEqual({ ok: false, code: 'too-few-exact' });
    expect(
      censoredLognormalFit([
        { y: 1, isLowerBound: false },
        { y: 2, isLowerBound: true },
      ]),
    ).toEqual({ ok: false, code: 'too-few-exact' });
    expect(censoredLognormalFit([1, 1, 1].map((y) => ({ y, isLowerBound: false })))).toEqual({
      ok: false,
      code: 'no-scatter',
    });
  });
});

describe('root finding', () => {
  test('finds roots inside and at the ends of the bracket', () => {
    expect(bracketedRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(bracketedRoot((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 14);
    expect(bracketedRoot((x) => x, 0, 1)).toBe(0);
    expect(bracketedRoot((x) => x ** 9, -1, 1.7)).toBeCloseTo(0, 1);
  });

  test('refuses a bracket without a change of sign, and a function that is not finite', () => {
    expect(() => bracketedRoot((x) => x * x + 1, 0, 4)).toThrow(RangeError);
    expect(() => bracketedRoot((x) => 1 / x, 0, 4)).toThrow(RangeError);
  });
});

describe('integrals', () => {
  test('polynomials up to degree 22 come out exact in one piece', () => {
    for (let degree = 0; degree <= 22; degree++) {
      expect(integral((x) => x ** degree, 0, 1, 1)).toBeCloseTo(1 / (degree + 1), 14);
    }
  });

  test('a peak is found by halving', () => {
    expect(integral((x) => 1 / (1e-6 + x * x), -1, 1, 1e-9)).toBeCloseTo(2000 * Math.atan(1000), 6);
    expect(() => integral((x) => 1 / x, -1, 1, 1e-9)).toThrow(RangeError);
  });
});

test('wrong arguments are refused with the value', () => {
  expect(() => normalQuantile(0)).toThrow('got 0');
  expect(() => studentQuantile(1, 3)).toThrow('got 1');
  expect(() => toleranceFactor(1, 0.95, 0.75)).toThrow('got 1');
  expect(() => lognormalSample([10, 0])).toThrow('got 0');
  expect(() => lognormalSample([])).toThrow(RangeError);
  expect(() => incompleteBeta(1.1, 1, 1)).toThrow(RangeError);
  expect(() => logGamma(0)).toThrow(RangeError);
});
