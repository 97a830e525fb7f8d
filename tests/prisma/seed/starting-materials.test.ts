import { describe, expect, test } from 'vitest';
import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import { idSchema } from '@/lib/contracts/plain-text';
import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import { STARTING_MATERIALS } from '@/prisma/seed/starting-materials';

const sheeted = STARTING_MATERIALS.flatMap(({ name, kind, sheet }) => (sheet === null ? [] : [{ name, kind, sheet }]));

test('ids and names are each given once', () => {
  expect(new Set(STARTING_MATERIALS.map((material) => material.id)).size).toBe(STARTING_MATERIALS.length);
  expect(new Set(STARTING_MATERIALS.map((material) => material.name)).size).toBe(STARTING_MATERIALS.length);
  for (const { id } of STARTING_MATERIALS) expect(idSchema.safeParse(id).success, id).toBe(true);
});

test('glues and coats have figures, all other materials have none', () => {
  for (const { kind, name, sheet } of STARTING_MATERIALS) {
    expect(sheet !== null, name).toBe(kind === 'adhesive' || kind === 'coating');
  }
  expect(sheeted).toHaveLength(9);
});

describe.each(sheeted)('$name', ({ sheet }) => {
  test('is a sheet a maker could have entered', () => {
    const result = adhesiveSheetSchema.safeParse(sheet);
    expect(result.success ? [] : result.error.issues).toEqual([]);
  });

  test('says where each figure comes from', () => {
    const figures = [
      'rateLaw',
      'minCureC',
      ...(sheet.potLife.length > 0 ? ['potLife'] : []),
      ...MILESTONES.filter((milestone) => sheet.milestoneHours[milestone] !== undefined),
    ];
    expect(Object.keys(sheet.sources).sort()).toEqual(figures.sort());
  });

  test('a closing window has a limit by the clock and a remedy', () => {
    const hasWindow = sheet.milestoneHours['recoat-by'] !== undefined;
    expect(sheet.recoatCapHours !== undefined).toBe(hasWindow);
    expect(sheet.recoatRemedy !== undefined).toBe(hasWindow);
  });
});
