import 'server-only';
import { isToCome } from '@/app/_plan/held-plan';
import { batchEntries } from '@/lib/exchange/calendar/batch-entries';
import type { CalendarEntry } from '@/lib/exchange/calendar/calendar-entry';
import { visitEntries } from '@/lib/exchange/calendar/visit-entries';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { listOpenBatchHeads } from '@/prisma/data/batches';
import { findAcceptedPlanId } from '@/prisma/data/plans';
import type { ShopSettings } from '@/prisma/data/shop';
import { batchWords } from './batch-words';
import { knownBatches } from './known-batches';
import { loadPlanView } from './plan-view';

/** Everything the shop's calendar is to show as things stand at `nowAt`: releases, windows and planned glue-ups. */
export async function currentCalendar(
  database: Db,
  shop: ShopSettings,
  nowAt: Instant,
): Promise<readonly CalendarEntry[]> {
  const heads = await listOpenBatchHeads(database);
  const { batches } = await knownBatches(database, shop, heads, nowAt);
  const releases = heads.flatMap((head, index) => {
    const batch = batches[index];
    if (batch === undefined) return [];
    const { number, modelName } = head;
    return batchEntries({ ...batch, number, modelName, words: batchWords(batch, shop, nowAt) });
  });
  return [...releases, ...(await plannedGlueUps(database, shop, nowAt))];
}

async function plannedGlueUps(database: Db, shop: ShopSettings, nowAt: Instant): Promise<readonly CalendarEntry[]> {
  if ((await findAcceptedPlanId(database)) === null) return [];
  const { current, people } = await loadPlanView(database, shop, nowAt);
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const visits = (current?.visits ?? []).filter((visit) => visit.kind !== 'work' && isToCome(visit));
  return visitEntries(
    visits.map(({ pieces, personId, ...visit }) => ({
      ...visit,
      pieceCount: pieces.length,
      personName: personId === null ? null : (names.get(personId) ?? null),
    })),
  );
}
