import type { MixState } from '@/lib/batch/batch-state';
import { followMix } from '@/lib/stock/follow-mix';
import type { MovementDraft } from '@/lib/stock/ledger';
import { mixUsage, type PouredLot } from '@/lib/stock/mix-usage';
import type { Instant } from '@/lib/units/instant';
import type { Tx } from '@/prisma/client';
import { appendMovements, type LotBook, listLotBooks, type NewMovement, takenByMixes } from './stock';

/** The event that changed the cups of a batch. */
export interface CupEvent {
  readonly batchId: string;
  /** Number of the event within the batch. */
  readonly seq: number;
  readonly personId: string | null;
  readonly at: Instant;
}

/** Cups as they stand after the event, and those it took back. */
export interface CupChanges {
  readonly standing: readonly MixState[];
  readonly removed: readonly Pick<MixState, 'mixId' | 'number'>[];
}

/**
 * Lets the books of lots follow the cups of a batch within the transaction that appends the event: a new cup takes
 * from the lots named for it, a corrected one more or less, and one that was not made gives back. An event at the bench
 * is never refused for the sake of a book: where it held too little, a correction says so. Nothing is taken when the
 * sheet does not say how much of a cup is resin.
 */
export async function takeForMixes(tx: Tx, event: CupEvent, { standing, removed }: CupChanges): Promise<void> {
  const mixIds = [...standing, ...removed].map((mix) => mix.mixId);
  if (mixIds.length === 0) return;
  const taken = await takenByMixes(tx, mixIds);
  const lotIds = [
    ...standing.flatMap((mix) => mix.lotIds),
    ...[...taken.values()].flatMap((byLot) => [...byLot.keys()]),
  ];
  const books = await listLotBooks(tx, lotIds);
  const parts = await partsOf(tx, [...books.keys()]);
  const wantedBy = [
    ...standing.map((mix) => ({ mix, wantedOf: (had: Taken) => wanted(mix, books, had, parts) })),
    ...removed.map((mix) => ({ mix, wantedOf: (): Taken => new Map() })),
  ];
  for (const { mix, wantedOf } of wantedBy) {
    const had = taken.get(mix.mixId) ?? new Map<string, number>();
    const wantedMilli = wantedOf(had);
    for (const lotId of wantedMilli === null ? [] : new Set([...had.keys(), ...wantedMilli.keys()])) {
      const book = books.get(lotId);
      if (book === undefined) continue;
      const drafts = followMix(book.leftMilli, had.get(lotId) ?? 0, wantedMilli?.get(lotId) ?? 0);
      books.set(
        lotId,
        await appendMovements(
          tx,
          book,
          drafts.map((draft, index) => line(event, mix, lotId, draft, index < drafts.length - 1)),
        ),
      );
    }
  }
}

/** A line as the book keeps it. What only makes room for the cup is nobody's use. */
function line(
  { batchId, seq, personId, at }: CupEvent,
  { mixId, number }: Pick<MixState, 'mixId' | 'number'>,
  lotId: string,
  draft: MovementDraft,
  makesRoom: boolean,
): NewMovement {
  const words = draft.kind === 'issue' ? '' : makesRoom ? ' took more than the book held' : ' was corrected';
  return {
    ...draft,
    reason: `Mix ${number}${words}`,
    batchId: makesRoom ? null : batchId,
    mixId: makesRoom ? null : mixId,
    personId,
    priceMinor: null,
    correctsId: null,
    key: `mix-${mixId}-${seq}-${lotId}${makesRoom ? '-found' : ''}`,
    at,
  };
}

/** By lot, in mg. */
type Taken = ReadonlyMap<string, number>;

/** What a cup should have taken; null when it cannot be told. */
function wanted(
  mix: MixState,
  books: ReadonlyMap<string, LotBook>,
  had: Taken,
  parts: ReadonlyMap<string, PouredLot['part']>,
): Taken | null {
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
