import { z } from 'zod';
import { LOT_PARTS, type LotPart } from '@/lib/contracts/material-forms';
import type { DbReader } from '@/prisma/client';
import { BILL_UNITS, type BillUnit } from '@/prisma/data/revisions';

/** One purchased container or bundle. Days are YYYY-MM-DD. */
export interface Lot {
  readonly id: string;
  readonly materialId: string;
  readonly materialName: string;
  readonly code: string;
  readonly part: LotPart;
  readonly quantity: number;
  readonly quantityUnit: BillUnit;
  readonly receivedOn: string;
  readonly openedOn: string | null;
  readonly expiresOn: string | null;
  readonly supplierNote: string;
  /** Mixes it went into. */
  readonly mixCount: number;
}

const partSchema = z.enum(LOT_PARTS);
const unitSchema = z.enum(BILL_UNITS);

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
  material: { select: { name: true } },
  _count: { select: { mixLots: true } },
} as const;

interface LotRow extends Omit<Lot, 'materialName' | 'part' | 'quantityUnit' | 'mixCount'> {
  readonly part: string;
  readonly quantityUnit: string;
  readonly material: { readonly name: string };
  readonly _count: { readonly mixLots: number };
}

function toLot({ material, _count, part, quantityUnit, ...row }: LotRow): Lot {
  return {
    ...row,
    materialName: material.name,
    part: partSchema.parse(part),
    quantityUnit: unitSchema.parse(quantityUnit),
    mixCount: _count.mixLots,
  };
}

export interface LotSearch {
  /** Null: lots of all materials. */
  readonly materialId: string | null;
  /** A part of the code, in small or capital letters or as it is written; empty: all. */
  readonly text: string;
  /** Only lots that expired before this day; null: all. */
  readonly expiredBefore: string | null;
  /** From 0. */
  readonly page: number;
  readonly pageSize: number;
}

/** One page of lots, the last received first, and how many there are in all. */
export async function listLotPage(
  reader: DbReader,
  { materialId, text, expiredBefore, page, pageSize }: LotSearch,
): Promise<{ lots: Lot[]; total: number }> {
  const where = {
    ...(materialId === null ? {} : { materialId }),
    ...(text === '' ? {} : { OR: spellings(text).map((contains) => ({ code: { contains } })) }),
    ...(expiredBefore === null ? {} : { expiresOn: { lt: expiredBefore } }),
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
