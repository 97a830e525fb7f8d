import type { BenchEntry } from '../_server/bench';
import type { ReportBatch } from './piece-report-button';

/** What the dialogs for scrap and notes need to know of a batch. */
export function reportBatch({ head, batch }: Pick<BenchEntry, 'head' | 'batch'>): ReportBatch {
  return {
    batchId: head.id,
    number: head.number,
    name: `${head.modelName} ${head.letter}`,
    seenSeq: head.lastSeq,
    quantity: head.quantity,
    scrapped: batch.state.pieces.filter((piece) => piece.scrapped !== null).map((piece) => piece.number),
  };
}
