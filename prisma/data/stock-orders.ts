import { z } from 'zod';
import { STOCK_UNITS, type StockUnit } from '@/lib/stock/ledger';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';

/** Something ordered that has not come yet. */
export interface StockOrder {
  readonly id: string;
  readonly materialId: string;
  /** Both parts of a glue together. */
  readonly milli: number;
  readonly unit: StockUnit;
  /** YYYY-MM-DD. */
  readonly expectedOn: string;
  readonly note: string;
}

const unitSchema = z.enum(STOCK_UNITS);

/** Orders of materials, the first to come in front. */
export async function listStockOrders(reader: DbReader, materialIds: readonly string[]): Promise<StockOrder[]> {
  const orders: StockOrder[] = [];
  for (const ids of chunked([...new Set(materialIds)])) {
    const rows = await reader.stockOrder.findMany({
      where: { materialId: { in: ids } },
      select: { id: true, materialId: true, quantityMilli: true, quantityUnit: true, expectedOn: true, note: true },
      orderBy: [{ expectedOn: 'asc' }, { createdAt: 'asc' }],
    });
    for (const { quantityMilli, quantityUnit, ...row } of rows) {
      orders.push({ ...row, milli: Number(quantityMilli), unit: unitSchema.parse(quantityUnit) });
    }
  }
  return orders;
}
