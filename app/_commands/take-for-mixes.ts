import type { BatchState, MixState } from '@/lib/batch/batch-state';
import { followMix } from '@/lib/stock/follow-mix';
import { mixUsage, type PouredLot } from '@/lib/stock/mix-usage';
import type { Instant } from '@/lib/units/instant';
import type { Tx } from '@/prisma/client';
import { rowChanges } from '@/prisma/data/batch-rows';
import { appendMovements, type LotBook, listLotBooks, takenByMixes } from '@/prisma/data/stock';

export interface MixEvent {
  readonly batchId: string;
  /** Number of the event that brought the batch from one state to the next. */
  readonly seq: number;
  readonly personId: string | null;
  readonly nowAt: Instant;
}

/**
 * Lets the books of lots follow the cups of a batch within the transaction that appends the event: a new cup takes
 * from the lots named for it, a corrected one more or less, and one that was not made gives back. An event at the bench
 * is never refused for the sake of a book: where it held too little, a correction says so. Nothing is taken when the
 * sheet does not say how much of a cup is resin.
 */
export async function takeForMixes(tx: Tx, event: MixEvent, before: BatchState, after: BatchState): Promise<void> {
  const { addedMixes, changedMixes, removedMixIds } = rowChanges(before, after);
  const standing = [...addedMixes, ...changedMixes];
  const mixIds = [...standing.map((mix) => mix.mixId), ...removedMixIds];
  if (mixIds.length === 0) return;
  const taken = await takenByMixes(tx, mixIds);
  const lotIds = [
    ...standing.flatMap((mix) => mix.lotIds),
    ...[...taken.values()].flatMap((byLot) => [...byLot.keys()]),
  ];
  const books = new Map(await listLotBooks(tx, lotIds));
  const parts = await partsOf(tx, [...books.keys()]);
  const byId = new Map(standing.map((mix) => [mix.mixId, mix]));
  for (const mixId of mixIds) {
    const had = taken.get(mixId) ?? new Map<string, number>();
    const wanted = wantedOf(byId.get(mixId), books, had, parts);
    if (wanted === null) continue;
    const number = (byId.get(mixId) ?? before.mixes.find((mix) => mix.mixId === mixId))?.number ?? 0;
    for (const lotId of new Set([...had.keys(), ...wanted.keys()])) {
      const book = books.get(lotId);
      if (book === undefined) continue;
      const drafts = followMix(book.leftMilli, had.get(lotId) ?? 0, wanted.get(lotId) ?? 0);
      const movements = drafts.map((draft, index) => {
        const isRoom = drafts.length > 1 && index === 0;
        const words = draft.kind === 'issue' ? '' : isRoom ? ' took more than the book held' : ' was corrected';
        return {
          ...draft,
          reason: `Mix ${number}${words}`,
          batchId: isRoom ? null : event.batchId,
          mixId: isRoom ? null : mixId,
          personId: event.personId,
          priceMinor: null,
          correctsId: null,
          key: `mix-${mixId}-${event.seq}-${lotId}${isRoom ? '-found' : ''}`,
          at: event.nowAt,
        };
      });
      books.set(lotId, await appendMovements(tx, book, movements));
    }
  }
}

/** What a cup should have taken of each lot; null when it cannot be told. A cup that was not made takes nothing. */
function wantedOf(
  mix: MixState | undefined,
  books: ReadonlyMap<string, LotBook>,
  had: ReadonlyMap<string, number>,
  parts: ReadonlyMap<string, PouredLot['part']>,
): ReadonlyMap<string, number> | null {
  if (mix === undefined) return new Map();
  const lots = mix.lotIds.flatMap((lotId) => {
    const book = books.get(lotId);
    // What this cup took already is there for it.
    const part = parts.get(lotId);
    if (book === undefined || part === undefined) return [];
    return [{ lotId, part, leftMilli: book.leftMilli + (had.get(lotId) ?? 0) }];
  });
  const usage = mixUsage(mix.massG, mix.sheet, lots);
  return usage.ok ? usage.takenMilli : null;
}

/** The parts of those lots that are kept in grams: a cup is weighed and takes from no other. */
async function partsOf(tx: Tx, lotIds: readonly string[]): Promise<Map<string, PouredLot['part']>> {
  const rows = await tx.lot.findMany({
    where: { id: { in: [...lotIds] }, quantityUnit: 'g' },
    select: { id: true, part: true },
  });
  return new Map(rows.map(({ id, part }) => [id, part === 'resin' || part === 'hardener' ? part : 'whole']));
}
