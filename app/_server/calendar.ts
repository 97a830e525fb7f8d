import 'server-only';
import { batchEntries } from '@/lib/exchange/calendar/batch-entries';
import type { CalendarEntry } from '@/lib/exchange/calendar/calendar-entry';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { listOpenBatchHeads } from '@/prisma/data/batches';
import type { ShopSettings } from '@/prisma/data/shop';
import { batchWords } from './batch-words';
import { knownBatches } from './known-batches';

/** Everything the shop's calendar is to show as things stand at `nowAt`. */
export async function currentCalendar(
  database: Db,
  shop: ShopSettings,
  nowAt: Instant,
): Promise<readonly CalendarEntry[]> {
  const heads = await listOpenBatchHeads(database);
  const { batches } = await knownBatches(database, shop, heads, nowAt);
  return heads.flatMap((head, index) => {
    const batch = batches[index];
    if (batch === undefined) return [];
    const { number, modelName } = head;
    return batchEntries({ ...batch, number, modelName, words: batchWords(batch, shop, nowAt) });
  });
}
