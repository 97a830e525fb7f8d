import 'server-only';
import { type Cost, costOf } from '@/lib/bom/cost';
import { stillNeeded } from '@/lib/stock/batch-need';
import { fromMilli, type StockUnit } from '@/lib/stock/ledger';
import { lotCosts } from '@/lib/stock/lot-costs';
import type { Db } from '@/prisma/client';
import { listBillNeeds, needKey, takenByBatches } from '@/prisma/data/batch-needs';
import { type BatchHead, findBatchHead } from '@/prisma/data/batches';
import { getCostRates } from '@/prisma/data/cost-rates';
import { listLotLines } from '@/prisma/data/lot-lines';
import { type Lot, listLotsById } from '@/prisma/data/lots';
import { listMaterialNames } from '@/prisma/data/materials';
import { listLotsOfBatch } from '@/prisma/data/trace';
import { foldedBatch } from './known-batches';
import { livePieces } from './stock-outlook';

/** What a batch took of a lot, and what that cost; null: the lot has no price. */
export interface LotUse {
  readonly lot: Lot;
  readonly taken: number;
  readonly costMinor: number | null;
}

/** What the bill asks for, and what was taken of it. */
export interface BillUse {
  readonly materialId: string;
  readonly materialName: string;
  readonly unit: StockUnit;
  readonly needed: number;
  readonly taken: number;
  readonly missing: number;
}

export interface BatchCost {
  readonly batch: BatchHead;
  readonly goodPieces: number;
  readonly uses: readonly LotUse[];
  readonly bill: readonly BillUse[];
  /** Null: nobody has said what an hour costs. */
  readonly labourPerHourMinor: number | null;
  readonly attendedMinutes: number;
  /** Of all lots with a price, and of labour where its rate is known. */
  readonly cost: Cost;
}

/** What a batch really took and cost, by lot; null when there is no such batch. */
export async function loadBatchCost(database: Db, batchId: string): Promise<BatchCost | null> {
  const batch = await findBatchHead(database, batchId);
  if (batch === null) return null;
  const folded = await foldedBatch(database, batch);
  const goodPieces = livePieces(folded);
  const uses = await lotUses(database, batchId);
  const { labourPerHourMinor } = await getCostRates(database);
  const attendedMinutes = doneMinutes(folded);
  const cost = costOf({
    materials: uses.flatMap(({ lot, costMinor }) =>
      costMinor === null ? [] : [{ id: lot.id, quantity: 1, unitCostMinor: Math.max(0, costMinor) }],
    ),
    labour: labourPerHourMinor === null ? [] : [{ id: 'labour', attendedMinutes }],
    labourPerHourMinor: labourPerHourMinor ?? 0,
    overheadMinor: 0,
    goodPieces,
  });
  const bill = await billUses(database, batch, goodPieces);
  return { batch, goodPieces, uses, bill, labourPerHourMinor, attendedMinutes, cost };
}

async function lotUses(database: Db, batchId: string): Promise<LotUse[]> {
  const taken = await listLotsOfBatch(database, batchId);
  const lotIds = taken.map((use) => use.lotId);
  const [lots, lines] = [await listLotsById(database, lotIds), await listLotLines(database, lotIds)];
  return taken.flatMap(({ lotId, takenMilli }): LotUse[] => {
    const [lot, book] = [lots.get(lotId), lines.get(lotId)];
    if (lot === undefined || book === undefined) return [];
    const isPriced = lot.priceMinor !== null && book.receivedMilli > 0;
    const costs = isPriced ? lotCosts(lot.priceMinor, book.receivedMilli, book.lines) : null;
    return [{ lot, taken: fromMilli(takenMilli), costMinor: costs === null ? null : (costs.get(batchId) ?? 0) }];
  });
}

/** Attended minutes of what was done, by the route's minutes a piece; nobody stops the time at the bench. */
function doneMinutes({ plan, state }: Awaited<ReturnType<typeof foldedBatch>>): number {
  const minutes = new Map(plan.operations.map((operation) => [operation.id, operation.attendedMinutes]));
  return state.pieces
    .flatMap((piece) => piece.operations)
    .filter((operation) => operation.status === 'done')
    .reduce((sum, operation) => sum + (minutes.get(operation.operationId) ?? 0), 0);
}

async function billUses(database: Db, batch: BatchHead, goodPieces: number): Promise<BillUse[]> {
  const needs = await listBillNeeds(database, [batch.revisionId]);
  const taken = await takenByBatches(database, [batch.id]);
  const names = await listMaterialNames(
    database,
    needs.map((need) => need.materialId),
  );
  return needs.map(({ materialId, unit, perPieceMilli }) => {
    const took = taken.get(needKey(batch.id, materialId, unit)) ?? 0;
    return {
      materialId,
      materialName: names.get(materialId) ?? 'a removed material',
      unit,
      needed: fromMilli(perPieceMilli * goodPieces),
      taken: fromMilli(took),
      missing: fromMilli(stillNeeded(perPieceMilli, goodPieces, took)),
    };
  });
}
