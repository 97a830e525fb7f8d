import { describe, expect, test } from 'vitest';
import { censoredRegression } from '@/lib/statistics/censored-regression';
import { comparisonPower, mixesNeeded } from '@/lib/statistics/depth-power';
import { futureMixLevels } from '@/lib/statistics/future-mix-levels';
import { futureMixLine, mixLineAt, mixLineBand, mixLineLeverage } from '@/lib/statistics/future-mix-line';
import { futureScatter, interpolatedFactor, leverageFactor, mixRatio } from '@/lib/statistics/interpolated-factor';
import { kaplanMeier } from '@/lib/statistics/kaplan-meier';
import { lineFit, lineToleranceLimit } from '@/lib/statistics/line-fit';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';

const CERTAINTY = { content: 0.95, confidence: 0.75 };
const X = [0.25, 0.5, 0.75].map(Math.log);
const LOADS = [
  [62, 121, 181],
  [58, 130, 189],
  [47, 104, 151],
];
const readings = LOADS.flatMap((row, mix) =>
  row.map((load, i) => ({ x: X[i] ?? 0, level: i, y: Math.log(load), mix, isLowerBound: false })),
);

function line(rows: readonly (typeof readings)[number][]) {
  const fit = futureMixLine(rows);
  if (!fit.ok) throw new Error(fit.code);
  return fit;
}

function lower(rows: readonly (typeof readings)[number][], x: number, confidence = 0.75): number {
  const fit = line(rows);
  const factor = interpolatedFactor(fit.scatter, mixLineLeverage(fit, x), { content: 0.95, confidence });
  return mixLineAt(fit, x) - factor * futureScatter(fit.scatter);
}

describe('the interpolated factor', () => {
  const scatter = { mixes: 3, perMix: 5, freedom: 13, mixMean: 1, errorMean: 1 };

  test('runs from every reading counting to only the mixes counting', () => {
    const alike = leverageFactor(0.1, 13, CERTAINTY);
    const apart = toleranceFactor(3, 0.95, 0.75);
    expect(interpolatedFactor(scatter, 0.1, CERTAINTY)).toBeCloseTo(alike, 12);
    expect(interpolatedFactor({ ...scatter, mixMean: 0.2 }, 0.1, CERTAINTY)).toBeCloseTo(alike, 12);
    expect(interpolatedFactor({ ...scatter, mixMean: 1e9 }, 0.1, CERTAINTY)).toBeCloseTo(apart, 6);
    let before = alike;
    for (const mixMean of [2, 5, 20, 100]) {
      const factor = interpolatedFactor({ ...scatter, mixMean }, 0.1, CERTAINTY);
      expect(factor).toBeGreaterThan(before);
      expect(factor).toBeLessThan(apart);
      before = factor;
    }
  });

  test('no scatter within mixes, or none at all, is no division by zero', () => {
    expect(mixRatio({ ...scatter, errorMean: 0 })).toBe(1e12);
    expect(mixRatio({ ...scatter, errorMean: 0, mixMean: 0 })).toBe(1);
    expect(mixRatio({ ...scatter, errorMean: null })).toBeNull();
    expect(futureScatter({ ...scatter, errorMean: null, mixMean: 4 })).toBe(2);
  });
});

describe('a line for a future mix', () => {
  test('loads in another unit only move it, the order of rows does nothing, more confidence lowers it', () => {
    const [x = 0] = X;
    const inNewton = readings.map((row) => ({ ...row, y: row.y + Math.log(4.4482216152605) }));
    expect(lower(inNewton, x) - lower(readings, x)).toBeCloseTo(Math.log(4.4482216152605), 10);
    expect(
      lower(
        [...readings].reverse().map((row) => ({ ...row, mix: 2 - row.mix })),
        x,
      ),
    ).toBeCloseTo(lower(readings, x), 10);
    expect(lower(readings, x, 0.9)).toBeLessThan(lower(readings, x, 0.75));
  });

  test('mixes of a single pull each are independent readings: the exact factor of a line', () => {
    const own = readings.map((row, mix) => ({ ...row, mix }));
    const plain = lineFit(
      own.map(({ x }) => x),
      own.map(({ y }) => y),
    );
    if (plain === null) throw new Error('no line');
    for (const x of X) expect(lower(own, x)).toBeCloseTo(lineToleranceLimit(plain, x) ?? 0, 10);
  });

  test('mixes that are shifted leave the line alone but widen what is said of the next mix', () => {
    const shifted = readings.map((row) => ({ ...row, y: row.y + (row.mix - 1) * 0.4 }));
    const [a, b] = [line(readings), line(shifted)];
    expect(b.slope).toBeCloseTo(a.slope, 12);
    expect(b.scatter.errorMean).toBeCloseTo(a.scatter.errorMean ?? 0, 12);
    expect(mixLineBand(b, X[1] ?? 0)).toBeGreaterThan(mixLineBand(a, X[1] ?? 0) ?? 0);
  });

  test('refuses one depth, too few readings, and depths that change only from mix to mix', () => {
    expect(futureMixLine(readings.filter(({ level }) => level === 0))).toEqual({ ok: false, code: 'one-level' });
    expect(futureMixLine(readings.slice(0, 2))).toEqual({ ok: false, code: 'too-few-readings' });
    const nested = [
      ...readings.filter(({ mix, level }) => mix === level),
      ...readings.filter(({ mix, level }) => mix === level),
    ];
    expect(futureMixLine(nested)).toEqual({ ok: false, code: 'not-determined' });
    expect(() => futureMixLine(readings.map((row) => ({ ...row, mix: row.mix + 1 })))).toThrow(RangeError);
  });

  test('bounds only in one mix are refused, some in each are not', () => {
    const allOfOne = readings.map((row) => ({ ...row, isLowerBound: row.mix === 0 }));
    expect(futureMixLine(allOfOne)).toEqual({ ok: false, code: 'not-determined' });
    expect(futureMixLine(readings.map((row) => ({ ...row, isLowerBound: row.level === 2 && row.mix > 0 }))).ok).toBe(
      true,
    );
  });
});

describe('levels for a future mix', () => {
  test('bounds: which factor is eliminated does not matter', () => {
    const wide = LOADS.flatMap((row, mix) =>
      [...row, 200, 210].map((load, level) => ({
        level,
        mix,
        y: Math.log(load * (1 + 0.03 * ((mix * level) % 3))),
        isLowerBound: level === 4 && mix === 1,
      })),
    );
    const turned = wide.map(({ level, mix, ...rest }) => ({ level: mix, mix: level, ...rest }));
    const [a, b] = [futureMixLevels(wide), futureMixLevels(turned)];
    if (!a.ok || !b.ok) throw new Error('refused');
    expect(a.scatter.errorMean).toBeCloseTo(b.scatter.errorMean ?? 0, 9);
    b.mixEffects.forEach((effect, level) => {
      const mean = a.means.reduce((sum, value) => sum + value, 0) / a.means.length;
      expect((a.means[level] ?? 0) - mean).toBeCloseTo(effect, 6);
    });
  });

  test('refusals', () => {
    expect(futureMixLevels([])).toEqual({ ok: false, code: 'no-readings' });
    expect(futureMixLevels(readings.slice(0, 3))).toEqual({ ok: false, code: 'too-few-readings' });
    const apart = readings.filter(({ mix, level }) => mix < 2 === level < 2);
    expect(futureMixLevels([...apart, ...apart])).toEqual({ ok: false, code: 'not-connected' });
    expect(futureMixLevels(readings.map((row) => ({ ...row, isLowerBound: row.level === 1 })))).toEqual({
      ok: false,
      code: 'not-determined',
    });
  });
});

test('a likelihood without scatter or without enough exact readings is refused', () => {
  const row = (y: number, isLowerBound = false) => ({ y, isLowerBound, group: 0, covariates: [] });
  expect(censoredRegression([row(1), row(1), row(2, true)], 'weibull')).toEqual({ ok: false, code: 'no-scatter' });
  expect(censoredRegression([row(1), row(2, true)], 'lognormal')).toEqual({ ok: false, code: 'not-determined' });
  expect(() => censoredRegression([row(Number.NaN)], 'lognormal')).toThrow(RangeError);
  // A bound far below says nothing and moves nothing.
  const [with_, without] = [
    censoredRegression([row(1), row(2), row(3), row(-50, true)], 'lognormal'),
    censoredRegression([row(1), row(2), row(3)], 'lognormal'),
  ];
  expect(with_.ok && without.ok && Math.abs((with_.groups[0] ?? 0) - (without.groups[0] ?? 0))).toBeLessThan(1e-9);
});

test('survival without bounds ends at nothing, without a standard error there', () => {
  expect(kaplanMeier([1, 2, 2, 4].map((load) => ({ load, isLowerBound: false })))).toMatchObject([
    { load: 1, share: 0.75 },
    { load: 2, share: 0.25 },
    { load: 4, share: 0, standardError: null },
  ]);
});

test('power grows with mixes, and needing none is refused', () => {
  const comparison = { ratio: 1.2, variation: 0.2, levels: 5 };
  expect(comparisonPower(comparison, 4)).toBeGreaterThan(comparisonPower(comparison, 3));
  expect(mixesNeeded({ ...comparison, ratio: 1.001 }, 0.8)).toBeNull();
  expect(() => comparisonPower({ ...comparison, ratio: 1 }, 3)).toThrow(RangeError);
  expect(() => comparisonPower(comparison, 1)).toThrow(RangeError);
  expect(comparisonPower({ ratio: 1e6, variation: 0.001, levels: 5 }, 3)).toBe(1);
});
