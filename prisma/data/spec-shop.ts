import { specSettingsOf } from '@/lib/spec/rule-figures';
import { wireHabits } from '@/lib/spec/shop-use';
import type { SpecShop } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { listPulledBonds } from '@/prisma/data/pulled-bonds';
import { getShop } from '@/prisma/data/shop';
import { listRevisionIdsInUse, listSpecModels } from '@/prisma/data/spec-models';
import { readStrengthShelf, type StrengthShelf } from '@/prisma/data/strength-shelf';

/** The shop as the rules see it, with what it was read from. */
export interface ReadSpecShop {
  readonly shop: SpecShop;
  readonly shelf: StrengthShelf;
  /** The newest revision of every model in use, by model name. */
  readonly inUse: readonly SpecModel[];
}

/** Everything the rules ask of the shop beside the model in hand. */
export async function readSpecShop(reader: DbReader, now: Instant): Promise<ReadSpecShop> {
  const shelf = await readStrengthShelf(reader);
  const { ruleFigures } = await getShop(reader);
  const inUse = await listSpecModels(reader, await listRevisionIdsInUse(reader), shelf);
  const offered = [...shelf.values()].filter((material) => !material.isArchived);
  const settings = specSettingsOf(ruleFigures);
  const shop: SpecShop = {
    settings,
    bonds: await listPulledBonds(reader, shelf, settings.strength),
    habits: wireHabits(inUse),
    lotsInUse: await lotsInUse(reader),
    wires: offered.flatMap(({ id, name, figures }) =>
      figures?.kind === 'wire' ? [{ materialId: id, name, sheet: figures.sheet }] : [],
    ),
    woods: offered.flatMap(({ id, name, figures }) =>
      figures?.kind === 'wood'
        ? [{ materialId: id, name, sheet: figures.sheet, weighedDensityKgM3: null, moisturePercent: null }]
        : [],
    ),
    now,
  };
  return { shop, shelf, inUse };
}

/** The lot of each adhesive that was opened last: of a two-part glue its resin. */
async function lotsInUse(reader: DbReader): Promise<SpecShop['lotsInUse']> {
  const rows = await reader.lot.findMany({
    where: { openedOn: { not: null }, part: { not: 'hardener' }, material: { kind: 'adhesive' } },
    select: { materialId: true, code: true },
    orderBy: [{ openedOn: 'asc' }, { receivedOn: 'asc' }, { code: 'asc' }],
  });
  const latest = new Map(rows.map(({ materialId, code }) => [materialId, code]));
  return [...latest].map(([materialId, lotCode]) => ({ materialId, lotCode }));
}
