import type { BatchEvent } from '@/lib/batch/events';
import { storedBodySchema } from '@/lib/contracts/batch-event';
import type { DbReader, Tx } from '@/prisma/client';
import { chunked } from './batches';

const EVENT_COLUMNS = { seq: true, key: true, at: true, recordedAt: true, personId: true, body: true } as const;

interface EventRow {
  seq: number;
  key: string;
  at: Date;
  recordedAt: Date;
  personId: string | null;
  body: unknown;
}

function toEvent(row: EventRow): BatchEvent {
  return {
    seq: row.seq,
    key: row.key,
    at: row.at.getTime(),
    recordedAt: row.recordedAt.getTime(),
    personId: row.personId,
    body: storedBodySchema.parse(row.body),
  };
}

/** A batch's history after `afterSeq`, in its order. Throws when a stored body is not one this version knows. */
export async function listBatchEvents(reader: DbReader, batchId: string, afterSeq = 0): Promise<BatchEvent[]> {
  const rows = await reader.batchEvent.findMany({
    where: { batchId, seq: { gt: afterSeq } },
    select: EVENT_COLUMNS,
    orderBy: { seq: 'asc' },
  });
  return rows.map(toEvent);
}

/** Whole histories of several batches, by batch id. */
export async function listEventsOfBatches(
  reader: DbReader,
  batchIds: readonly string[],
): Promise<Map<string, BatchEvent[]>> {
  const histories = new Map<string, BatchEvent[]>(batchIds.map((id) => [id, []]));
  for (const ids of chunked(batchIds)) {
    const rows = await reader.batchEvent.findMany({
      where: { batchId: { in: ids } },
      select: { ...EVENT_COLUMNS, batchId: true },
      orderBy: [{ batchId: 'asc' }, { seq: 'asc' }],
    });
    for (const row of rows) histories.get(row.batchId)?.push(toEvent(row));
  }
  return histories;
}

/** The event a client's key already made in this batch, or null. */
export async function findEventByKey(reader: DbReader, batchId: string, key: string): Promise<BatchEvent | null> {
  const row = await reader.batchEvent.findUnique({ where: { batchId_key: { batchId, key } }, select: EVENT_COLUMNS });
  return row === null ? null : toEvent(row);
}

/** Appends one event and raises the batch's newest seq with it. */
export async function appendEvent(tx: Tx, batchId: string, event: BatchEvent): Promise<void> {
  await tx.batchEvent.create({
    data: {
      batchId,
      seq: event.seq,
      key: event.key,
      at: new Date(event.at),
      recordedAt: new Date(event.recordedAt),
      personId: event.personId,
      kind: event.body.kind,
      // Only plain JSON values are in a body; the schema that reads it back proves it.
      body: JSON.parse(JSON.stringify(event.body)),
    },
  });
  await tx.batch.update({ where: { id: batchId }, data: { lastSeq: event.seq } });
}
