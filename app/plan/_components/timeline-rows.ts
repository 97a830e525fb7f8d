import type { PersonRow, PlaceRow } from '@/app/_server/plan-view';
import type { PlannedBatchLine, PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';

/** What the rows of the timeline stand for. */
export const ROW_KINDS = ['batches', 'people', 'places'] as const;
export type RowKind = (typeof ROW_KINDS)[number];

/** A bar: a visit, and the cure or the places that it takes after it. */
export interface Bar {
  readonly visit: PlannedVisit;
  readonly startAt: Instant;
  /** End of what is attended. */
  readonly finishAt: Instant;
  /** End of what runs on alone; the same as `finishAt` where nothing does. */
  readonly endAt: Instant;
  readonly lane: number;
  /** When the next bar of its lane begins: letters have room until then. */
  readonly nextAt: Instant;
}

export interface TimelineRow {
  readonly id: string;
  readonly label: string;
  readonly bars: readonly Bar[];
  readonly lanes: number;
  /** When it is due; null where nothing is. */
  readonly dueAt: Instant | null;
  readonly readyAt: Instant | null;
  /** Whether all its bars are of one batch: then its windows are drawn, and bars need not name their batch. */
  readonly isBatch: boolean;
  /** When somebody can attend; empty where it does not matter. */
  readonly sessions: PersonRow['sessions'];
}

export interface RowSource {
  readonly visits: readonly PlannedVisit[];
  readonly batches: readonly PlannedBatchLine[];
  readonly people: readonly PersonRow[];
  readonly places: readonly PlaceRow[];
}

/** The plan as rows; bars that overlap within a row lie in lanes under each other. */
export function timelineRows(kind: RowKind, source: RowSource): readonly TimelineRow[] {
  const { visits, batches, people, places } = source;
  switch (kind) {
    case 'batches':
      return batches.map((batch) => {
        const own = visits.filter((visit) => visit.batchId === batch.batchId);
        return {
          id: batch.batchId,
          label: `${batch.number} ${batch.modelName}`,
          ...laned(own.map((visit) => ({ visit, endAt: visit.curedAt ?? visit.finishAt }))),
          dueAt: batch.dueAt,
          readyAt: batch.readyAt,
          isBatch: true,
          sessions: [],
        };
      });
    case 'people':
      return people.map(({ id, name, sessions }) => ({
        id,
        label: name,
        ...laned(visits.filter((visit) => visit.personId === id).map((visit) => ({ visit, endAt: visit.finishAt }))),
        dueAt: null,
        readyAt: null,
        isBatch: false,
        sessions,
      }));
    case 'places':
      return places.map((place) => placeRow(place, visits));
  }
}

function placeRow({ id, name, capacity }: PlaceRow, visits: readonly PlannedVisit[]): TimelineRow {
  const own = visits.flatMap((visit) =>
    visit.holds
      .filter((hold) => hold.resourceId === id)
      .map((hold) => ({ visit, endAt: hold.untilAt, amount: hold.amount })),
  );
  const most = mostTaken(own.map(({ visit, endAt, amount }) => ({ fromAt: visit.startAt, toAt: endAt, amount })));
  return {
    id,
    label: `${name}: ${most} of ${capacity} ${capacity === 1 ? 'place' : 'places'} taken at the most`,
    ...laned(own),
    dueAt: null,
    readyAt: null,
    isBatch: false,
    sessions: [],
  };
}

/** The most places that are taken at one time. */
function mostTaken(
  holds: readonly { readonly fromAt: Instant; readonly toAt: Instant; readonly amount: number }[],
): number {
  const changes = holds
    .flatMap(({ fromAt, toAt, amount }) => [
      { at: fromAt, by: amount },
      { at: toAt, by: -amount },
    ])
    .sort((a, b) => a.at - b.at || a.by - b.by);
  let taken = 0;
  let most = 0;
  for (const { by } of changes) {
    taken += by;
    most = Math.max(most, taken);
  }
  return most;
}

function laned(
  items: readonly { readonly visit: PlannedVisit; readonly endAt: Instant }[],
): Pick<TimelineRow, 'bars' | 'lanes'> {
  const lanes: Bar[][] = [];
  for (const { visit, endAt } of items.toSorted((a, b) => a.visit.startAt - b.visit.startAt)) {
    const free = lanes.findIndex((bars) => (bars.at(-1)?.endAt ?? 0) <= visit.startAt);
    const lane = free < 0 ? lanes.length : free;
    const own = lanes[lane] ?? [];
    lanes[lane] = own;
    const { startAt, finishAt } = visit;
    const last = own.at(-1);
    if (last !== undefined) own[own.length - 1] = { ...last, nextAt: startAt };
    own.push({ visit, startAt, finishAt, endAt: Math.max(endAt, finishAt), lane, nextAt: Number.POSITIVE_INFINITY });
  }
  return { bars: lanes.flat().sort((a, b) => a.startAt - b.startAt), lanes: Math.max(1, lanes.length) };
}
