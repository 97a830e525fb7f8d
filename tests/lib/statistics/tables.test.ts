import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockContrasts } from '@/lib/statistics/block-contrasts';
import { isConnected } from '@/lib/statistics/connected-table';
import { nonAdditivity } from '@/lib/statistics/non-additivity';
import { permutationTest } from '@/lib/statistics/permutation-test';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { studentisedResiduals } from '@/lib/statistics/studentised-residuals';
import { twoWayAnova } from '@/lib/statistics/two-way-anova';
import { contrastVariance, type TableReading, twoWayFit } from '@/lib/statistics/two-way-fit';

function fitted(readings: readonly TableReading[]) {
  const fit = twoWayFit(readings);
  if (!fit.ok) throw new Error(fit.code);
  return fit;
}

/** A complete table, a row a treatment. */
function complete(rows: readonly (readonly number[])[]): TableReading[] {
  return rows.flatMap((row, treatment) => row.map((y, block) => ({ treatment, block, y })));
}

describe('two-way tables', () => {
  test('a complete table gives the textbook sums of squares', () => {
    const rows = [
      [3, 5, 10],
      [4, 9, 11],
    ];
    const anova = twoWayAnova(complete(rows), fitted(complete(rows)));
    // Means: rows 6 and 8, columns 3.5, 7 and 10.5, all 7.
    expect(anova.treatment.squares).toBeCloseTo(6, 12);
    expect(anova.block.squares).toBeCloseTo(49, 12);
    expect(anova.errorSquares).toBeCloseTo(3, 12);
    expect(anova).toMatchObject({ errorFreedom: 2, treatment: { freedom: 1 }, block: { freedom: 2 } });
  });

  test('what cannot be told apart is refused, and a hole in the numbering is a programming error', () => {
    const apart = [
      { treatment: 0, block: 0, y: 1 },
      { treatment: 1, block: 1, y: 2 },
    ];
    expect(twoWayFit(apart)).toEqual({ ok: false, code: 'not-connected' });
    expect(twoWayFit([])).toEqual({ ok: false, code: 'no-readings' });
    expect(isConnected(apart, 2, 2)).toBe(false);
    expect(() => twoWayFit([{ treatment: 1, block: 0, y: 1 }])).toThrow(RangeError);
    expect(() => twoWayFit([{ treatment: 0, block: 0, y: Number.NaN }])).toThrow(RangeError);
  });

  test('a saturated or perfectly additive table has no test, never an infinite one', () => {
    const saturated = complete([
      [1, 2],
      [3, 7],
    ]).slice(0, 3);
    const anova = twoWayAnova(saturated, fitted(saturated));
    expect(anova).toMatchObject({ errorFreedom: 0, errorMean: null, treatment: { test: null }, block: { test: null } });
    const additive = complete([
      [1, 2, 5],
      [3, 4, 7],
      [10, 11, 14],
    ]);
    expect(twoWayAnova(additive, fitted(additive)).treatment.test).toBeNull();
    expect(blockContrasts(fitted(additive))).toBeNull();
    expect(studentisedResiduals(additive, fitted(additive))).toEqual(additive.map(() => null));
  });

  test('a reading that alone decides its level has no residual', () => {
    const rows = complete([
      [1, 2, 3.2],
      [2, 3.3, 4],
      [5, 6, 7.1],
    ]);
    const readings = [...rows, { treatment: 3, block: 0, y: 40 }];
    expect(studentisedResiduals(readings, fitted(readings)).at(-1)).toBeNull();
  });

  test('the order of readings and the scale change nothing', () => {
    const cells = fc.array(fc.record({ treatment: fc.nat(3), block: fc.nat(3), y: fc.integer({ min: 1, max: 500 }) }), {
      minLength: 8,
      maxLength: 16,
    });
    fc.assert(
      fc.property(cells, (readings) => {
        fc.pre(
          new Set(readings.map((r) => r.treatment)).size === 4 && new Set(readings.map((r) => r.block)).size === 4,
        );
        const fit = twoWayFit(readings);
        const back = twoWayFit([...readings].reverse());
        const swapped = twoWayFit(
          readings.map(({ treatment, block, y }) => ({ treatment: block, block: treatment, y: 3 * y })),
        );
        expect(back.ok).toBe(fit.ok);
        if (!fit.ok || !back.ok || !swapped.ok) return;
        expect(back.rss).toBeCloseTo(fit.rss, 6);
        expect(swapped.rss).toBeCloseTo(9 * fit.rss, 5);
        swapped.blockEffects.forEach((effect, i) => {
          expect(effect).toBeCloseTo(3 * (fit.treatmentEffects[i] ?? 0), 7);
        });
      }),
    );
  });

  test('variances of a complete table are those of means', () => {
    const { design } = fitted(
      complete([
        [1, 2, 3],
        [2, 4, 1],
        [5, 1, 2],
        [0, 1, 3],
      ]),
    );
    expect(
      contrastVariance(
        design,
        new Map([
          [0, 1],
          [1, -1],
        ]),
        new Map(),
      ),
    ).toBeCloseTo(2 / 3, 12);
    expect(
      contrastVariance(
        design,
        new Map(),
        new Map([
          [0, 1],
          [1, -0.5],
          [2, -0.5],
        ]),
      ),
    ).toBeCloseTo(1.5 / 4, 12);
    expect(contrastVariance(design, new Map([[2, 1]]), new Map([[1, 1]]))).toBeCloseTo(1 / 3 + 1 / 4 - 1 / 12, 12);
  });
});

test('non-additivity cannot be tested where a factor has no effect or nothing is left', () => {
  const flat = complete([
    [1, 2, 4],
    [1, 2, 4],
    [1, 2, 4],
  ]);
  expect(nonAdditivity(flat, fitted(flat))).toBeNull();
  const small = complete([
    [1, 2],
    [3, 5],
  ]);
  expect(nonAdditivity(small, fitted(small))).toBeNull();
});

describe('rearrangements', () => {
  test('two treatments in three blocks: 6 ways, of which the table is among the furthest', () => {
    // Block 2 is lowest in both: its total of deviations is the largest possible.
    const result = permutationTest(
      complete([
        [5, 6, 1],
        [15, 16, 11],
      ]),
      1,
    );
    expect(result).toMatchObject({ isExact: true, arrangements: 6 });
    // The low one of the second row meets the low one of the first in 2 of 6 ways.
    expect(result?.p).toBeCloseTo(2 / 6, 12);
  });

  test('too many to count are drawn, with nearly the same p, and the seed decides', () => {
    const random = seededRandom(3);
    const rows = Array.from({ length: 4 }, (_, i) =>
      Array.from({ length: 4 }, (_, j) => 10 * i + 4 * random() + (j === 2 ? 1.2 : 0)),
    );
    const exact = permutationTest(complete(rows), 1);
    const more = permutationTest(complete([...rows, ...rows.map((row) => row.map((y) => y + 7))]), 1);
    expect(exact).toMatchObject({ isExact: true, arrangements: 24 ** 3 });
    expect(more?.isExact).toBe(false);
    expect(permutationTest(complete([...rows, ...rows.map((row) => row.map((y) => y + 7))]), 1)).toEqual(more);
  });

  test('nothing to rearrange, nothing to say', () => {
    expect(permutationTest(complete([[1], [2]]), 1)).toBeNull();
    expect(
      permutationTest(
        complete([
          [2, 2, 2],
          [5, 5, 5],
        ]),
        1,
      ),
    ).toBeNull();
  });
});

test('the random stream is the published one', () => {
  const random = seededRandom(42);
  // mulberry32, seed 42 (reference data randomisation.json).
  for (const word of [2581720956, 1925393290, 3661312704, 2876485805, 750819978]) expect(random() * 2 ** 32).toBe(word);
});
