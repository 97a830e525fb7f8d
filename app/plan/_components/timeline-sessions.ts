import type { PersonRow } from '@/app/_server/plan-view';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';

/** A stretch in which the bench is attended by anybody, and how much of their time is planned. */
export interface BenchSession {
  readonly startAt: Instant;
  readonly endAt: Instant;
  /** Everybody's time in it, ms. */
  readonly benchMs: number;
  /** What of it is planned, ms. */
  readonly plannedMs: number;
}

/** The sessions of all people, those that overlap as one, in order. Work outside of them counts for none. */
export function benchSessionsOf(
  people: readonly PersonRow[],
  visits: readonly PlannedVisit[],
): readonly BenchSession[] {
  const sessions: { startAt: Instant; endAt: Instant; benchMs: number; plannedMs: number }[] = [];
  for (const { startAt, endAt } of people.flatMap((person) => person.sessions).toSorted(byStart)) {
    const last = sessions.at(-1);
    if (last === undefined || startAt > last.endAt) {
      sessions.push({ startAt, endAt, benchMs: endAt - startAt, plannedMs: 0 });
      continue;
    }
    last.endAt = Math.max(last.endAt, endAt);
    last.benchMs += endAt - startAt;
  }
  let index = 0;
  const stretches = visits.filter(({ personId }) => personId !== null).flatMap((visit) => visit.stretches);
  for (const { startAt, endAt } of stretches.toSorted(byStart)) {
    while (index < sessions.length && (sessions[index]?.endAt ?? 0) <= startAt) index += 1;
    const session = sessions[index];
    if (session !== undefined && startAt >= session.startAt) session.plannedMs += endAt - startAt;
  }
  return sessions;
}

function byStart(a: { readonly startAt: Instant }, b: { readonly startAt: Instant }): number {
  return a.startAt - b.startAt;
}
