import { describe, expect, test } from 'vitest';
import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';

const sheet: AdhesiveSheet = {
  referenceC: 21,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 10,
  potLife: [{ minutes: 30, massG: 100, temperatureC: 21, criterion: 'gel' }],
  milestoneHours: { handle: 12, sand: 24, 'recoat-from': 4, 'recoat-by': 24, paint: 168, 'pull-test': 168, ship: 168 },
  recoatCapHours: 24,
  ratio: { partsA: 2, partsB: 1, basis: 'volume' },
  sources: { handle: { kind: 'own', text: 'Thumbnail test' } },
};

/** Paths of the refused fields with their messages. */
function issuesOf(value: unknown): Record<string, string> {
  const result = adhesiveSheetSchema.safeParse(value);
  if (result.success) return {};
  return Object.fromEntries(result.error.issues.map((issue) => [issue.path.join('.'), issue.message]));
}

test('a whole sheet comes back as it went in', () => {
  expect(adhesiveSheetSchema.parse(sheet)).toEqual(sheet);
});

test('a sheet that says little is a sheet', () => {
  const bare = { ...sheet, potLife: [], milestoneHours: {}, sources: {} };
  const { recoatCapHours: _cap, ratio: _ratio, ...least } = bare;
  expect(issuesOf(least)).toEqual({});
});

describe('refusals name the field', () => {
  const hours = sheet.milestoneHours;
  const { recoatCapHours: _cap, ...uncapped } = sheet;
  const cases: readonly (readonly [string, unknown, string])[] = [
    ['an unknown key', { ...sheet, strengthMpa: 20 }, ''],
    ['an unknown milestone', { ...uncapped, milestoneHours: { cured: 3 } }, 'milestoneHours'],
    ['no hours', { ...sheet, milestoneHours: { ...hours, handle: 0 } }, 'milestoneHours.handle'],
    [
      'hours that are not a number',
      { ...sheet, milestoneHours: { ...hours, handle: Number.NaN } },
      'milestoneHours.handle',
    ],
    ['endless hours', { ...sheet, milestoneHours: { ...hours, ship: Infinity } }, 'milestoneHours.ship'],
    ['null for an absent figure', { ...sheet, milestoneHours: { ...hours, paint: null } }, 'milestoneHours.paint'],
    ['sanding before handling', { ...uncapped, milestoneHours: { handle: 12, sand: 11.9 } }, 'milestoneHours.sand'],
    ['painting before handling', { ...uncapped, milestoneHours: { handle: 12, paint: 8 } }, 'milestoneHours.paint'],
    [
      'pulling before handling',
      { ...uncapped, milestoneHours: { handle: 12, 'pull-test': 8 } },
      'milestoneHours.pull-test',
    ],
    ['shipping before painting', { ...uncapped, milestoneHours: { paint: 12, ship: 8 } }, 'milestoneHours.ship'],
    [
      'a window that closes as it opens',
      { ...uncapped, milestoneHours: { 'recoat-from': 6, 'recoat-by': 6 } },
      'milestoneHours.recoat-by',
    ],
    ['a cap before the window opens', { ...sheet, recoatCapHours: 4 }, 'recoatCapHours'],
    ['a cap without a window', { ...sheet, milestoneHours: { handle: 12 } }, 'milestoneHours.recoat-by'],
    ['a two-part product without a pot life', { ...sheet, potLife: [] }, 'potLife'],
    [
      'the same pot life twice',
      { ...sheet, potLife: [...sheet.potLife, { ...sheet.potLife[0], minutes: 20 }] },
      'potLife.1.minutes',
    ],
    [
      'a pot life without its mass',
      { ...sheet, potLife: [{ minutes: 5, temperatureC: 21, criterion: 'gel' }] },
      'potLife.0.massG',
    ],
    ['a box upside down', { ...sheet, massExponent: { low: 0.3, central: 0.2, high: 0.4 } }, 'massExponent.low'],
    [
      'an activation energy in J/mol',
      { ...sheet, rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 55_000 } } },
      'rateLaw.activationEnergyKjPerMol.high',
    ],
    ['a rate law of another kind', { ...sheet, rateLaw: { kind: 'linear' } }, 'rateLaw.kind'],
    ['cure that begins above the sheet', { ...sheet, minCureC: 22 }, 'minCureC'],
    ['an empty source', { ...sheet, sources: { handle: { kind: 'own', text: '  ' } } }, 'sources.handle.text'],
    [
      'a source that cannot be stored',
      { ...sheet, sources: { handle: { kind: 'own', text: 'a\u0000b' } } },
      'sources.handle.text',
    ],
    ['a ratio with a zero part', { ...sheet, ratio: { partsA: 1, partsB: 0, basis: 'mass' } }, 'ratio.partsB'],
  ];
  test.each(cases)('%s', (_title, value, path) => {
    const issues = issuesOf(value);
    expect(Object.keys(issues)).toEqual([path]);
    expect(issues[path]).toMatch(/\S/);
  });
});

test('equal hours of handling, sanding and painting are in order', () => {
  const { recoatCapHours: _cap, ...rest } = sheet;
  expect(issuesOf({ ...rest, milestoneHours: { handle: 12, sand: 12, paint: 12, ship: 12 } })).toEqual({});
});

test('every wrong field is named at once', () => {
  const wrong = {
    ...sheet,
    referenceC: 'warm',
    potLife: [{ minutes: -1, massG: 0, temperatureC: 21, criterion: 'gel' }],
  };
  expect(Object.keys(issuesOf(wrong)).sort()).toEqual(['potLife.0.massG', 'potLife.0.minutes', 'referenceC']);
});
