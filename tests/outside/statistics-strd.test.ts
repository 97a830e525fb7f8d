import { describe, expect, test } from 'vitest';
import { lackOfFit } from '@/lib/statistics/lack-of-fit';
import { coefficientVariances, leastSquares } from '@/lib/statistics/least-squares';
import { lineFit } from '@/lib/statistics/line-fit';
import { nonlinearLeastSquares } from '@/lib/statistics/nonlinear-least-squares';
import { oneWayAnova } from '@/lib/statistics/one-way-anova';
import { summary } from '@/lib/statistics/summary';
import { at, digits, listAt, numberAt, numbersAt, referenceData, reportAbsent } from './reference-data';
import { strdModel } from './strd-model';

/*
 * NIST/ITL Statistical Reference Datasets, https://www.itl.nist.gov/div898/strd/ (US government work), certified to 15
 * digits (11 for nonlinear sets). Data: reference folder, taken from copies of the .dat files in public repositories.
 *
 * Floors are in significant digits. Lower and average difficulty: 9 and more. Of the higher ones doubles allow fewer,
 * because the data themselves cannot be written as doubles exactly: 1000000.2 is off by 1e-17 of itself, and a standard
 * deviation of 0.1 beside it keeps 8 digits; 1e12 + 0.4 keeps 3.
 */

const univariate = referenceData('strd-univariate.json');
const anova = referenceData('strd-anova.json');
const linear = referenceData('strd-linear.json');
const nonlinear = referenceData('strd-nonlinear.json');
for (const [data, name] of [
  [univariate, 'strd-univariate.json'],
  [anova, 'strd-anova.json'],
  [linear, 'strd-linear.json'],
  [nonlinear, 'strd-nonlinear.json'],
] as const) {
  reportAbsent(data, name);
}

const nameOf = (set: unknown): string => String(at(set, 'name'));
const say = (kind: string, name: string, figures: Readonly<Record<string, number>>) => {
  const text = Object.entries(figures).map(([what, count]) => `${what} ${count.toFixed(1)}`);
  console.log(`StRD ${kind}: ${name}: digits ${text.join(', ')}`);
};

describe.runIf(univariate !== null)('univariate: mean and standard deviation', () => {
  const FLOOR: Readonly<Record<string, number>> = { NumAcc4: 8 };
  test.each(univariate === null ? [] : listAt(univariate, 'datasets').map((set) => [nameOf(set), set] as const))(
    '%s',
    (name, set) => {
      const sample = summary(valuesOf(set));
      const mean = digits(sample?.mean ?? 0, numberAt(set, 'certified', 'mean'));
      const sd = digits(sample?.sd ?? 0, numberAt(set, 'certified', 'sd'));
      say('univariate', name, { mean, sd });
      expect(mean).toBeGreaterThan(14);
      expect(sd).toBeGreaterThan(FLOOR[name] ?? 9);
    },
  );

  test('NumAcc3 (average), by its rule: 1000000.2, then 1000000.1 and 1000000.3 by turns, 1001 values', () => {
    const values = Array.from({ length: 1001 }, (_, i) => (i === 0 ? 1000000.2 : i % 2 === 1 ? 1000000.1 : 1000000.3));
    const sd = digits(summary(values)?.sd ?? 0, 0.1);
    say('univariate', 'NumAcc3', { sd });
    expect(sd).toBeGreaterThan(9);
  });
});

function valuesOf(set: unknown): number[] {
  const data = at(set, 'data');
  if (Array.isArray(data)) return numbersAt(set, 'data');
  const text = at(set, 'digits');
  if (typeof text === 'string') return [...text].map(Number);
  if (Array.isArray(text)) return numbersAt(set, 'digits');
  const first = numberAt(set, 'rule', 'first');
  const turns = numbersAt(set, 'rule', 'thenAlternate');
  return Array.from({ length: numberAt(set, 'rule', 'count') }, (_, i) =>
    i === 0 ? first : (turns[(i - 1) % 2] ?? 0),
  );
}

describe.runIf(anova !== null)('one-way analysis of variance: F', () => {
  const FLOOR: Readonly<Record<string, number>> = { SmLs07: 2.5, SmLs08: 2.5, SmLs09: 2.5 };
  test.each(anova === null ? [] : listAt(anova, 'datasets').map((set) => [nameOf(set), set] as const))(
    '%s',
    (name, set) => {
      const result = oneWayAnova(groupsOf(set));
      const f = digits(result?.test?.f ?? 0, numberAt(set, 'certified', 'F'));
      const between = digits(result?.betweenSquares ?? 0, numberAt(set, 'certified', 'betweenSS'));
      const within = digits(result?.withinSquares ?? 0, numberAt(set, 'certified', 'withinSS'));
      say('anova', name, { F: f, between, within });
      expect(f).toBeGreaterThan(FLOOR[name] ?? 9);
    },
  );
});

function groupsOf(set: unknown): number[][] {
  if (Array.isArray(at(set, 'data'))) return listAt(set, 'data').map((_, i) => numbersAt(set, 'data', i));
  const base = numberAt(set, 'rule', 'base');
  const sizes = numbersAt(set, 'perGroup');
  // Written out by decimal text, as the files have it: 1000000000000.4 is the nearest double to that text.
  const near = (offset: number) =>
    Number((BigInt(Math.round(offset * 10)) + BigInt(base) * 10n).toString().replace(/(\d)$/, '.$1'));
  return numbersAt(set, 'rule', 'centre').map((centre, group) =>
    Array.from({ length: sizes[group] ?? 0 }, (_, i) => {
      return near(i === 0 ? centre : i % 2 === 1 ? centre - 0.1 : centre + 0.1);
    }),
  );
}

describe.runIf(linear !== null)('linear least squares: coefficients, standard errors, residual scatter', () => {
  // Higher difficulty: ill-conditioned powers (Filip, Wampler) keep what their rounding leaves.
  const FLOOR: Readonly<Record<string, readonly [number, number]>> = {
    Filip: [7, 7],
    Wampler4: [7, 9],
    Wampler5: [5, 9],
  };
  test.each(linear === null ? [] : listAt(linear, 'datasets').map((set) => [nameOf(set), set] as const))(
    '%s',
    (name, set) => {
      const y = numbersAt(set, 'y');
      const fit = leastSquares(columnsOf(set), y);
      if (!fit.ok) throw new Error(fit.code);
      const scatter = Math.sqrt(fit.rss / fit.freedom);
      const errors = coefficientVariances(fit).map((variance) => scatter * Math.sqrt(variance));
      const certified = numbersAt(set, 'certified', 'coef');
      const certifiedErrors = numbersAt(set, 'certified', 'coefSd');
      const coefficients = Math.min(...fit.coefficients.map((value, i) => digits(value, certified[i] ?? 0)));
      // Exact polynomials (Wampler1 and 2) have standard errors of 0: there only their size can be judged.
      const standardErrors = Math.min(...errors.map((value, i) => digits(value, certifiedErrors[i] ?? 0)));
      say('linear', name, { coefficients, standardErrors });
      const [least, leastErrors] = FLOOR[name] ?? [9, 9];
      expect(coefficients).toBeGreaterThan(least);
      if (certifiedErrors.every((error) => error > 0)) expect(standardErrors).toBeGreaterThan(leastErrors);
      else expect(scatter).toBeLessThan(1e-7);
      if (name === 'Norris') {
        const line = lineFit(columnsOf(set)[1] ?? [], y);
        expect(digits(line?.slope ?? 0, certified[1] ?? 0)).toBeGreaterThan(12);
        expect(digits(line?.intercept ?? 0, certified[0] ?? 0)).toBeGreaterThan(11);
      }
    },
  );
});

function columnsOf(set: unknown): number[][] {
  const y = numbersAt(set, 'y');
  if (at(set, 'kind') === 'poly') {
    const x = numbersAt(set, 'x');
    const from = at(set, 'intercept') === true ? 0 : 1;
    const degree = numberAt(set, 'degree');
    return Array.from({ length: degree - from + 1 }, (_, k) => x.map((value) => value ** (from + k)));
  }
  const rows = listAt(set, 'x').map((_, i) => numbersAt(set, 'x', i));
  const columns = rows.length === y.length ? (rows[0] ?? []).map((_, j) => rows.map((row) => row[j] ?? 0)) : rows;
  return [y.map(() => 1), ...columns];
}

describe.runIf(nonlinear !== null)('nonlinear least squares: parameters from both starts to 6 digits', () => {
  test.each(nonlinear === null ? [] : listAt(nonlinear, 'datasets').map((set) => [nameOf(set), set] as const))(
    '%s',
    (name, set) => checkNonlinear(name, set),
  );
});

/** Small sets that the reference folder does not hold, from the .dat files in github mathnet/mathnet-numerics data/NIST. */
const DAN_WOOD = {
  model: 'y = b1*x**b2 + e',
  y: [2.138, 3.421, 3.597, 4.34, 4.882, 5.66],
  x: [1.309, 1.471, 1.49, 1.565, 1.611, 1.68],
  start1: [1, 5],
  start2: [0.7, 4],
  certified: { params: [7.6886226176e-1, 3.8604055871], paramSd: [1.828197386e-2, 5.1726610913e-2] },
};
const MGH17 = {
  model: 'y = b1 + b2*exp[-x*b4] + b3*exp[-x*b5] + e',
  y: [
    0.844, 0.908, 0.932, 0.936, 0.925, 0.908, 0.881, 0.85, 0.818, 0.784, 0.751, 0.718, 0.685, 0.658, 0.628, 0.603, 0.58,
    0.558, 0.538, 0.522, 0.506, 0.49, 0.478, 0.467, 0.457, 0.448, 0.438, 0.431, 0.424, 0.42, 0.414, 0.411, 0.406,
  ],
  x: Array.from({ length: 33 }, (_, i) => 10 * i),
  start1: [50, 150, -100, 1, 2],
  start2: [0.5, 1.5, -1, 0.01, 0.02],
  certified: {
    params: [3.7541005211e-1, 1.9358469127, -1.4646871366, 1.286753464e-2, 2.2122699662e-2],
    paramSd: [2.0723153551e-3, 2.2031669222e-1, 2.2175707739e-1, 4.4861358114e-4, 8.9471996575e-4],
  },
};
test.each([
  ['DanWood', DAN_WOOD],
  ['MGH17', MGH17],
] as const)('nonlinear: %s', (name, set) => checkNonlinear(name, set));

function checkNonlinear(name: string, set: unknown): void {
  const term = strdModel(String(at(set, 'model')));
  const y = numbersAt(set, 'y').map((value) => (name === 'Nelson' ? Math.log(value) : value));
  const x = listAt(set, 'x').map((row, i) => (Array.isArray(row) ? numbersAt(set, 'x', i) : [numberAt(set, 'x', i)]));
  const rows = x.length === y.length ? x : y.map((_, i) => x.map((column) => column[i] ?? 0));
  const model = (b: readonly number[]) => {
    const terms = rows.map((row) => term(b, row));
    return {
      residuals: terms.map(({ value }, i) => (y[i] ?? 0) - value),
      slopes: b.map((_, j) => terms.map(({ slopes }) => slopes[j] ?? 0)),
    };
  };
  for (const start of ['start1', 'start2']) {
    const fit = nonlinearLeastSquares(model, numbersAt(set, start));
    if (!fit.ok) throw new Error(`${name} ${start}: ${fit.code}`);
    const certified = numbersAt(set, 'certified', 'params');
    const certifiedErrors = numbersAt(set, 'certified', 'paramSd');
    const parameters = Math.min(...fit.parameters.map((value, i) => digits(value, certified[i] ?? 0)));
    const errors = Math.min(...(fit.standardErrors ?? []).map((value, i) => digits(value, certifiedErrors[i] ?? 0)));
    say('nonlinear', `${name} ${start}`, { parameters, errors });
    expect(parameters).toBeGreaterThan(6);
    // The residuals of Lanczos1 are rounding of the data themselves (1e-13), and so is what is made of them.
    if (name !== 'Lanczos1') expect(errors).toBeGreaterThan(6);
  }
}

/*
 * Load cell calibration of P. Pontius, with the straight line and its lack of fit: NIST/SEMATECH e-Handbook 4.6.1.5,
 * https://www.itl.nist.gov/div898/handbook/pmd/section6/pmd615.htm (F 214.7464 there, made of rounded mean squares; exact
 * arithmetic gives 214.746924); the quadratic is StRD Pontius (lower difficulty).
 */
describe('Pontius', () => {
  const x = Array.from({ length: 40 }, (_, i) => 150_000 * ((i % 20) + 1));
  const y = [
    0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822, 1.41599,
    1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739,
    0.76596, 0.87474, 0.983, 1.0915, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177,
    2.16829,
  ];

  test('quadratic, certified coefficients', () => {
    const fit = leastSquares([x.map(() => 1), x, x.map((value) => value * value)], y);
    if (!fit.ok) throw new Error(fit.code);
    const certified = [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14];
    const coefficients = Math.min(...fit.coefficients.map((value, i) => digits(value, certified[i] ?? 0)));
    const scatter = digits(Math.sqrt(fit.rss / fit.freedom), 0.205177424076185e-3);
    say('linear', 'Pontius', { coefficients, scatter });
    expect(coefficients).toBeGreaterThan(11);
    expect(scatter).toBeGreaterThan(12);
  });

  test('lack of fit of the straight line', () => {
    const line = lineFit(x, y);
    const pairs = Array.from({ length: 20 }, (_, i) => [y[i] ?? 0, y[i + 20] ?? 0]);
    const pure = oneWayAnova(pairs);
    const test = lackOfFit(
      { squares: line?.rss ?? 0, freedom: line?.freedom ?? 0 },
      { squares: pure?.withinSquares ?? 0, freedom: pure?.withinFreedom ?? 0 },
    );
    // Six digits as printed; exact arithmetic gives 0.6149684211e-2 where the page has 0.614969e-2.
    expect(Math.abs((line?.intercept ?? 0) / 0.614969e-2 - 1)).toBeLessThan(1.5e-6);
    expect(Math.abs((line?.slope ?? 0) / 0.722103e-6 - 1)).toBeLessThan(1e-6);
    expect(Math.abs((line?.scatter ?? 0) / 0.0021712694 - 1)).toBeLessThan(2e-6);
    expect(test).toMatchObject({ top: 18, bottom: 20 });
    expect(test?.f).toBeCloseTo(214.746924, 5);
    expect(Math.abs((test?.f ?? 0) / 214.7464 - 1)).toBeLessThan(1e-5);
  });
});
