import type { PlannedVisit, Timetable } from '@/lib/contracts/stored-plan';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { ShopProblem } from './shop-problem';

/** A recoat window that may be missed, and what that takes. */
interface RemediableLink {
  readonly id: string;
  readonly minutes: number;
}

/**
 * The plan that holds as a plan of the problem as it is now: what is done or under way stands as it happened, what is
 * still open stands where it was planned. Steps that came since are not in it; steps that are gone are left out.
 */
export function heldPlan(held: Timetable, { problem, about }: ShopProblem): ShopPlan {
  const visits = new Map(held.visits.map((visit) => [visit.key, visit]));
  const minute = (at: Instant) => Math.round((at - problem.epochAt) / MINUTE_MS);
  const windows = new Map<string, RemediableLink[]>();
  for (const link of problem.links) {
    if (link.kind !== 'greatest' || link.remedy === null) continue;
    const own = windows.get(link.toTaskId) ?? [];
    windows.set(link.toTaskId, own);
    own.push({ id: link.id, minutes: link.remedy.minutes });
  }
  const placed = problem.tasks.flatMap((task): PlannedTask[] => {
    const { state } = task;
    if (state.kind === 'done' || state.kind === 'under-way') {
      const { startMinute, finishMinute, personId } = state;
      const pieces = personId === null ? [] : [{ startMinute, endMinute: finishMinute }];
      return [{ taskId: task.id, personId, startMinute, finishMinute, pieces, setUpMinutes: 0, remedyLinkIds: [] }];
    }
    const visit = visits.get(task.id);
    if (visit === undefined) return [];
    const startMinute = minute(visit.startAt);
    const remedied = (windows.get(task.id) ?? []).slice(0, visit.remedies.length);
    const remedyLinkIds = remedied.map(({ id }) => id);
    const remedyMinutes = remedied.reduce((sum, { minutes }) => sum + minutes, 0);
    // What was done meanwhile is not attended again, so a visit may be shorter now than it was planned.
    const length = visit.setUpMinutes + task.attendedMinutes + remedyMinutes;
    const isWhole = visit.stretches.length <= 1 || visit.pieces.length !== about.get(task.id)?.pieces.length;
    const pieces = isWhole
      ? [{ startMinute, endMinute: startMinute + length }]
      : visit.stretches.map(({ startAt, endAt }) => ({ startMinute: minute(startAt), endMinute: minute(endAt) }));
    const finishMinute = pieces.at(-1)?.endMinute ?? startMinute;
    const { personId, setUpMinutes } = visit;
    return [
      {
        taskId: task.id,
        personId,
        startMinute,
        finishMinute,
        pieces: length === 0 ? [] : pieces,
        setUpMinutes,
        remedyLinkIds,
      },
    ];
  });
  return { placed, unplaced: [] };
}

/** Whether a visit is still to be done. */
export function isToCome(visit: Pick<PlannedVisit, 'state'>): boolean {
  return visit.state === 'open' || visit.state === 'pinned';
}
