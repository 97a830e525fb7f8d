import type { CalendarEntry, PublishedEntry } from '@/lib/exchange/calendar/calendar-entry';
import { publishEntries } from '@/lib/exchange/calendar/publish-entries';
import type { Instant } from '@/lib/units/instant';
import { type Db, writeTx } from '@/prisma/client';
import { listPublishedEntries, savePublication } from '@/prisma/data/calendar-entries';

/**
 * The calendar as it is to be read now. What is new, has moved or was called off since the last reading is written
 * down with its next sequence number before it is handed out, so that a number is never given twice.
 */
export async function publishCalendar(
  database: Db,
  current: readonly CalendarEntry[],
  nowAt: Instant,
): Promise<readonly PublishedEntry[]> {
  const seen = publishEntries(await listPublishedEntries(database), current, nowAt);
  if (seen.changed.length + seen.forgotten.length === 0) return seen.entries;
  return writeTx(database, async (tx) => {
    const { entries, changed, forgotten } = publishEntries(await listPublishedEntries(tx), current, nowAt);
    await savePublication(tx, changed, forgotten);
    return entries;
  });
}
