import { z } from 'zod';
import { LOT_PARTS, type LotPart } from '@/lib/contracts/material-forms';
import { fromMilli, STOCK_UNITS, type StockUnit } from '@/lib/stock/ledger';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';
import { leftMilliOf } from './stock';

/** One purchased container or bundle. Days are YYYY-MM-DD. */
export interface Lot {
  readonly id: string;
  readonly materialId: string;
  readonly materialName: string;
  readonly code: string;
  readonly part: LotPart;
  readonly quantity: number;
  readonly quantityUnit: StockUnit;
  readonly receivedOn: string;
  readonly openedOn: string | null;
  readonly expiresOn: string | null;
  readonly supplierNote: string;
  /** What is left by the book. */
  readonly left: number;
  readonly isUsedUp: boolean;
  /** Movements after the first receipt. */
  readonly movementCount: number;
  /** What was paid for all of it, in minor units of the shop's money; null: not written down. */
  readonly priceMinor: number | null;
  /** The data sheet that came with it, by its own name and its name in the data folder. */
  readonly sheetName: string | null;
  readonly sheetFile: string | null;
  readonly sheetOn: string | null;
  /** Mixes it went into. */
  readonly mixCount: number;
}

const partSchema = z.enum(LOT_PARTS);
const unitSchema = z.enum(STOCK_UNITS);

const COLUMNS = {
  id: true,
  materialId: true,
  code: true,
  part: true,
  quantity: true,
  quantityUnit: true,
  receivedOn: true,
  openedOn: true,
  expiresOn: true,
  supplierNote: true,
  priceMinor: true,
  sheetName: true,
  sheetFile: true,
  sheetOn: true,
  movedMilli: true,
  lastOrder: true,
  isUsedUp: true,
  material: { select: { name: true } },
  _count: { select: { mixLots: true } },
} as const;

interface LotRow extends Omit<Lot, 'materialName' | 'part' | 'quantityUnit' | 'mixCount' | 'left' | 'movementCount'> {
  readonly movedMilli: bigint;
  readonly lastOrder: number;
  readonly part: string;
  readonly quantityUnit: string;
  readonly material: { readonly name: string };
  readonly _count: { readonly mixLots: number };
}

function toLot({ material, _count, part, quantityUnit, movedMilli, lastOrder, ...row }: LotRow): Lot {
  return {
    ...row,
    materialName: material.name,
    part: partSchema.parse(part),
    quantityUnit: unitSchema.parse(quantityUnit),
    left: fromMilli(leftMilliOf({ quantity: row.quantity, movedMilli })),
    movementCount: lastOrder,
    mixCount: _count.mixLots,
  };
}

export interface LotSearch {
  /** Null: lots of all materials. */
  readonly materialId: string | null;
  /** A part of the code, in small or capital letters or as it is written; empty: all. */
  readonly text: string;
  /** Only lots with something left that expired before this day; null: all. */
  readonly expiredBefore: string | null;
  /** Without the lots of which nothing is left. */
  readonly hidesUsedUp?: boolean;
  /** From 0. */
  readonly page: number;
  readonly pageSize: number;
}

/** One page of lots, the last received first, and how many there are in all. */
export async function listLotPage(
  reader: DbReader,
  { materialId, text, expiredBefore, hidesUsedUp = false, page, pageSize }: LotSearch,
): Promise<{ lots: Lot[]; total: number }> {
  const where = {
    ...(materialId === null ? {} : { materialId }),
    ...(text === '' ? {} : { OR: spellings(text).map((contains) => ({ code: { contains } })) }),
    ...(expiredBefore === null ? {} : { expiresOn: { lt: expiredBefore } }),
    ...(hidesUsedUp || expiredBefore !== null ? { isUsedUp: false } : {}),
  };
  const total = await reader.lot.count({ where });
  const rows = await reader.lot.findMany({
    where,
    select: COLUMNS,
    orderBy: [{ receivedOn: 'desc' }, { code: 'asc' }, { id: 'asc' }],
    skip: page * pageSize,
    take: pageSize,
  });
  return { lots: rows.map(toLot), total };
}

/** Whether small and capital letters count as the same differs between the two engines. */
function spellings(text: string): string[] {
  return [...new Set([text, text.toLocaleUpperCase('en'), text.toLocaleLowerCase('en')])];
}

/** One lot, or null. */
export async function findLot(reader: DbReader, lotId: string): Promise<Lot | null> {
  const row = await reader.lot.findUnique({ where: { id: lotId }, select: COLUMNS });
  return row === null ? null : toLot(row);
}

/** Lots by id, for those that are there. */
export async function listLotsById(reader: DbReader, lotIds: readonly string[]): Promise<Map<string, Lot>> {
  const lots = new Map<string, Lot>();
  for (const ids of chunked([...new Set(lotIds)])) {
    const rows = await reader.lot.findMany({ where: { id: { in: ids } }, select: COLUMNS });
    for (const row of rows) lots.set(row.id, toLot(row));
  }
  return lots;
}

/** A lot with a price, as the cost of its material is told by it. */
export interface LotPrice {
  readonly id: string;
  readonly materialId: string;
  readonly part: LotPart;
  readonly unit: StockUnit;
  readonly priceMinor: number;
  readonly receivedOn: string;
}

/** The lots of materials that have a price, the newest first. */
export async function listPricedLots(reader: DbReader, materialIds: readonly string[]): Promise<LotPrice[]> {
  const lots: LotPrice[] = [];
  for (const ids of chunked(materialIds)) {
    const rows = await reader.lot.findMany({
      where: { materialId: { in: ids }, NOT: { priceMinor: null } },
      select: { id: true, materialId: true, part: true, quantityUnit: true, priceMinor: true, receivedOn: true },
      orderBy: [{ receivedOn: 'desc' }, { id: 'asc' }],
    });
    for (const { part, quantityUnit, priceMinor, ...row } of rows) {
      if (priceMinor === null) continue;
      lots.push({ ...row, part: partSchema.parse(part), unit: unitSchema.parse(quantityUnit), priceMinor });
    }
  }
  return lots;
}

/** Lots of materials with something left that have not expired: what expires first, then what came first. */
export async function listUsableLots(reader: DbReader, materialIds: readonly string[], today: string): Promise<Lot[]> {
  const lots: Lot[] = [];
  for (const materialId of new Set(materialIds)) {
    const rows = await reader.lot.findMany({
      where: { materialId, isUsedUp: false, OR: [{ expiresOn: null }, { expiresOn: { gte: today } }] },
      select: COLUMNS,
      orderBy: [{ receivedOn: 'asc' }, { id: 'asc' }],
    });
    const first = (lot: Lot) => lot.expiresOn ?? '9999-12-31';
    const sorted = rows.map(toLot).sort((a, b) => (first(a) < first(b) ? -1 : first(a) > first(b) ? 1 : 0));
    lots.push(...sorted);
  }
  return lots;
}
