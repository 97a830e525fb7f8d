import { describe, expect, test } from 'vitest';
import { largestDeviationTail } from '@/lib/statistics/largest-deviation';
import { generalisedEsd, grubbs, grubbsCritical } from '@/lib/statistics/outliers';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { largestResidualCritical } from '@/lib/statistics/studentised-residuals';
import { at, numberAt, referenceData, reportAbsent } from './reference-data';

const critical = referenceData('critical-values.json');
reportAbsent(critical, 'critical-values.json');

/* NIST/SEMATECH e-Handbook 1.3.5.17.1, https://www.itl.nist.gov/div898/handbook/eda/section3/eda35h1.htm: G 2.4687, 2.032. */
test('Grubbs, the handbook example of eight mass readings', () => {
  const result = grubbs([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], 0.05, 'high');
  if (!result.ok) throw new Error(result.code);
  expect(Number(result.g.toFixed(4))).toBe(2.4688);
  expect(Number(result.critical.toFixed(3))).toBe(2.032);
  expect(result).toMatchObject({ index: 7, isFlagged: true });
});

/* NIST/SEMATECH e-Handbook 1.3.5.17.3 (Rosner 1983), https://www.itl.nist.gov/div898/handbook/eda/section3/eda35h3.htm. */
test('generalised ESD, the handbook example of 54 readings: R and lambda to the printed three decimals, three outliers', () => {
  const readings = [
    -0.25, 0.68, 0.94, 1.15, 1.2, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.7, 1.76,
    1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.1, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.4, 2.47, 2.54,
    2.62, 2.64, 2.9, 2.92, 2.92, 2.93, 3.21, 3.26, 3.3, 3.59, 3.68, 4.3, 4.64, 5.34, 5.42, 6.01,
  ];
  const { steps, count } = generalisedEsd(readings, 10);
  expect(steps.map(({ r }) => Number(r.toFixed(3)))).toEqual([
    3.119, 2.943, 3.179, 2.81, 2.816, 2.848, 2.279, 2.31, 2.102, 2.067,
  ]);
  expect(steps.map((step) => Number(step.critical.toFixed(3)))).toEqual([
    3.159, 3.151, 3.144, 3.136, 3.128, 3.12, 3.112, 3.103, 3.094, 3.085,
  ]);
  // A routine that stops at the first step that falls short finds none.
  expect(count).toBe(3);
});

describe.runIf(critical !== null)('critical values', () => {
  test('Grubbs, one- and two-sided, n = 3 to 50, to five decimals', () => {
    for (const [side, key] of [
      ['high', 'one_sided'],
      ['either', 'two_sided'],
    ] as const) {
      for (let n = 3; n <= 50; n++) {
        for (const alpha of [0.1, 0.05, 0.025, 0.01]) {
          const want = numberAt(critical, 'grubbs', key, n, alpha);
          expect(Math.abs(grubbsCritical(n, alpha, side) - want)).toBeLessThan(6e-6);
        }
      }
    }
  });

  test('largest externally studentised residual: Bonferroni is within a hundredth of the simulated points', () => {
    for (const [key, row] of Object.entries(Object(at(critical, 'rcbdMaxResidual')))) {
      const [a = 0, b = 0] = key.split('x').map(Number);
      for (const alpha of [0.05, 0.01]) {
        const point = largestResidualCritical(a * b, (a - 1) * (b - 1), alpha) ?? 0;
        expect(Math.abs(point - numberAt(row, 'bonferroni_t', String(alpha)))).toBeLessThan(6e-4);
        expect(Math.abs(point / numberAt(row, 'extStudentised_MC', String(alpha)) - 1)).toBeLessThan(0.01);
      }
    }
  });
});

/* 5 x 3 to 5 x 6 tables, simulated with a million tables each by the reference: crit to about 0.003. */
test.each([
  [3, 8, 2.853, 3.975],
  [4, 12, 2.844, 3.751],
  [5, 16, 2.858, 3.649],
  [6, 20, 2.877, 3.606],
])('the most deviant of %i mixes', (mixes, freedom, fivePercent, onePercent) => {
  expect(Math.abs(largestDeviationTail(fivePercent, mixes, freedom) - 0.05)).toBeLessThan(5e-4);
  expect(Math.abs(largestDeviationTail(onePercent, mixes, freedom) - 0.01)).toBeLessThan(2e-4);
});

test('the chance of the most deviant mix by simulation, seeded', () => {
  const random = seededRandom(5);
  const normal = () => Math.sqrt(-2 * Math.log(random() + 1e-12)) * Math.cos(2 * Math.PI * random());
  for (const [mixes, freedom, t] of [
    [3, 4, 2.5],
    [5, 8, 2],
    [8, 14, 2.6],
  ] as const) {
    const tables = process.env.SOAK === '1' ? 200_000 : 20_000;
    let beyond = 0;
    for (let i = 0; i < tables; i++) {
      const z = Array.from({ length: mixes }, normal);
      const mean = z.reduce((sum, value) => sum + value, 0) / mixes;
      const squares = Array.from({ length: freedom }, normal).reduce((sum, value) => sum + value * value, 0);
      const scale = Math.sqrt((squares / freedom) * (1 - 1 / mixes));
      if (Math.max(...z.map((value) => Math.abs(value - mean))) > t * scale) beyond += 1;
    }
    const exact = largestDeviationTail(t, mixes, freedom);
    const error = 4 * Math.sqrt((exact * (1 - exact)) / tables);
    console.log(`most deviant of ${mixes}: ${exact.toFixed(4)}, simulated ${(beyond / tables).toFixed(4)}`);
    expect(Math.abs(beyond / tables - exact)).toBeLessThan(error);
  }
});

test('largest studentised residual of a 5 x 3 table: 4.355 (simulated 4.358) and 5.795 at 1 % (5.812)', () => {
  expect(largestResidualCritical(15, 8)).toBeCloseTo(4.355, 3);
  expect(largestResidualCritical(15, 8, 0.01)).toBeCloseTo(5.795, 3);
});
