import type { MixState } from '@/lib/batch/batch-state';
import type { Tx } from '@/prisma/client';
import { appendMovements, listLotBooks } from '@/prisma/data/stock';
import { takeForMixes } from '@/prisma/data/take-for-mixes';
import { demoId } from './demo-id';
import { DEMO_BUYING, DEMO_ORDERS, demoDraft, demoMoves } from './demo-stock';
import type { DemoTimes } from './demo-times';

/** The cups of a batch of the demo. */
export interface DemoCups {
  readonly batchId: string;
  readonly mixes: readonly MixState[];
}

/** Writes the movements of the demo's lots, what its cups took, how its materials are bought, and whose orders they are. */
export async function insertStock(tx: Tx, times: DemoTimes, cups: readonly DemoCups[]): Promise<void> {
  for (const move of demoMoves(times)) {
    const book = (await listLotBooks(tx, [move.lotId])).get(move.lotId);
    if (book === undefined) throw new Error(`the demo movement ${move.id} names a lot that is not there`);
    const { id, batchNumber, personId, reason, at } = move;
    const batchId = batchNumber === null ? null : demoId(`batch-${batchNumber}`);
    const none = { mixId: null, priceMinor: null, correctsId: null };
    await appendMovements(tx, book, [
      { ...demoDraft(move, book.leftMilli), ...none, id, batchId, personId, reason, at, key: id },
    ]);
  }
  const poured = cups
    .flatMap(({ batchId, mixes }) => mixes.map((mix) => ({ batchId, mix })))
    .sort((a, b) => a.mix.mixedAt - b.mix.mixedAt);
  for (const { batchId, mix } of poured) {
    const { seq, personId, mixedAt: at } = mix;
    await takeForMixes(tx, { batchId, seq, personId, at }, { standing: [mix], removed: [] });
  }
  for (const [id, data] of Object.entries(DEMO_BUYING)) await tx.material.updateMany({ where: { id }, data });
  for (const { batchNumber, orderNumber, pieces } of DEMO_ORDERS) {
    const batchId = demoId(`batch-${batchNumber}`);
    await tx.batch.updateMany({ where: { id: batchId }, data: { orderNumber } });
    if (pieces === undefined) continue;
    const where = { batchId, number: { gte: pieces.from } };
    await tx.piece.updateMany({ where, data: { orderNumber: pieces.orderNumber } });
  }
}
