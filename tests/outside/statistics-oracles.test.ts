import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chiSquareProbability, chiSquareQuantile, chiSquareUpperTail } from '@/lib/statistics/chi-square';
import { fUpperQuantile, fUpperTail } from '@/lib/statistics/f-distribution';
import { noncentralTProbability, noncentralTQuantile, noncentralTUpperTail } from '@/lib/statistics/noncentral-t';
import { studentUpperQuantile, studentUpperTail } from '@/lib/statistics/student-t';
import { studentisedResiduals } from '@/lib/statistics/studentised-residuals';
import { twoWayAnova } from '@/lib/statistics/two-way-anova';
import { twoWayFit } from '@/lib/statistics/two-way-fit';
import { listAt, numberAt, numbersAt } from './reference-data';

/*
 * Independent libraries as oracles: mpmath with 40 digits, and least squares with dummy variables by numpy's singular
 * values with p by scipy. R is not among them: it cannot be had here as a package that installs and starts within the
 * time of the tests. Figures and the script that made them: tests/fixtures/statistics.
 */

const fixture = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../fixtures/statistics/${name}`, import.meta.url), 'utf8'));

const distributions = fixture('distributions.json');

/** Largest relative error, and prints it. */
function worst(what: string, pairs: readonly (readonly [got: number, want: number])[]): number {
  const error = Math.max(...pairs.map(([got, want]) => Math.abs(got / want - 1)));
  console.log(`${what}: ${pairs.length} points, largest relative error ${error.toExponential(1)}`);
  return error;
}

describe('distributions against 40-digit arithmetic, far tails included', () => {
  const rows = (name: string) => listAt(distributions, name);

  test("Student's t: upper tail and its quantile", () => {
    const tails = rows('t').map((row) => [numberAt(row, 0), numberAt(row, 1), numberAt(row, 2)] as const);
    expect(
      worst(
        't tail',
        tails.map(([t, nu, want]) => [studentUpperTail(t, nu), want]),
      ),
    ).toBeLessThan(1e-12);
    const inverse = tails.filter(([t, , want]) => t > 0.5 && want > 1e-100);
    expect(
      worst(
        't quantile',
        inverse.map(([t, nu, want]) => [studentUpperQuantile(want, nu), t]),
      ),
    ).toBeLessThan(1e-12);
  });

  test('F: upper tail and its quantile', () => {
    const tails = rows('f').map(
      (row) => [numberAt(row, 0), numberAt(row, 1), numberAt(row, 2), numberAt(row, 3)] as const,
    );
    expect(
      worst(
        'F tail',
        tails.map(([f, a, b, want]) => [fUpperTail(f, a, b), want]),
      ),
    ).toBeLessThan(1e-12);
    const inverse = tails.filter(([, , , want]) => want > 1e-60 && want < 0.9999);
    expect(
      worst(
        'F quantile',
        inverse.map(([f, a, b, want]) => [fUpperQuantile(want, a, b), f]),
      ),
    ).toBeLessThan(1e-11);
  });

  test('chi-square: both tails and the quantile', () => {
    const tails = rows('chiSquare').map((row) => numbersAt(row));
    const both = tails.flatMap(([x = 0, nu = 1, low = 0, up = 0]) => [
      [chiSquareProbability(x, nu), low] as const,
      [chiSquareUpperTail(x, nu), up] as const,
    ]);
    // Below 1e-300 a double has no digits left.
    expect(
      worst(
        'chi-square tails',
        both.filter(([, want]) => want > 1e-300),
      ),
    ).toBeLessThan(2e-12);
    const inverse = tails.filter(([, , low = 0, up = 0]) => low > 1e-9 && up > 1e-9);
    const pairs = inverse.map(([x = 0, nu = 1, low = 0]) => [chiSquareQuantile(low, nu), x] as const);
    expect(worst('chi-square quantile', pairs)).toBeLessThan(1e-8);
  });

  test('noncentral t: both tails, to 1e-13 of 1, and the quantile', () => {
    const tails = rows('noncentralT').map((row) => numbersAt(row));
    const off = tails.map(([t = 0, nu = 1, shift = 0, low = 0, up = 0]) =>
      Math.max(Math.abs(noncentralTProbability(t, nu, shift) - low), Math.abs(noncentralTUpperTail(t, nu, shift) - up)),
    );
    console.log(`noncentral t: ${off.length} points, largest error ${Math.max(...off).toExponential(1)}`);
    expect(Math.max(...off)).toBeLessThan(1e-13);
    const inverse = tails.filter(([t = 0, , , low = 0]) => low > 0.01 && low < 0.99 && Math.abs(t) > 0.1);
    const pairs = inverse.map(
      ([t = 0, nu = 1, shift = 0, low = 0]) => [noncentralTQuantile(low, nu, shift), t] as const,
    );
    expect(worst('noncentral t quantile', pairs)).toBeLessThan(1e-11);
  });
});

test('500 random tables with missing and repeated cells against least squares with dummy variables', () => {
  const tables = listAt(fixture('tables.json'), 'tables');
  expect(tables).toHaveLength(500);
  let largest = 0;
  const compare = (got: number, want: number, size = Math.abs(want)) => {
    largest = Math.max(largest, Math.abs(got - want) / Math.max(size, 1e-12));
  };
  for (const table of tables) {
    const readings = listAt(table, 0).map((cell, i) => ({
      treatment: numberAt(cell, 0),
      block: numberAt(cell, 1),
      y: numberAt(table, 1, i),
    }));
    const fit = twoWayFit(readings);
    if (!fit.ok) throw new Error(fit.code);
    const anova = twoWayAnova(readings, fit);
    expect(fit.freedom).toBe(numberAt(table, 3));
    compare(fit.rss, numberAt(table, 2));
    compare(anova.treatment.squares, numberAt(table, 4), Math.abs(numberAt(table, 4)) + fit.rss);
    compare(anova.block.squares, numberAt(table, 5), Math.abs(numberAt(table, 5)) + fit.rss);
    compare(anova.treatment.test?.p ?? Number.NaN, numberAt(table, 6));
    compare(anova.block.test?.p ?? Number.NaN, numberAt(table, 7));
    const most = Math.max(...studentisedResiduals(readings, fit).map((residual) => Math.abs(residual?.t ?? 0)));
    const wanted = Reflect.get(Object(table), 8);
    if (typeof wanted === 'number') compare(most, wanted);
  }
  console.log(`500 tables: largest relative difference ${largest.toExponential(1)}`);
  expect(largest).toBeLessThan(1e-7);
});
