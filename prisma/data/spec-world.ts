import { resolveWire } from '@/lib/materials/resolved-wire';
import { resolveWood } from '@/lib/materials/resolved-wood';
import type { SpecWorld } from '@/lib/spec/spec-world';
import type { WoodChoice } from '@/lib/strength/what-would-hold';
import type { WireChoice } from '@/lib/strength/wire-choice';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';
import { listRevisionIdsInUse, listSpecModels } from '@/prisma/data/spec-models';
import { readStrengthShelf, type StrengthShelf } from '@/prisma/data/strength-shelf';

/** The shop as the rules see it, and the shelf that its models were read with. */
export interface ReadSpecWorld {
  readonly world: SpecWorld;
  readonly shelf: StrengthShelf;
}

/** Everything the rules ask of the shop beside the model in hand. */
export async function readSpecWorld(reader: DbReader, now: Instant): Promise<ReadSpecWorld> {
  const shelf = await readStrengthShelf(reader);
  const { ruleFigures } = await getShop(reader);
  const inUse = await listSpecModels(reader, await listRevisionIdsInUse(reader), shelf);
  const world = {
    figures: ruleFigures,
    bondPulls: [],
    inUse,
    lotsInUse: await lotsInUse(reader),
    wires: wireChoices(shelf),
    woods: woodChoices(shelf),
    now,
  };
  return { world, shelf };
}

/** The lot of each adhesive that was opened last: of a two-part glue its resin. */
async function lotsInUse(reader: DbReader): Promise<(readonly [string, string])[]> {
  const rows = await reader.lot.findMany({
    where: { openedOn: { not: null }, part: { not: 'hardener' }, material: { kind: 'adhesive' } },
    select: { materialId: true, code: true },
    orderBy: [{ openedOn: 'asc' }, { receivedOn: 'asc' }, { code: 'asc' }],
  });
  return rows.map(({ materialId, code }) => [materialId, code] as const);
}

/** Wires a fix may offer: those in Stock whose strength is known. */
function wireChoices(shelf: StrengthShelf): WireChoice[] {
  return [...shelf.values()].flatMap(({ id, name, isArchived, figures }) => {
    if (isArchived || figures?.kind !== 'wire') return [];
    const resolved = resolveWire(figures.sheet, figures.sheet.diameterMm);
    return resolved.ok ? [{ id, name, wire: resolved.wire }] : [];
  });
}

/** Woods a fix may offer: those in Stock that need no weighing. */
function woodChoices(shelf: StrengthShelf): WoodChoice[] {
  return [...shelf.values()].flatMap(({ id, isArchived, figures }) => {
    if (isArchived || figures?.kind !== 'wood') return [];
    const resolved = resolveWood(figures.sheet, { weighedDensityKgM3: null, moisturePercent: null });
    return resolved.ok ? [{ id, wood: resolved.wood }] : [];
  });
}
