import { describe, expect, test } from 'vitest';
import { adhesiveSheetSchema } from '@/lib/contracts/adhesive-sheet';
import { bodyProfileSchema } from '@/lib/contracts/body-profile';
import { readStrengthFigures } from '@/lib/contracts/strength-figures';
import { DEMO_GLUES, demoMaterials } from '@/prisma/seed/demo/demo-materials';
import { DEMO_MODELS } from '@/prisma/seed/demo/demo-models';
import { demoTimes } from '@/prisma/seed/demo/demo-times';
import { STARTING_MATERIALS } from '@/prisma/seed/starting-materials';

const materialIds = new Set([...STARTING_MATERIALS, ...demoMaterials(demoTimes(0, 'UTC'))].map(({ id }) => id));
const revisions = DEMO_MODELS.flatMap((model) =>
  model.revisions.map((revision) => ({ ...revision, model: model.name })),
);

test.each(DEMO_GLUES)('$name is a sheet a maker could have entered', ({ sheet }) => {
  const result = adhesiveSheetSchema.safeParse(sheet);
  expect(result.success ? [] : result.error.issues).toEqual([]);
});

describe.each(revisions)('$model $letter', (revision) => {
  test('its profile runs from nose to tail', () => {
    const profile = revision.profile.map(([xMm, halfHeightMm, halfWidthMm]) => ({ xMm, halfHeightMm, halfWidthMm }));
    expect(bodyProfileSchema.parse(profile)).toEqual(profile);
    expect(profile[0]?.xMm).toBe(0);
    expect(profile.at(-1)?.xMm).toBe(revision.lengthMm);
    for (const [index, { xMm }] of profile.entries()) expect(xMm).toBeGreaterThan(profile[index - 1]?.xMm ?? -1);
  });

  test('its anchors lie in the body, in holes they fit into', () => {
    for (const anchor of revision.anchors) {
      expect(anchor.xMm).toBeGreaterThanOrEqual(0);
      expect(anchor.xMm).toBeLessThanOrEqual(revision.lengthMm);
      expect(anchor.shankAngleDeg).toBeGreaterThanOrEqual(0);
      expect(anchor.shankAngleDeg).toBeLessThanOrEqual(90);
      const { embedmentMm, drillDepthMm, bitDiameterMm, wireDiameterMm } = anchor;
      expect(embedmentMm ?? 0).toBeLessThanOrEqual(drillDepthMm ?? 0);
      // Two strands side by side and a little room for glue; a screw eye cuts its own way, a through-wire has no hole.
      if (anchor.kind === 'twisted-wire') expect(bitDiameterMm).toBeGreaterThan(2 * (wireDiameterMm ?? 99));
    }
  });

  test('every need names an operation before it', () => {
    const keys = revision.route.map(({ key }) => key);
    for (const [index, { needs }] of revision.route.entries()) {
      for (const [after] of needs) expect(keys.slice(0, index)).toContain(after);
    }
  });

  test('every material it names is there', () => {
    const named = [
      revision.woodMaterialId,
      ...revision.bill.map(([materialId]) => materialId),
      ...revision.route.map(({ materialId }) => materialId),
      ...revision.anchors.flatMap((anchor) => [
        anchor.wireMaterialId,
        anchor.adhesiveMaterialId,
        anchor.hookMaterialId,
        anchor.splitRingMaterialId,
      ]),
    ];
    expect(named.filter((id) => id !== null && !materialIds.has(id))).toEqual([]);
  });
});

test('figures of strength that a new shop finds are such as a maker could have entered', () => {
  const strong = [...STARTING_MATERIALS, ...demoMaterials(demoTimes(0, 'UTC'))].flatMap(
    ({ strength }) => strength ?? [],
  );
  for (const figures of strong) expect(readStrengthFigures(figures.kind, figures.sheet)).toEqual(figures);
  const count = (kind: string) => strong.filter((figures) => figures.kind === kind).length;
  expect([count('wood'), count('wire'), count('screw-eye'), count('adhesive')]).toEqual([30, 26, 3, 8]);
});
