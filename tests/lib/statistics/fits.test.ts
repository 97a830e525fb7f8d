import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isotonicRegression } from '@/lib/statistics/isotonic-regression';
import { leastSquares, leverage } from '@/lib/statistics/least-squares';
import { lineBands, lineFit, lineToleranceLimit, lowOneMore } from '@/lib/statistics/line-fit';
import { lowerPercentile } from '@/lib/statistics/lower-percentile';
import { nonlinearLeastSquares } from '@/lib/statistics/nonlinear-least-squares';
import { generalisedEsd, grubbs } from '@/lib/statistics/outliers';
import { saturatingAt, saturatingCurve } from '@/lib/statistics/saturating-curve';
import { summary } from '@/lib/statistics/summary';

describe('summaries', () => {
  test('none, one, and equal readings', () => {
    expect(summary([])).toBeNull();
    expect(summary([7])).toEqual({ n: 1, mean: 7, sd: null, least: 7, greatest: 7 });
    expect(summary([4, 4, 4])?.sd).toBe(0);
    expect(summary([1e308, 1e308])?.mean).toBe(1e308);
    expect(() => summary([1, Number.NaN])).toThrow(RangeError);
  });

  test('a lower percentile is refused for one reading and for a load of zero', () => {
    expect(lowerPercentile([5])).toEqual({ ok: false, code: 'too-few' });
    expect(lowerPercentile([5, 0])).toEqual({ ok: false, code: 'not-positive' });
    expect(lowerPercentile([5, 5, 5])).toMatchObject({ ok: true, isFloored: true, scatter: 0.05 });
  });
});

describe('least squares', () => {
  test('weights count a reading as often as they say', () => {
    const weighted = leastSquares(
      [
        [1, 1, 1],
        [1, 2, 4],
      ],
      [1, 3, 4],
      [1, 2, 3],
    );
    const repeated = leastSquares(
      [
        [1, 1, 1, 1, 1, 1],
        [1, 2, 2, 4, 4, 4],
      ],
      [1, 3, 3, 4, 4, 4],
    );
    if (!weighted.ok || !repeated.ok) throw new Error('no fit');
    weighted.coefficients.forEach((value, i) => {
      expect(value).toBeCloseTo(repeated.coefficients[i] ?? 0, 13);
    });
    expect(weighted.rss).toBeCloseTo(repeated.rss, 13);
    expect(leverage(weighted, [1, 2])).toBeCloseTo(leverage(repeated, [1, 2]), 13);
  });

  test('dependent columns, too few rows and bad values', () => {
    expect(
      leastSquares(
        [
          [1, 2, 3],
          [2, 4, 6],
        ],
        [1, 2, 4],
      ),
    ).toEqual({ ok: false, code: 'dependent-columns' });
    expect(leastSquares([[0, 0, 0]], [1, 2, 4])).toEqual({ ok: false, code: 'dependent-columns' });
    expect(leastSquares([[1], [2]], [1])).toEqual({ ok: false, code: 'too-few-rows' });
    expect(() => leastSquares([[1, Number.NaN]], [1, 2])).toThrow(RangeError);
    expect(() => leastSquares([[1, 2]], [1])).toThrow(RangeError);
  });
});

describe('a line', () => {
  test('needs two different x; two points leave no scatter', () => {
    expect(lineFit([3, 3, 3], [1, 2, 3])).toBeNull();
    expect(lineFit([3], [1])).toBeNull();
    const two = lineFit([1, 2], [1, 3]);
    expect(two).toMatchObject({ slope: 2, intercept: -1, freedom: 0, scatter: null });
    if (two === null) return;
    expect(lineBands(two, 1)).toBeNull();
    expect(lowOneMore(two, 1)).toBeNull();
    expect(lineToleranceLimit(two, 1)).toBeNull();
  });

  test('bands: the mean is narrower than the whole line, which is narrower than one more reading near the middle', () => {
    const line = lineFit([1, 2, 3, 4, 5, 6], [1.1, 1.9, 3.2, 3.9, 5.1, 5.8]);
    if (line === null) throw new Error('no line');
    const bands = lineBands(line, 3.5);
    expect(bands?.mean).toBeLessThan(bands?.wholeLine ?? 0);
    expect(bands?.wholeLine).toBeLessThan(bands?.oneMore ?? 0);
    expect(lineBands(line, 9)?.mean).toBeGreaterThan(lineBands(line, 3.5)?.mean ?? 0);
  });
});

test('isotonic regression never falls, keeps the weighted mean, and leaves its own result alone', () => {
  const points = fc.array(fc.record({ y: fc.integer({ min: -50, max: 50 }), w: fc.integer({ min: 1, max: 9 }) }), {
    minLength: 1,
  });
  fc.assert(
    fc.property(points, (rows) => {
      const [y, w] = [rows.map((row) => row.y), rows.map((row) => row.w)];
      const rising = isotonicRegression(y, w);
      rising.forEach((value, i) => {
        if (i > 0) expect(value).toBeGreaterThanOrEqual((rising[i - 1] ?? 0) - 1e-9);
      });
      const total = (values: readonly number[]) => values.reduce((sum, value, i) => sum + value * (w[i] ?? 0), 0);
      expect(total(rising)).toBeCloseTo(total(y), 6);
      isotonicRegression(rising, w).forEach((value, i) => {
        expect(value).toBeCloseTo(rising[i] ?? 0, 9);
      });
    }),
  );
  expect(() => isotonicRegression([1, 2], [1, 0])).toThrow(RangeError);
});

describe('saturating curves', () => {
  const x = [5, 10, 15, 20, 30];

  test.each(['tanh', 'exponential'] as const)('an exact %s curve is found again, on both scales', (form) => {
    const y = x.map((value) => saturatingAt(form, 800, 0.06, value));
    for (const scale of ['log', 'plain'] as const) {
      const curve = saturatingCurve({ x, y, form, scale });
      if (!curve.ok) throw new Error(curve.code);
      expect(curve.height).toBeCloseTo(800, 4);
      expect(curve.rate).toBeCloseTo(0.06, 8);
    }
  });

  test('weights pull the curve', () => {
    const y = [100, 180, 260, 300, 330];
    const plain = saturatingCurve({ x, y, form: 'tanh', scale: 'plain' });
    const heavy = saturatingCurve({ x, y, form: 'tanh', scale: 'plain', weights: [1, 1, 1, 1, 1000] });
    if (!plain.ok || !heavy.ok) throw new Error('no curve');
    const off = (curve: typeof plain) => Math.abs(saturatingAt('tanh', curve.height, curve.rate, 30) - 330);
    expect(off(heavy)).toBeLessThan(off(plain));
  });

  test('what does not bend, does not rise, or has two depths', () => {
    const curve = (xs: readonly number[], y: readonly number[]) =>
      saturatingCurve({ x: xs, y, form: 'tanh', scale: 'log' });
    expect(
      curve(
        x,
        x.map((value) => 12 * value),
      ),
    ).toEqual({ ok: false, code: 'no-bend' });
    expect(
      curve(
        x,
        x.map(() => 100),
      ),
    ).toEqual({ ok: false, code: 'no-rise' });
    expect(
      curve(
        x,
        x.map((value) => 1000 / value),
      ),
    ).toEqual({ ok: false, code: 'no-rise' });
    expect(curve([5, 5, 10], [1, 2, 3])).toEqual({ ok: false, code: 'too-few-levels' });
    expect(() => curve([5, 10, 15], [1, 0, 3])).toThrow(RangeError);
  });
});

test('a nonlinear fit that cannot settle says so', () => {
  const model = ([a = 0]: readonly number[]) => ({ residuals: [Math.exp(-a)], slopes: [[Math.exp(-a)]] });
  expect(nonlinearLeastSquares(model, [0, 0])).toEqual({ ok: false, code: 'too-few-rows' });
  const running = ([a = 0, b = 0]: readonly number[]) => ({
    residuals: [1, 2, 3].map((y) => y - a - b),
    slopes: [
      [1, 1, 1],
      [1, 1, 1],
    ],
  });
  expect(nonlinearLeastSquares(running, [0, 0])).toEqual({ ok: false, code: 'did-not-converge' });
  expect(() => nonlinearLeastSquares(() => ({ residuals: [Number.NaN], slopes: [[1]] }), [1])).toThrow(RangeError);
});

describe('outliers', () => {
  test('three readings cannot be far out, equal ones have no scatter', () => {
    const g = grubbs([1, 1.0001, 500]);
    expect(g).toMatchObject({ ok: true, isFlagged: true });
    if (g.ok) expect(g.g).toBeLessThanOrEqual(2 / Math.sqrt(3) + 1e-12);
    expect(grubbs([5, 5])).toEqual({ ok: false, code: 'too-few' });
    expect(grubbs([5, 5, 5])).toEqual({ ok: false, code: 'no-scatter' });
  });

  test('the side asked for decides', () => {
    const low = grubbs([1, 9, 10, 10.5, 11], 0.05, 'low');
    const high = grubbs([1, 9, 10, 10.5, 11], 0.05, 'high');
    expect(low).toMatchObject({ index: 0, isFlagged: true });
    expect(high).toMatchObject({ index: 4, isFlagged: false });
  });

  test('steps stop where nothing is left to measure by', () => {
    expect(generalisedEsd([1, 1, 1, 9], 10).steps).toHaveLength(1);
    expect(generalisedEsd([1, 2], 3)).toEqual({ steps: [], count: 0 });
  });
});
