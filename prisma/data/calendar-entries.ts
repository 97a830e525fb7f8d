import { z } from 'zod';
import type { CalendarEntry, PublishedEntry } from '@/lib/exchange/calendar/calendar-entry';
import type { DbReader, Tx } from '@/prisma/client';
import { chunked } from '@/prisma/data/batches';

const bodySchema = z.strictObject({
  startAt: z.number(),
  endAt: z.number(),
  summary: z.string(),
  description: z.string(),
  isAttended: z.boolean(),
  alarms: z.array(z.strictObject({ from: z.enum(['start', 'end']), minutesBefore: z.int(), text: z.string() })),
});

/** What the calendar published last, by uid. */
export async function listPublishedEntries(reader: DbReader): Promise<PublishedEntry[]> {
  const rows = await reader.calendarEntry.findMany({ orderBy: { uid: 'asc' } });
  return rows.map(({ uid, sequence, changedAt, isCancelled, body }) => ({
    uid,
    sequence,
    changedAt: changedAt.getTime(),
    isCancelled,
    ...bodySchema.parse(body),
  }));
}

/** Keeps what was published anew and lets go of what left the calendar. */
export async function savePublication(
  tx: Tx,
  changed: readonly PublishedEntry[],
  forgotten: readonly string[],
): Promise<void> {
  for (const entry of changed) {
    const { uid, sequence, isCancelled } = entry;
    const data = { sequence, isCancelled, changedAt: new Date(entry.changedAt), body: bodyOf(entry) };
    await tx.calendarEntry.upsert({ where: { uid }, create: { uid, ...data }, update: data });
  }
  for (const uids of chunked(forgotten)) await tx.calendarEntry.deleteMany({ where: { uid: { in: uids } } });
}

function bodyOf({ startAt, endAt, summary, description, isAttended, alarms }: CalendarEntry) {
  const rings = alarms.map(({ from, minutesBefore, text }) => ({ from, minutesBefore, text }));
  return { startAt, endAt, summary, description, isAttended, alarms: rings };
}
