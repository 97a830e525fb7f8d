import type { DbReader } from '@/prisma/client';

/** Whose order a batch is, and lines like `7-12 4711` for pieces of another. */
export interface PieceOrders {
  readonly orderNumber: string;
  readonly lines: readonly string[];
}

/** The order numbers of a batch as they are typed; empty for a batch that is not there. */
export async function listPieceOrders(reader: DbReader, batchId: string): Promise<PieceOrders> {
  const batch = await reader.batch.findUnique({ where: { id: batchId }, select: { orderNumber: true } });
  const pieces = await reader.piece.findMany({
    where: { batchId, NOT: { orderNumber: null } },
    select: { number: true, orderNumber: true },
    orderBy: { number: 'asc' },
  });
  const ranges: { from: number; to: number; orderNumber: string }[] = [];
  for (const { number, orderNumber } of pieces) {
    const last = ranges.at(-1);
    if (last !== undefined && last.to === number - 1 && last.orderNumber === orderNumber) last.to = number;
    else if (orderNumber !== null) ranges.push({ from: number, to: number, orderNumber });
  }
  const lines = ranges.map(({ from, to, orderNumber }) => `${from === to ? from : `${from}-${to}`} ${orderNumber}`);
  return { orderNumber: batch?.orderNumber ?? '', lines };
}
