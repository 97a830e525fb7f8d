import 'server-only';
import { billOf } from '@/lib/bom/bill';
import { type Cost, costOf } from '@/lib/bom/cost';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { fromMilli, type StockUnit } from '@/lib/stock/ledger';
import { type PricedLot, type UnitPrice, unitPrice } from '@/lib/stock/unit-price';
import type { Db } from '@/prisma/client';
import { listLotLines } from '@/prisma/data/lot-lines';
import { type LotPrice, listPricedLots } from '@/prisma/data/lots';
import { listBuying } from '@/prisma/data/materials';
import { findSheetMaterial } from '@/prisma/data/mix-materials';
import type { Revision } from '@/prisma/data/revisions';

/** Of how many pieces, with what share spoilt, at what hourly rate. */
export interface CostQuestion {
  readonly goodPieces: number;
  /** Spoilt at the end of the route, 0 to below 1. */
  readonly scrapShare: number;
  /** Spoilt at single operations, by their id, 0 to below 1. */
  readonly scrapAt: ReadonlyMap<string, number>;
  readonly labourPerHourMinor: number | null;
}

/** One part of the cost of a batch. */
export interface CostPart {
  readonly id: string;
  readonly name: string;
  readonly kind: 'material' | 'labour';
  /** Of the whole batch, scrap included; null for labour. */
  readonly quantity: number | null;
  readonly unit: StockUnit | null;
  readonly price: UnitPrice | null;
  /** Null: no price is known. */
  readonly minor: number | null;
}

export interface ModelCost {
  readonly cost: Cost;
  readonly startPieces: number;
  /** Of a piece that is not spoilt. */
  readonly attendedMinutesEach: number;
  /** The dearest first, those without a price last. */
  readonly parts: readonly CostPart[];
}

/**
 * What a batch of a revision would cost at standard prices. A spoilt piece took the time of every step up to the one that
 * spoilt it, and the material that these steps name; what no step names it took at the start. The good ones pay for it.
 */
export async function modelCost(database: Db, revision: Revision, question: CostQuestion): Promise<ModelCost> {
  const { goodPieces, scrapShare, scrapAt, labourPerHourMinor } = question;
  const needs = revision.billLines.map((line) => ({
    id: line.id,
    materialId: line.material.id,
    name: line.material.name,
    unit: line.quantityUnit,
    perPiece: line.quantity,
    operationId: revision.operations.find(({ material }) => material?.id === line.material.id)?.id ?? null,
  }));
  const route = revision.operations.map(({ id }) => ({ id, scrapShare: scrapAt.get(id) ?? 0 }));
  const bill = billOf(goodPieces, [...route, { id: 'end', scrapShare }], needs);
  const prices = await standardPrices(database, needs);
  const attendedMinutesEach = revision.operations.reduce((sum, operation) => sum + operation.attendedMinutes, 0);
  const priced = needs.map((need, index) => {
    const price = prices.get(`${need.materialId} ${need.unit}`) ?? NO_PRICE;
    return { ...need, price, total: bill.lines[index]?.total ?? 0 };
  });
  const cost = costOf({
    materials: priced.flatMap(({ id, price, total }) =>
      price.ok ? [{ id, quantity: total, unitCostMinor: price.minor }] : [],
    ),
    labour:
      labourPerHourMinor === null ? [] : [{ id: 'labour', attendedMinutes: attendedMinutes(revision, bill.piecesAt) }],
    labourPerHourMinor: labourPerHourMinor ?? 0,
    overheadMinor: 0,
    goodPieces,
  });
  const minorOf = new Map(cost.lines.map((line) => [line.id, line.minor]));
  const parts: CostPart[] = [
    ...priced.map(({ id, name, unit, price, total }) => ({
      id,
      name,
      kind: 'material' as const,
      quantity: total,
      unit,
      price,
      minor: minorOf.get(id) ?? null,
    })),
    {
      id: 'labour',
      name: 'Attended work',
      kind: 'labour',
      quantity: null,
      unit: null,
      price: null,
      minor: minorOf.get('labour') ?? null,
    },
  ];
  parts.sort((a, b) => (b.minor ?? -1) - (a.minor ?? -1));
  return { cost, startPieces: bill.startPieces, attendedMinutesEach, parts };
}

function attendedMinutes(revision: Revision, piecesAt: readonly number[]): number {
  return revision.operations.reduce((sum, operation, at) => sum + operation.attendedMinutes * (piecesAt[at] ?? 0), 0);
}

const NO_PRICE: UnitPrice = { ok: false, code: 'no-price' };

/** Standard prices by `material unit`. */
async function standardPrices(
  database: Db,
  needs: readonly { readonly materialId: string; readonly unit: StockUnit }[],
): Promise<Map<string, UnitPrice>> {
  const ids = [...new Set(needs.map((need) => need.materialId))];
  const [buying, lots] = [await listBuying(database, ids), newestOfEach(await listPricedLots(database, ids))];
  const books = await listLotLines(
    database,
    lots.map((lot) => lot.id),
  );
  const sheets = new Map<string, AdhesiveSheet | null>();
  for (const id of ids) sheets.set(id, (await findSheetMaterial(database, id))?.sheet ?? null);
  return new Map(
    needs.map(({ materialId, unit }): [string, UnitPrice] => {
      const how = buying.get(materialId);
      const isSameUnit = how?.stockUnit === unit;
      const own = lots
        .filter((lot) => lot.materialId === materialId && lot.unit === unit)
        .map((lot): PricedLot => ({ ...lot, received: fromMilli(books.get(lot.id)?.receivedMilli ?? 0) }));
      const pack = isSameUnit
        ? { quantity: how.packQuantity, priceMinor: how.packPriceMinor }
        : { quantity: null, priceMinor: null };
      return [`${materialId} ${unit}`, unitPrice(pack, sheets.get(materialId) ?? null, own)];
    }),
  );
}

/** Of lots with the newest first, the newest of each material, part and unit. */
function newestOfEach(lots: readonly LotPrice[]): LotPrice[] {
  const newest = new Map<string, LotPrice>();
  for (const lot of lots) {
    const key = `${lot.materialId} ${lot.part} ${lot.unit}`;
    if (!newest.has(key)) newest.set(key, lot);
  }
  return [...newest.values()];
}
