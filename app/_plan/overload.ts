import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';

/** More is due by a date than the bench has minutes before it. */
export interface Overload {
  readonly dueAt: Instant;
  /** Attended minutes of everything due by then that is still to be done. */
  readonly dueMinutes: number;
  /** Minutes of everybody's bench hours until then. */
  readonly benchMinutes: number;
}

/**
 * The due date at which most is missing: no plan can do it, whatever the order. null where the bench has the minutes
 * for every date; that alone does not mean that all can be in time. Set-ups are not counted.
 */
export function overloadOf(problem: PlanningProblem): Overload | null {
  const dueOf = new Map(problem.batches.map((batch) => [batch.id, batch.dueMinute]));
  let worst: Overload | null = null;
  for (const dueMinute of new Set(dueOf.values())) {
    if (dueMinute === null) continue;
    const due = problem.tasks.filter((task) => {
      const own = dueOf.get(task.batchId) ?? null;
      return own !== null && own <= dueMinute && (task.state.kind === 'open' || task.state.kind === 'pinned');
    });
    const dueMinutes = due.reduce((sum, task) => sum + task.attendedMinutes, 0);
    const benchMinutes = benchMinutesUntil(problem, dueMinute);
    const missing = dueMinutes - benchMinutes;
    if (missing > 0 && missing > (worst === null ? 0 : worst.dueMinutes - worst.benchMinutes)) {
      worst = { dueAt: problem.epochAt + dueMinute * MINUTE_MS, dueMinutes, benchMinutes };
    }
  }
  return worst;
}

function benchMinutesUntil({ people, nowMinute }: PlanningProblem, untilMinute: number): number {
  return people
    .flatMap(({ sessions }) => sessions)
    .reduce(
      (sum, { startMinute, endMinute }) =>
        sum + Math.max(0, Math.min(endMinute, untilMinute) - Math.max(startMinute, nowMinute)),
      0,
    );
}
