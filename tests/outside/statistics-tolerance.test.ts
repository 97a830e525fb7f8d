import { describe, expect, test } from 'vitest';
import { comparisonPower, mixesNeeded } from '@/lib/statistics/depth-power';
import { leverageFactor } from '@/lib/statistics/interpolated-factor';
import { readingsForWorst, successRunShare, worstIsAboveChance } from '@/lib/statistics/order-statements';
import { studentQuantile } from '@/lib/statistics/student-t';
import { toleranceFactor } from '@/lib/statistics/tolerance-factor';
import { at, listAt, numberAt, referenceData, reportAbsent } from './reference-data';

const factors = referenceData('k-factors.json');
const pooled = referenceData('k-pooled.json');
const power = referenceData('power.json');
reportAbsent(factors, 'k-factors.json');
reportAbsent(pooled, 'k-pooled.json');
reportAbsent(power, 'power.json');

const entriesOf = (value: unknown): [string, unknown][] => Object.entries(Object(value));

describe.runIf(factors !== null)('one-sided tolerance factors', () => {
  test('every cell of the 30-digit table (mpmath, agreeing with scipy and R), to its last digit', () => {
    let largest = 0;
    let cells = 0;
    for (const [key, table] of entriesOf(at(factors, 'k'))) {
      const [, content, confidence] = /^p=([\d.]+),conf=([\d.]+)$/.exec(key) ?? [];
      for (const [n, k] of entriesOf(table).filter(([name]) => name !== 'inf')) {
        const off = Math.abs(toleranceFactor(Number(n), Number(content), Number(confidence)) - Number(k));
        // The table is written with 10 to 12 decimals.
        largest = Math.max(largest, off);
        cells += 1;
      }
    }
    console.log(`tolerance factors: ${cells} cells, largest difference ${largest.toExponential(1)}`);
    expect(cells).toBeGreaterThan(200);
    expect(largest).toBeLessThan(6e-11);
  });

  test('prediction factors in the style of EN 1990 Annex D, which are something else', () => {
    for (const [n, k] of entriesOf(at(factors, 'predictionFactor_5pct_EN1990_D1_style'))) {
      if (!Number.isInteger(Number(n))) continue;
      const factor = studentQuantile(0.95, Number(n) - 1) * Math.sqrt(1 + 1 / Number(n));
      expect(Math.abs(factor - Number(k))).toBeLessThan(6e-5);
    }
  });
});

/*
 * NRC table 2.065 for p .95, confidence .95, n = 50 (seen in the notes of github.com/groskwik/Owen); 1.9017 for .90, .99,
 * n = 40 (seen at real-statistics.com, tolerance interval example); EN 14358:2016 table 1 (seen in a transcription) is in
 * statistics-check-values; ASTM D2915's table for 75 % and the fifth percentile (from memory; its last digit may differ).
 */
test.each([
  [50, 0.95, 0.95, 2.065, 3],
  [40, 0.9, 0.99, 1.9017, 4],
  [3, 0.95, 0.75, 3.152, 3],
  [4, 0.95, 0.75, 2.681, 3],
  [7, 0.95, 0.75, 2.25, 3],
  [10, 0.95, 0.75, 2.104, 3],
  [3, 0.95, 0.9, 5.311, 3],
  [5, 0.95, 0.9, 3.4, 3],
  [10, 0.95, 0.9, 2.568, 3],
])('published factor n = %i, content %f, confidence %f: %f', (n, content, confidence, k, decimals) => {
  expect(Number(toleranceFactor(n, content, confidence).toFixed(decimals))).toBe(k);
});

describe.runIf(pooled !== null)('factors of a level mean with a pooled scatter', () => {
  test('every cell, to six decimals', () => {
    for (const [n, row] of entriesOf(at(pooled, 'k'))) {
      for (const [freedom, k] of entriesOf(row)) {
        const certainty = { content: 0.95, confidence: 0.75 };
        expect(Math.abs(leverageFactor(1 / Number(n), Number(freedom), certainty) - Number(k))).toBeLessThan(6e-7);
      }
    }
  });
});

describe.runIf(power !== null)('power of telling two depths apart', () => {
  test('every curve from 2 to 10 mixes, and the mixes needed', () => {
    for (const [key, row] of entriesOf(at(power, 'table'))) {
      const [, ratio, variation] = /^ratio ([\d.]+), CV ([\d.]+)$/.exec(key) ?? [];
      // The file writes 4/3 as 1.33.
      const comparison = { ratio: ratio === '1.33' ? 4 / 3 : Number(ratio), variation: Number(variation), levels: 5 };
      listAt(row, 'power_b2_to_b10_one_sided').forEach((_, i) => {
        const wanted = numberAt(row, 'power_b2_to_b10_one_sided', i);
        expect(Math.abs(comparisonPower(comparison, i + 2) - wanted)).toBeLessThan(6e-5);
      });
      expect(mixesNeeded(comparison, 0.8)).toBe(numberAt(row, 'b_for_80pct'));
      expect(mixesNeeded(comparison, 0.9)).toBe(numberAt(row, 'b_for_90pct'));
    }
    // 200,000 simulated series give 0.7398.
    expect(comparisonPower({ ratio: 1.5, variation: 0.2, levels: 5 }, 3)).toBeCloseTo(0.7399184564992928, 12);
  });
});

test('what counts alone say: 28 and 59 readings for the worst to be a lower value (from memory), 3 are far from it', () => {
  expect(readingsForWorst(0.95, 0.75)).toBe(28);
  expect(readingsForWorst(0.95, 0.95)).toBe(59);
  expect(worstIsAboveChance(3)).toBeCloseTo(0.857, 3);
  expect(successRunShare(5)).toBeCloseTo(0.758, 3);
});
