import { z } from 'zod';
import { LOT_PARTS, type LotPart } from '@/lib/contracts/material-forms';
import { fromMilli, STOCK_UNITS, type StockUnit } from '@/lib/stock/ledger';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';
import { leftMilliOf } from './stock';

/** What is left of a material in all lots that hold the same part and are kept in the same unit. */
export interface OnHand {
  readonly part: LotPart;
  readonly unit: StockUnit;
  readonly left: number;
  readonly lotCount: number;
}

const partSchema = z.enum(LOT_PARTS);
const unitSchema = z.enum(STOCK_UNITS);

/** What is left of materials, by material id; those without lots are left out. */
export async function listOnHand(reader: DbReader, materialIds: readonly string[]): Promise<Map<string, OnHand[]>> {
  const found = new Map<string, OnHand[]>();
  for (const ids of chunked(materialIds)) {
    const rows = await reader.lot.groupBy({
      by: ['materialId', 'part', 'quantityUnit'],
      where: { materialId: { in: ids }, isUsedUp: false },
      _sum: { quantity: true, movedMilli: true },
      _count: true,
      orderBy: [{ materialId: 'asc' }, { part: 'desc' }, { quantityUnit: 'asc' }],
    });
    for (const { materialId, part, quantityUnit, _sum, _count } of rows) {
      const left = fromMilli(leftMilliOf({ quantity: _sum.quantity ?? 0, movedMilli: _sum.movedMilli ?? 0n }));
      const line = { part: partSchema.parse(part), unit: unitSchema.parse(quantityUnit), left, lotCount: _count };
      found.set(materialId, [...(found.get(materialId) ?? []), line]);
    }
  }
  return found;
}
