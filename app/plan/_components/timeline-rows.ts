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
}

export interface TimelineRow {
  readonly id: string;
  readonly label: string;
  readonly bars: readonly Bar[];
  readonly lanes: number;
  /** When it is due; null where nothing is. */
  readonly dueAt: Instant | null;
  readonly readyAt: Instant | null;
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
        sessions,
      }));
    case 'places':
      return places.map(({ id, name, capacity }) => {
        const own = visits.flatMap((visit) =>
          visit.holds.filter((hold) => hold.resourceId === id).map((hold) => ({ visit, endAt: hold.untilAt })),
        );
        return {
          id,
          label: `${name}, ${capacity} ${capacity === 1 ? 'place' : 'places'}`,
          ...laned(own),
          dueAt: null,
          readyAt: null,
          sessions: [],
        };
      });
  }
}

function laned(
  items: readonly { readonly visit: PlannedVisit; readonly endAt: Instant }[],
): Pick<TimelineRow, 'bars' | 'lanes'> {
  const ends: Instant[] = [];
  const bars = items
    .toSorted((a, b) => a.visit.startAt - b.visit.startAt)
    .map(({ visit, endAt }): Bar => {
      const free = ends.findIndex((end) => end <= visit.startAt);
      const lane = free < 0 ? ends.length : free;
      ends[lane] = Math.max(endAt, visit.finishAt);
      return { visit, startAt: visit.startAt, finishAt: visit.finishAt, endAt: Math.max(endAt, visit.finishAt), lane };
    });
  return { bars, lanes: Math.max(1, ends.length) };
}
