import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { couponLayout } from '@/lib/pulltest/coupon-layout';
import { mixesToTell } from '@/lib/pulltest/mixes-to-tell';
import { type DesignInput, mixLetters, pullDesign, type Specimen, seededOrder } from '@/lib/pulltest/pull-design';
import { pullMaterials } from '@/lib/pulltest/pull-materials';

const digest = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');

const INPUT: DesignInput = {
  depthsMm: [6.35, 9.525, 12.7, 15.875, 19.05],
  conditions: ['poplar'],
  sharesMixes: true,
  mixes: 3,
  seed: '2024-07-A',
  order: 'all',
};

function specimensOf(input: DesignInput): readonly Specimen[] {
  const design = pullDesign(input, digest);
  if (!design.ok) throw new Error(design.code);
  return design.specimens;
}

describe('a design', () => {
  test('holds one specimen of each depth in each mix, pulled in an order that the seed decides', () => {
    const specimens = specimensOf(INPUT);
    expect(specimens).toHaveLength(15);
    for (const mix of ['A', 'B', 'C']) {
      const own = specimens.filter((specimen) => specimen.mix === mix).map(({ depthMm }) => depthMm);
      expect([...own].sort((a, b) => a - b)).toEqual(INPUT.depthsMm);
    }
    expect(specimens.map(({ pullOrder }) => pullOrder)).toEqual(Array.from({ length: 15 }, (_, i) => i + 1));
    expect(specimensOf(INPUT)).toEqual(specimens);
    expect(specimensOf({ ...INPUT, seed: 'other' }).map(({ id }) => id)).not.toEqual(specimens.map(({ id }) => id));
    expect(specimensOf({ ...INPUT, depthsMm: [...INPUT.depthsMm].reverse() })).toEqual(specimens);
  });

  test('the order is that of SHA-256 of seed and id (reference data randomisation.json)', () => {
    expect(digest('2024-07-A:A-0.25')).toBe('399608e9310ed0c7fd0a63f349b65c6c22042c6bbe0f69e7058ba40500876ba4');
    const ids = ['A', 'B', 'C'].flatMap((mix) =>
      ['0.25', '0.375', '0.5', '0.625', '0.75'].map((depth) => `${mix}-${depth}`),
    );
    expect(seededOrder(ids, '2024-07-A', digest).slice(0, 5)).toEqual([
      'C-0.375',
      'A-0.25',
      'C-0.75',
      'B-0.375',
      'C-0.5',
    ]);
    expect(seededOrder(ids, '2024-07-B', digest).slice(0, 3)).toEqual(['A-0.25', 'A-0.5', 'A-0.75']);
    expect(seededOrder(ids, '1', digest).slice(-2)).toEqual(['A-0.75', 'A-0.5']);
  });

  test('mix by mix keeps mixes together, each in a random order of its own', () => {
    const mixes = specimensOf({ ...INPUT, order: 'mix-by-mix' }).map(({ mix }) => mix);
    expect(mixes.join('')).toBe('AAAAABBBBBCCCCC');
  });

  test('two woods share a mix, two glues cannot', () => {
    const woods = pullDesign({ ...INPUT, depthsMm: [10, 20, 30], conditions: ['poplar', 'cedar'] }, digest);
    const glues = pullDesign(
      { ...INPUT, depthsMm: [10, 20, 30], conditions: ['slow', 'fast'], sharesMixes: false },
      digest,
    );
    expect(woods).toMatchObject({ ok: true, mixes: expect.arrayContaining(['A', 'B', 'C']) });
    expect(woods.ok && woods.mixes).toHaveLength(3);
    expect(glues.ok && glues.mixes).toHaveLength(6);
    if (!glues.ok) return;
    for (const mix of glues.mixes) {
      expect(new Set(glues.specimens.filter((one) => one.mix === mix).map(({ condition }) => condition)).size).toBe(1);
    }
  });

  test.each([
    [{ depthsMm: [] }, 'no-depths'],
    [{ depthsMm: [5, Number.NaN] }, 'bad-depth'],
    [{ depthsMm: [5, 5.01] }, 'same-depth-twice'],
    [{ conditions: ['a', 'a'] }, 'no-condition'],
    [{ mixes: 0 }, 'bad-mixes'],
    [{ mixes: 101 }, 'too-many'],
  ] as const)('%o is refused as %s', (change, code) => {
    expect(pullDesign({ ...INPUT, ...change }, digest)).toEqual({ ok: false, code });
  });

  test('warns of too few mixes and depths to answer the usual questions', () => {
    const design = pullDesign({ ...INPUT, mixes: 2, depthsMm: [6, 12] }, digest);
    expect(design).toMatchObject({ ok: true, warnings: ['fewer-than-3-mixes', 'fewer-than-3-depths'] });
  });

  test('mixes have letters for ever', () => {
    expect([0, 25, 26, 27, 52, 701, 702].map(mixLetters)).toEqual(['A', 'Z', 'AA', 'AB', 'BA', 'ZZ', 'AAA']);
  });
});

describe('coupons on a board', () => {
  const BOARD = { lengthMm: 260, widthMm: 130, thicknessMm: 30, edgeMm: 20, spacingMm: 40, shankDiameterMm: 2.083 };
  const specimens = specimensOf(INPUT);
  const layout = (change: Partial<typeof BOARD> = {}, boardOf?: (one: Specimen) => string) =>
    couponLayout(specimens, { ...BOARD, ...change }, 's', digest, boardOf);

  test('keep their distance from edges and from each other, each in a place of its own', () => {
    const result = layout();
    if (!result.ok) throw new Error(result.code);
    expect(result).toMatchObject({ boards: 1, columns: 6, rows: 3, jigClearMm: 3 * 19.05 });
    expect(new Set(result.places.map(({ specimenId }) => specimenId)).size).toBe(15);
    for (const { xMm, yMm } of result.places) {
      expect(Math.min(xMm, BOARD.lengthMm - xMm, yMm, BOARD.widthMm - yMm)).toBeGreaterThanOrEqual(BOARD.edgeMm);
    }
    for (const [i, a] of result.places.entries()) {
      for (const b of result.places.slice(i + 1)) {
        expect(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)).toBeGreaterThanOrEqual(BOARD.spacingMm - 1e-9);
      }
    }
  });

  test('go on as many boards as it takes, one kind of wood to a board', () => {
    const narrow = layout({ widthMm: 50 });
    expect(narrow).toMatchObject({ ok: true, boards: 3, columns: 6, rows: 1 });
    const woods = layout({}, ({ mix }) => mix);
    expect(woods).toMatchObject({ ok: true, boards: 3 });
  });

  test.each([
    [{ edgeMm: 5.2 }, { code: 'edge-too-near', leastMm: 2.5 * 2.083 }],
    [{ spacingMm: 25 }, { code: 'spacing-too-near', leastMm: 25.4 }],
    [{ thicknessMm: 22 }, { code: 'board-too-thin', leastMm: 22.05 }],
    [{ widthMm: 39 }, { code: 'board-too-small', leastWidthMm: 40 }],
    [{ lengthMm: Number.NaN }, { code: 'bad-board' }],
  ])('%o is refused with what it takes', (change, refusal) => {
    expect(layout(change)).toMatchObject({ ok: false, ...refusal });
  });
});

test('materials: wire, holes and mixes, never less than is worth mixing', () => {
  const kit = {
    wireDiameterMm: 1,
    bitDiameterMm: 2,
    outsideMm: 60,
    twistShare: 0,
    glueDensityGPerMl: 1.1,
    wasteShare: 0.5,
    leastMixG: 0,
  };
  const materials = pullMaterials(specimensOf(INPUT), kit);
  const depth = 6.35 + 9.525 + 12.7 + 15.875 + 19.05;
  expect(materials.wireMm).toBeCloseTo(3 * 2 * depth + 15 * 60, 9);
  expect(materials.holes).toContainEqual({ depthMm: 12.7, count: 3 });
  // Hole of 2 mm less two wires of 1 mm: pi/4 (4 - 2) mm2.
  expect(materials.mixes).toHaveLength(3);
  expect(materials.mixes[0]?.intoHolesMl).toBeCloseTo((Math.PI / 2) * depth * 1e-3, 9);
  expect(materials.mixes[0]?.massG).toBeCloseTo((Math.PI / 2) * depth * 1e-3 * 1.5 * 1.1, 9);
  expect(pullMaterials(specimensOf(INPUT), { ...kit, leastMixG: 10 }).mixes.every(({ massG }) => massG === 10)).toBe(
    true,
  );
});

test('mixes to tell half an inch from three quarters at 20 % scatter: 4, and 5 for nine in ten', () => {
  const asked = { shallowMm: 12.7, deepMm: 19.05, saturationMm: null, variation: 0.2, levels: 5 };
  const told = mixesToTell(asked);
  expect(told).toMatchObject({ forFourInFive: 4, forNineInTen: 5 });
  expect(told.ratio).toBeCloseTo(1.5, 12);
  expect(told.withThree).toBeCloseTo(0.74, 2);
  // Where strength saturates the two are nearer to each other, and it takes more.
  expect(mixesToTell({ ...asked, saturationMm: 25.4 }).forFourInFive).toBeGreaterThan(4);
  expect(() => mixesToTell({ ...asked, deepMm: 12.7 })).toThrow(RangeError);
});
