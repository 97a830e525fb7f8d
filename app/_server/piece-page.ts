import 'server-only';
import type { MixState } from '@/lib/batch/batch-state';
import { traceMixes } from '@/lib/batch/trace-mixes';
import { fromMilli } from '@/lib/stock/ledger';
import type { Db } from '@/prisma/client';
import { type BatchHead, findBatchHead } from '@/prisma/data/batches';
import { type Lot, listLotsById } from '@/prisma/data/lots';
import { listLotsOfBatch, listOrderNumbers, listTracedPulls, type TracedPull } from '@/prisma/data/trace';
import { foldedBatch } from './known-batches';

/** Something glued or coated in a piece, and out of which cup. */
export interface PiecePlace {
  readonly name: string;
  readonly mix: MixState;
  readonly isLate: boolean;
  readonly lots: readonly Lot[];
}

export interface PieceContents {
  readonly batch: BatchHead;
  readonly orderNumber: string;
  readonly scrapReason: string | null;
  readonly places: readonly PiecePlace[];
  /** Lots taken for the batch as a whole, with what it took. */
  readonly batchLots: readonly { readonly lot: Lot; readonly taken: number }[];
  readonly done: readonly { readonly name: string; readonly at: number }[];
  readonly pulls: readonly TracedPull[];
}

/** Everything in a piece; null when the batch has no such piece. */
export async function loadPiece(database: Db, batchId: string, number: number): Promise<PieceContents | null> {
  const batch = await findBatchHead(database, batchId);
  if (batch === null) return null;
  const { state, plan } = await foldedBatch(database, batch);
  const piece = state.pieces.find((candidate) => candidate.number === number);
  if (piece === undefined) return null;
  const traced = traceMixes(state, null).find((candidate) => candidate.number === number);
  const taken = (await listLotsOfBatch(database, batchId)).filter((lot) => lot.takenMilli !== lot.inMixesMilli);
  const mixes = new Map(state.mixes.map((mix) => [mix.mixId, mix]));
  const lots = await listLotsById(database, [
    ...taken.map((lot) => lot.lotId),
    ...state.mixes.flatMap((mix) => mix.lotIds),
  ]);
  const place = (name: string, mixId: string, isLate: boolean): PiecePlace[] => {
    const mix = mixes.get(mixId);
    if (mix === undefined) return [];
    return [{ name, mix, isLate, lots: mix.lotIds.flatMap((id) => lots.get(id) ?? []) }];
  };
  const anchorName = new Map(plan.anchors.map((anchor) => [anchor.id, anchor.name]));
  const operationName = new Map(plan.operations.map((operation) => [operation.id, operation.name]));
  const mixIds = [...new Set([...(traced?.joints ?? []), ...(traced?.coats ?? [])].map(({ mixId }) => mixId))];
  return {
    batch,
    orderNumber: (await listOrderNumbers(database, [batchId])).get(batchId)?.get(number) ?? '',
    scrapReason: piece.scrapped?.reason ?? null,
    places: [
      ...(traced?.joints ?? []).flatMap((joint) =>
        place(anchorName.get(joint.anchorId) ?? 'Joint', joint.mixId, joint.isLate),
      ),
      ...(traced?.coats ?? []).flatMap((coat) =>
        place(operationName.get(coat.operationId) ?? 'Coat', coat.mixId, coat.isLate),
      ),
    ],
    batchLots: taken.flatMap(({ lotId, takenMilli, inMixesMilli }) => {
      const lot = lots.get(lotId);
      return lot === undefined ? [] : [{ lot, taken: fromMilli(takenMilli - inMixesMilli) }];
    }),
    done: piece.operations.flatMap(({ operationId, doneAt }) =>
      doneAt === null ? [] : [{ name: operationName.get(operationId) ?? 'Work', at: doneAt }],
    ),
    pulls: (await listTracedPulls(database, { mixIds, batchIds: [batchId], lot: null })).filter(
      (pull) => pull.piece === null || pull.piece.number === number,
    ),
  };
}
