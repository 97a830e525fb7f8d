import 'server-only';
import { traceMixes } from '@/lib/batch/trace-mixes';
import type { Db } from '@/prisma/client';
import { type BatchHead, findBatchHead } from '@/prisma/data/batches';
import type { Lot } from '@/prisma/data/lots';
import {
  type LotMix,
  listBatchesOfLot,
  listMixesOfLot,
  listOrderNumbers,
  listTracedPulls,
  type TracedPull,
} from '@/prisma/data/trace';
import { foldedBatch } from './known-batches';

/** A piece that holds something of a lot, or may: of a lot taken for a whole batch every piece counts. */
export interface RecallPiece {
  readonly batch: BatchHead;
  readonly number: number;
  readonly isScrapped: boolean;
  /** The buyer's; empty where there is none. */
  readonly orderNumber: string;
  /** "Belly hanger (mix 2)", "Top coat (mix 3)"; empty when only the whole batch is known. */
  readonly places: readonly string[];
  readonly mixIds: readonly string[];
}

export interface Recall {
  readonly mixes: readonly LotMix[];
  readonly pieces: readonly RecallPiece[];
  readonly jointCount: number;
  readonly pulls: readonly TracedPull[];
  /** Each once, sorted; without the empty one. */
  readonly orderNumbers: readonly string[];
}

/** A lot, with what test boards name it by. */
export type RecalledLot = Pick<Lot, 'id' | 'materialId' | 'code'>;

/** Everything a lot went into: mixes, joints, pieces, pulls and buyers' orders. */
export async function recallOfLot(database: Db, { id: lotId, materialId, code }: RecalledLot): Promise<Recall> {
  const [mixes, direct] = [await listMixesOfLot(database, lotId), await listBatchesOfLot(database, lotId)];
  const mixIds = new Set(mixes.map((mix) => mix.mixId));
  const batchIds = [...new Set([...mixes.map((mix) => mix.batchId), ...direct.keys()])];
  const orders = await listOrderNumbers(database, batchIds);
  const pieces: RecallPiece[] = [];
  let jointCount = 0;
  for (const batchId of batchIds) {
    const batch = await findBatchHead(database, batchId);
    if (batch === null) continue;
    const { state, plan } = await foldedBatch(database, batch);
    const traced = new Map(traceMixes(state, mixIds).map((piece) => [piece.number, piece]));
    const numberOf = new Map(state.mixes.map((mix) => [mix.mixId, mix.number]));
    const anchorName = new Map(plan.anchors.map((anchor) => [anchor.id, anchor.name]));
    const operationName = new Map(plan.operations.map((operation) => [operation.id, operation.name]));
    const place = (name: string | undefined, mixId: string) =>
      `${name ?? 'removed'} (mix ${numberOf.get(mixId) ?? '?'})`;
    for (const { number, scrapped } of state.pieces) {
      const found = traced.get(number);
      if (found === undefined && !direct.has(batchId)) continue;
      const { joints = [], coats = [] } = found ?? {};
      jointCount += joints.length;
      pieces.push({
        batch,
        number,
        isScrapped: scrapped !== null,
        orderNumber: orders.get(batchId)?.get(number) ?? '',
        places: [
          ...joints.map(({ anchorId, mixId }) => place(anchorName.get(anchorId), mixId)),
          ...coats.map(({ operationId, mixId }) => place(operationName.get(operationId), mixId)),
        ],
        mixIds: [...new Set([...joints, ...coats].map(({ mixId }) => mixId))],
      });
    }
  }
  pieces.sort((a, b) => a.batch.number - b.batch.number || a.number - b.number);
  const asked = { mixIds: [...mixIds], batchIds, lot: { materialId, code } };
  const pulls = (await listTracedPulls(database, asked)).filter(
    ({ mixId, piece }) =>
      (mixId === null ? piece === null : mixIds.has(mixId)) ||
      pieces.some(({ batch, number }) => batch.id === piece?.batchId && number === piece.number),
  );
  const orderNumbers = [...new Set(pieces.map((piece) => piece.orderNumber))].filter((text) => text !== '').sort();
  return { mixes, pieces, jointCount, pulls, orderNumbers };
}
