import { describe, expect, test } from 'vitest';
import { OWN_FIGURE } from '@/lib/materials/figure-source';
import { resolveWood, type WoodCondition } from '@/lib/materials/resolved-wood';
import type { WoodSheet } from '@/lib/materials/wood-sheet';
import { WOOD_TABLE } from '@/lib/materials/wood-table';
import { MPA_PER_PSI } from '@/lib/units/force-and-length';

const DRY: WoodCondition = { weighedDensityKgM3: null, moisturePercent: null };

function sheetOf(id: string): WoodSheet {
  const found = WOOD_TABLE.find((wood) => wood.id === id);
  if (found === undefined) throw new Error(id);
  return found.sheet;
}

function resolved(sheet: WoodSheet, condition: Partial<WoodCondition> = {}) {
  const result = resolveWood(sheet, { ...DRY, ...condition });
  if (!result.ok) throw new Error(result.code);
  return result.wood;
}

const shearPsi = (sheet: WoodSheet, condition: Partial<WoodCondition> = {}) =>
  resolved(sheet, condition).shearMpa.value / MPA_PER_PSI;

test('a species of the table has its own figures', () => {
  const poplar = resolved(sheetOf('yellow-poplar'));
  expect(poplar.gravity12.value).toBe(0.42);
  expect(poplar.densityKgM3).toBeCloseTo(470.4, 6);
  expect(poplar.shearMpa.value / MPA_PER_PSI).toBeCloseTo(1190, 9);
  expect(poplar.tensionPerpMpa.value / MPA_PER_PSI).toBeCloseTo(540, 9);
  expect(poplar.shearMpa).toMatchObject({ logSd: 0, steps: [], source: { kind: 'published' } });
});

test('the imported woods count on their green volume', () => {
  const mahogany = resolved(sheetOf('true-mahogany'));
  expect(mahogany.gravity12.value).toBeCloseTo(0.485, 3);
  expect(mahogany.densityKgM3).toBeCloseTo(543, 0);
});

test('a weighed blank scales the strength with its density and says so', () => {
  const heavy = resolved(sheetOf('yellow-poplar'), { weighedDensityKgM3: 517.44 });
  expect(heavy.gravity12.value).toBeCloseTo(0.462, 9);
  expect(heavy.shearMpa.value / MPA_PER_PSI).toBeCloseTo(1190 * 1.1, 6);
  expect(heavy.shearMpa.steps).toEqual(['scaled to the weighed density']);
  expect(heavy.shearMpa.source.kind).toBe('chosen');
});

test('a wood without a shear figure gets one from its specific gravity, marked as an estimate', () => {
  const { shearMpa } = resolved(sheetOf('paulownia'));
  expect(shearMpa.value / MPA_PER_PSI).toBeCloseTo(694, 0);
  expect(shearMpa.logSd).toBeGreaterThan(0.18);
  expect(shearMpa.source.kind).toBe('derived');
});

test('a wetter body is weaker: yellow-poplar at 20 % shears at 925 psi', () => {
  expect(shearPsi(sheetOf('yellow-poplar'), { moisturePercent: 20 })).toBeCloseTo(925, 0);
  expect(shearPsi(sheetOf('yellow-poplar'), { moisturePercent: 8 })).toBeGreaterThan(1190);
  const wet = resolved(sheetOf('yellow-poplar'), { moisturePercent: 18 }).tensionPerpMpa.value / MPA_PER_PSI;
  expect(wet).toBeCloseTo(510, 6);
});

describe('refusals', () => {
  const code = (sheet: WoodSheet, condition: Partial<WoodCondition> = {}) => {
    const result = resolveWood(sheet, { ...DRY, ...condition });
    return result.ok ? 'ok' : result.code;
  };
  const poplar = sheetOf('yellow-poplar');
  test.each([
    ['balsa that was not weighed', sheetOf('balsa'), {}, 'weigh-the-wood'],
    ['balsa as weighed', sheetOf('balsa'), { weighedDensityKgM3: 184 }, 'ok'],
    ['a soaked body', poplar, { moisturePercent: 26 }, 'moisture-outside'],
    ['moisture that is not a number', poplar, { moisturePercent: Number.NaN }, 'moisture-outside'],
    ['moisture without a green figure', sheetOf('butternut'), { moisturePercent: 18 }, 'green-figure-missing'],
    ['moisture without any shear figure', sheetOf('paulownia'), { moisturePercent: 18 }, 'green-figure-missing'],
    ['a density of stone', poplar, { weighedDensityKgM3: 2600 }, 'unusable-figure'],
    ['a negative density', poplar, { weighedDensityKgM3: -1 }, 'unusable-figure'],
    ['a strength of nothing', { ...poplar, shearMpa: 0 }, {}, 'unusable-figure'],
    ['a gravity that is not a number', { ...poplar, specificGravity: Number.NaN }, {}, 'unusable-figure'],
  ])('%s', (_, sheet, condition, expected) => {
    expect(code(sheet, condition)).toBe(expected);
  });
});

test("a figure that a shop entered without a source is the shop's own", () => {
  const own: WoodSheet = {
    group: 'hardwood',
    specificGravity: 0.5,
    gravityBasis: 'at-12',
    figuresMoisturePercent: 12,
    shearMpa: 10,
    sources: {},
  };
  expect(resolved(own).shearMpa.source).toEqual(OWN_FIGURE);
  expect(resolved(own).gravity12.source.kind).toBe('own');
});

test('jelutong is printed at 15 % and taken as such within 3 %', () => {
  expect(shearPsi(sheetOf('jelutong'))).toBeCloseTo(840, 6);
  expect(resolved(sheetOf('jelutong')).shearMpa.steps).toEqual(['taken as at 15 % moisture']);
});

test('every wood of the table has an id, a name and a source for what it gives', () => {
  expect(new Set(WOOD_TABLE.map((wood) => wood.id)).size).toBe(WOOD_TABLE.length);
  expect(WOOD_TABLE).toHaveLength(30);
  for (const { name, sheet } of WOOD_TABLE) {
    for (const figure of ['shearMpa', 'tensionPerpMpa', 'hardnessN', 'compressionPerpMpa', 'greenShearMpa'] as const) {
      expect(sheet.sources[figure] === undefined, `${name} ${figure}`).toBe(sheet[figure] === undefined);
    }
  }
});
