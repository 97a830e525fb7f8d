import 'server-only';
import type { BatchPlan } from '@/lib/batch/plan';
import type { LotPart } from '@/lib/contracts/material-forms';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { partMilli, partNeeds, stillNeeded } from '@/lib/stock/batch-need';
import type { StockUnit } from '@/lib/stock/ledger';
import { type Need, type Outlook, outlook } from '@/lib/stock/shortages';
import { wallTimeAt } from '@/lib/units/zoned-time';
import type { Db } from '@/prisma/client';
import {
  listBillNeeds,
  listStockedMaterials,
  needKey,
  type StockedMaterial,
  takenByOpenBatches,
} from '@/prisma/data/batch-needs';
import { listOpenBatchHeads } from '@/prisma/data/batches';
import { getShop } from '@/prisma/data/shop';
import { listStockOrders, type StockOrder } from '@/prisma/data/stock-orders';
import { acceptedPlan } from './accepted-plan';
import { type FoldedBatch, foldedBatches } from './known-batches';

/** One thing that batches take or that is watched: a material, or one part of it. */
export interface OutlookLine {
  readonly material: StockedMaterial;
  readonly part: LotPart;
  readonly unit: StockUnit;
  /** Null: what is needed of it cannot be told; the mixing ratio is missing. */
  readonly outlook: Outlook | null;
  /** Open batches that still need some, the first to take first. */
  readonly needs: readonly Need[];
  /** What is ordered of the material, both parts together, the first to come in front. */
  readonly orders: readonly StockOrder[];
}

/** How many pieces of a batch are not scrapped. */
export function livePieces({ state }: Pick<FoldedBatch, 'state'>): number {
  return state.pieces.filter((piece) => piece.scrapped === null).length;
}

/**
 * What open batches still need of everything and whether it is there. Reservations are not stored: a batch reserves
 * its bill less what it took, as it stands now, so a scrapped piece, a correction or a finished batch frees stock at
 * once and nothing can be left reserved by mistake.
 */
export async function stockOutlook(database: Db, today: string): Promise<OutlookLine[]> {
  const heads = await listOpenBatchHeads(database);
  const folded = await foldedBatches(database, heads);
  const bills = await listBillNeeds(
    database,
    heads.map((head) => head.revisionId),
  );
  const taken = await takenByOpenBatches(database);
  const [visits, { timeZone }] = [await comingVisits(database), await getShop(database)];
  const needs = new Map<string, Need[]>();
  for (const [index, head] of heads.entries()) {
    const batch = folded[index];
    if (batch === undefined) continue;
    const pieces = livePieces(batch);
    for (const { revisionId, materialId, unit, perPieceMilli } of bills) {
      if (revisionId !== head.revisionId) continue;
      const milli = stillNeeded(perPieceMilli, pieces, taken.get(needKey(head.id, materialId, unit)) ?? 0);
      if (milli === 0) continue;
      const neededOn = plannedDay(batch.plan, visits.get(head.id) ?? [], materialId, timeZone) ?? head.dueOn;
      const key = `${materialId} ${unit}`;
      needs.set(key, [...(needs.get(key) ?? []), { batchId: head.id, batchNumber: head.number, neededOn, milli }]);
    }
  }
  const materials = await listStockedMaterials(
    database,
    [...needs.keys()].map((key) => key.split(' ')[0] ?? ''),
  );
  const orders = await listStockOrders(
    database,
    materials.map(({ id }) => id),
  );
  return materials.flatMap((material) => {
    const own = orders.filter(({ materialId }) => materialId === material.id);
    return linesOf(material, needs, today).map((line) => ({
      ...line,
      orders: own.filter(({ unit }) => unit === line.unit),
    }));
  });
}

/** What is still planned of each batch, by the plan that was accepted, the first to come in front. */
async function comingVisits(database: Db): Promise<Map<string, PlannedVisit[]>> {
  const plan = await acceptedPlan(database);
  const coming = new Map<string, PlannedVisit[]>();
  for (const visit of plan?.timetable.visits ?? []) {
    if (visit.state !== 'open' && visit.state !== 'pinned') continue;
    coming.set(visit.batchId, [...(coming.get(visit.batchId) ?? []), visit]);
  }
  for (const visits of coming.values()) visits.sort((a, b) => a.startAt - b.startAt);
  return coming;
}

/**
 * The day a material is needed by the plan: a glue or coat at the first visit that uses it, everything else at the
 * batch's next visit, as nothing says which step takes it. Null: the plan does not say.
 */
function plannedDay(
  { operations }: BatchPlan,
  visits: readonly PlannedVisit[],
  materialId: string,
  timeZone: string,
): string | null {
  const using = new Set(operations.filter((one) => one.materialId === materialId).map((one) => one.id));
  const visit = using.size === 0 ? visits[0] : visits.find(({ operationId }) => using.has(operationId));
  return visit === undefined ? null : wallTimeAt(visit.startAt, timeZone).day;
}

function linesOf(
  material: StockedMaterial,
  all: ReadonlyMap<string, readonly Need[]>,
  today: string,
): Omit<OutlookLine, 'orders'>[] {
  const units = new Set<StockUnit>(
    (['g', 'mm', 'pieces'] as const).filter((unit) => all.has(`${material.id} ${unit}`) || unit === material.stockUnit),
  );
  return [...units].flatMap((unit) => {
    const needs = all.get(`${material.id} ${unit}`) ?? [];
    const lots = material.lots.filter((lot) => lot.unit === unit);
    const split = partNeeds(0, material.sheet, material.boughtParts);
    if (!split.ok) return [{ material, unit, part: 'whole' as const, outlook: null, needs }];
    return split.parts.map(({ part }): Omit<OutlookLine, 'orders'> => {
      const ofPart = needs.map((need) => ({
        ...need,
        milli: partMilli(need.milli, material.sheet, material.boughtParts, part),
      }));
      const kept = lots.filter((lot) => lot.part === part);
      return { material, unit, part, outlook: outlook(today, kept, ofPart), needs: ofPart };
    });
  });
}
