import { describe, expect, test } from 'vitest';
import { characteristicLoad, predictedLowLoad } from '@/lib/statistics/lognormal-sample';
import { normalQuantile } from '@/lib/statistics/normal-distribution';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';
import { demand } from '@/lib/strength/demand';
import { reliability } from '@/lib/strength/factor-of-safety';
import { LINE_CLASSES, lineClassN, usualDragShare } from '@/lib/strength/fishing-line';
import { kappaPosterior } from '@/lib/strength/kappa-posterior';
import { poundsForce } from '@/lib/units/force-and-length';
import { checkAll } from './strength-check';

const lbf = (loadN: number) => loadN / poundsForce(1);

// Published table of international line classes: kg, nominal pounds, test pounds; seen.
describe('line classes', () => {
  const table = [
    [1, 2, 2.2],
    [2, 4, 4.41],
    [3, 6, 6.61],
    [4, 8, 8.82],
    [6, 12, 13.23],
    [8, 16, 17.64],
    [10, 20, 22.05],
    [15, 30, 33.07],
    [24, 50, 52.91],
    [37, 80, 81.57],
    [60, 130, 132.28],
  ] as const;
  checkAll(
    table.map(([kg, , test]) => ({
      status: 'seen',
      what: `${kg} kg in pounds`,
      got: lbf(lineClassN(kg)),
      want: test,
      within: 0.0051,
    })),
  );
  test('labels', () => {
    expect(LINE_CLASSES.map(({ classKg, labelLb }) => [classKg, labelLb])).toEqual(
      table.map(([kg, label]) => [kg, label]),
    );
  });
});

// An angler's article gives drag for mono by label; seen.
describe('drag with mono', () => {
  const drag = (label: number) => usualDragShare('mono', poundsForce(label));
  checkAll([
    { status: 'seen', what: '20 lb', got: drag(20), want: 0.2, within: 0 },
    { status: 'seen', what: '30 lb', got: drag(30), want: 0.25, within: 0 },
    { status: 'seen', what: '50 lb', got: drag(50), want: 0.25, within: 0 },
    { status: 'seen', what: '80 lb', got: drag(80), want: 0.3, within: 0 },
    { status: 'seen', what: '130 lb', got: drag(130), want: 0.3, within: 0 },
    { status: 'seen', what: 'others, at the strike', got: usualDragShare('braid', 100), want: 1 / 3, within: 1e-12 },
  ]);
});

describe('demand', () => {
  const line = { labelN: poundsForce(20), type: 'mono', knotShare: null, dragShare: null } as const;
  test('a snag governs over the fight unless the fish is heavy', () => {
    const without = demand(line, null);
    expect(without.governing.name).toBe('snag');
    expect(lbf(without.governing.loadN)).toBeCloseTo(1.25 * 20 * 0.95, 9);
    expect(lbf(without.fightN)).toBeCloseTo(0.2 * 20 * 1.5, 9);
    const heavy = demand(line, 6000);
    expect(heavy.governing.name).toBe('lift');
    expect(heavy.governing.loadN).toBeCloseTo(2 * 6 * 9.80665, 9);
  });
  test('refuses what is no line and no share', () => {
    expect(() => demand({ ...line, labelN: 0 }, null)).toThrow(RangeError);
    expect(() => demand({ ...line, knotShare: 1.2 }, null)).toThrow(RangeError);
    expect(() => demand(line, -1)).toThrow(RangeError);
  });
});

// One-sided tolerance factors, 5 % at 75 % confidence: EN 14358:2016 Table 1 as a public program transcribes it, seen;
// ASTM D2915 from memory.
describe('characteristic values', () => {
  const en14358 = [
    [3, 3.15],
    [5, 2.46],
    [10, 2.1],
    [15, 1.99],
    [20, 1.93],
    [30, 1.87],
    [50, 1.81],
    [100, 1.76],
  ] as const;
  checkAll(
    en14358.map(([n, k]) => ({
      status: 'seen',
      what: `EN 14358 k for n ${n}`,
      got: toleranceFactor(n, 0.95, 0.75),
      want: k,
      within: 0.0051,
    })),
  );
  const loads = [112, 128, 121, 99, 135];
  const at95 = [
    [3, 7.656],
    [5, 4.203],
    [10, 2.911],
    [20, 2.396],
    [30, 2.22],
  ] as const;
  checkAll([
    ...at95.map(([n, k]) => ({
      status: 'derived' as const,
      what: `k at 95 % confidence, n ${n}`,
      got: toleranceFactor(n, 0.95, 0.95),
      want: k,
      within: 0.00051,
    })),
    {
      status: 'derived',
      what: 'five pulls, characteristic, lbf',
      got: characteristicLoad(loads),
      want: 87.75,
      within: 0.005,
    },
    {
      status: 'from memory',
      what: 'five pulls, EN 1990 Annex D, lbf',
      got: predictedLowLoad(loads),
      want: 89.12,
      within: 0.005,
    },
    { status: 'from memory', what: 'z of the twentieth', got: -normalQuantile(0.05), want: 1.645, within: 0.0005 },
  ]);
});

describe('belief and reliability', () => {
  const posterior = kappaPosterior(
    { mean: Math.log(1.35), sd: 0.25, jointSd: 0.18 },
    [1.3, 1.45, 1.36].map((kappa) => ({ logKappa: Math.log(kappa), isLowerBound: false })),
  );
  const a = reliability({ mean: 117, cov: 0.2 }, { mean: 30, cov: 0.25 });
  const b = reliability({ mean: 117, cov: 0.2 }, { mean: 65, cov: 0.1 });
  checkAll([
    { status: 'derived', what: 'posterior median', got: Math.exp(posterior.mean), want: 1.3659, within: 0.00005 },
    { status: 'derived', what: 'posterior scatter', got: posterior.sd, want: 0.096, within: 0.00005 },
    {
      status: 'derived',
      what: 'next joint, lower twentieth',
      got: Math.exp(posterior.predictiveQuantile(0.05)),
      want: 0.9765,
      within: 0.00005,
    },
    { status: 'derived', what: 'reliability index 117 over 30', got: a.index, want: 4.341, within: 0.0005 },
    {
      status: 'derived',
      what: 'its chance of failure, millionths',
      got: a.failureShare * 1e6,
      want: 7.1,
      within: 0.05,
    },
    { status: 'derived', what: 'reliability index 117 over 65', got: b.index, want: 2.585, within: 0.0005 },
    {
      status: 'derived',
      what: 'its chance of failure, thousandths',
      got: b.failureShare * 1e3,
      want: 4.9,
      within: 0.05,
    },
  ]);
});
