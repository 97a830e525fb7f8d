import { toMilli } from '@/lib/stock/ledger';
import type { UseLine } from '@/lib/stock/lot-costs';
import type { DbReader } from '@/prisma/client';
import { chunked } from './batches';

/** The book of a lot as its cost is told by it. */
export interface LotLines {
  /** All that ever came of it, corrections of receipts included, in thousandths. */
  readonly receivedMilli: number;
  /** Everything else, in the order of the book. */
  readonly lines: readonly UseLine[];
}

/** The books of lots, by id. */
export async function listLotLines(reader: DbReader, lotIds: readonly string[]): Promise<Map<string, LotLines>> {
  const books = new Map<string, { receivedMilli: number; lines: UseLine[] }>();
  for (const ids of chunked([...new Set(lotIds)])) {
    const lots = await reader.lot.findMany({ where: { id: { in: ids } }, select: { id: true, quantity: true } });
    for (const { id, quantity } of lots) books.set(id, { receivedMilli: toMilli(quantity), lines: [] });
    const rows = await reader.stockMovement.findMany({
      where: { lotId: { in: ids } },
      select: { lotId: true, kind: true, quantityMilli: true, batchId: true, corrects: { select: { kind: true } } },
      orderBy: [{ lotId: 'asc' }, { order: 'asc' }],
    });
    for (const { lotId, kind, quantityMilli, batchId, corrects } of rows) {
      const book = books.get(lotId);
      if (book === undefined) continue;
      if (kind === 'receipt' || corrects?.kind === 'receipt') book.receivedMilli += Number(quantityMilli);
      else book.lines.push({ batchId, takenMilli: -Number(quantityMilli) });
    }
  }
  return books;
}
