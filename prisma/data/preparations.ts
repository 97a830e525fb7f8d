import type { StockLength } from '@/lib/bom/cut-list';
import { preparationSchema, weighedOnlySchema } from '@/lib/contracts/preparation';
import type { Preparation, WeighedCard } from '@/lib/prepare/preparation';
import { fromMilli } from '@/lib/stock/ledger';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { leftMilliOf } from './stock';
import { wireGPerMm } from './wire-mass';

/** How a batch was prepared last, and what of it is ticked off. */
export interface StoredPreparation {
  readonly id: string;
  readonly number: number;
  readonly madeAt: Instant;
  readonly body: Preparation;
  /** Items ticked off, with who did it and when. */
  readonly ticks: ReadonlyMap<string, { readonly at: Instant; readonly personName: string | null }>;
}

/** The newest preparation of a batch; null where there is none, or none that this version can read. */
export async function findPreparation(reader: DbReader, batchId: string): Promise<StoredPreparation | null> {
  const row = await reader.preparation.findFirst({
    where: { batchId },
    orderBy: { number: 'desc' },
    include: { ticks: { select: { item: true, at: true, person: { select: { name: true } } } } },
  });
  if (row === null) return null;
  const body = preparationSchema.safeParse(row.body);
  if (!body.success) return null;
  const ticks = new Map(
    row.ticks.map(({ item, at, person }) => [item, { at: at.getTime(), personName: person?.name ?? null }]),
  );
  return { id: row.id, number: row.number, madeAt: row.madeAt.getTime(), body: body.data, ticks };
}

/**
 * What is left of wires: each lot that is not used up is one length, the oldest first. A lot kept by weight counts by the
 * wire's diameter and density, to the whole millimetre below, and is left out where they are not known.
 */
export async function listWireLengths(
  reader: DbReader,
  materialIds: readonly string[],
): Promise<Map<string, StockLength[]>> {
  const rows = await reader.lot.findMany({
    where: { materialId: { in: [...new Set(materialIds)] }, quantityUnit: { in: ['mm', 'g'] }, isUsedUp: false },
    select: { id: true, materialId: true, quantity: true, quantityUnit: true, movedMilli: true },
    orderBy: [{ receivedOn: 'asc' }, { code: 'asc' }],
  });
  const gPerMm = await wireGPerMm(reader, materialIds);
  const lengths = new Map<string, StockLength[]>();
  for (const row of rows) {
    const left = fromMilli(leftMilliOf(row));
    const perMm = row.quantityUnit === 'mm' ? 1 : gPerMm.get(row.materialId);
    if (perMm === undefined) continue;
    const lengthMm = perMm === 1 ? left : Math.floor(left / perMm);
    if (lengthMm <= 0) continue;
    lengths.set(row.materialId, [...(lengths.get(row.materialId) ?? []), { id: row.id, lengthMm, count: 1 }]);
  }
  return lengths;
}

/** Preparations that a shop's own waste is taken from. Chosen: a hand changes, and older ones no longer tell. */
const WEIGHED_OF_LATEST = 50;

/** What was weighed back after the latest preparations of all batches, the newest first. */
export async function listWeighed(reader: DbReader): Promise<WeighedCard[]> {
  const rows = await reader.preparation.findMany({
    select: { body: true },
    orderBy: [{ madeAt: 'desc' }, { id: 'asc' }],
    take: WEIGHED_OF_LATEST,
  });
  return rows.flatMap(({ body }) => {
    const parsed = weighedOnlySchema.safeParse(body);
    return parsed.success ? parsed.data.weighed : [];
  });
}
