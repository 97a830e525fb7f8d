import type { PlannedVisit, Timetable } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import { type CalendarDay, wallTimeAt } from '@/lib/units/zoned-time';
import { isToCome } from './held-plan';

/** What one person does in a session, in order. */
export interface PersonSession {
  readonly personId: string | null;
  readonly stints: readonly Stint[];
  /** When the last of it is done. */
  readonly endAt: Instant;
  /** What is attended in all, ms. */
  readonly attendedMs: number;
  /** Adhesives and coats in the order they are mixed, with the cups of each. */
  readonly mixes: readonly { readonly materialName: string; readonly cups: number }[];
}

export interface Stint {
  readonly visit: PlannedVisit;
  readonly startAt: Instant;
  readonly endAt: Instant;
}

/** The bench session that is running, or comes next. */
export interface NextSession {
  readonly day: CalendarDay;
  /** By the first hour. */
  readonly people: readonly PersonSession[];
}

/** A session still counts as this one for so long after its last planned minute. Chosen: it ran over. */
const OVERRUN_MS = 2 * HOUR_MS;

/** The stints of the next day on which anything is planned, those of a running one included; null without any. */
export function nextSession(timetable: Timetable, zone: string, nowAt: Instant): NextSession | null {
  const stints = timetable.visits
    .filter((visit) => isToCome(visit) || visit.state === 'under-way')
    .flatMap((visit) => visit.stretches.map(({ startAt, endAt }): Stint => ({ visit, startAt, endAt })))
    .filter(({ endAt }) => endAt > nowAt - OVERRUN_MS)
    .sort((a, b) => a.startAt - b.startAt);
  const first = stints[0];
  if (first === undefined) return null;
  const { day } = wallTimeAt(Math.max(first.startAt, nowAt - OVERRUN_MS), zone);
  const people = new Map<string | null, Stint[]>();
  for (const stint of stints) {
    if (wallTimeAt(Math.max(stint.startAt, nowAt - OVERRUN_MS), zone).day !== day) continue;
    const { personId } = stint.visit;
    people.set(personId, [...(people.get(personId) ?? []), stint]);
  }
  return { day, people: [...people].map(([personId, own]) => personSession(personId, own)) };
}

function personSession(personId: string | null, stints: readonly Stint[]): PersonSession {
  const cups = new Map<string, number>();
  for (const { visit } of stints) {
    if (visit.kind === 'work' || visit.materialName === null) continue;
    cups.set(visit.materialName, (cups.get(visit.materialName) ?? 0) + 1);
  }
  return {
    personId,
    stints,
    endAt: Math.max(...stints.map(({ endAt }) => endAt)),
    attendedMs: stints.reduce((sum, { startAt, endAt }) => sum + endAt - startAt, 0),
    mixes: [...cups].map(([materialName, count]) => ({ materialName, cups: count })),
  };
}
