import { minuteAfter } from '@/lib/schedule/check-holds';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';

/** What a plan costs, level by level: the first level that differs decides. Less is better everywhere. */
export interface PlanValue {
  /** Tasks without a place, and links into pinned tasks that are not kept. */
  readonly conflicts: number;
  /** Sum over batches of minutes late x weight. A batch with an unplaced task counts as ready at the horizon. */
  readonly weightedLateMinutes: number;
  /** Recoat windows that closed and are remedied. */
  readonly closedWindows: number;
  /** Bench sessions in which someone attends anything from now on. */
  readonly sessions: number;
  /** Set-ups paid: changes of adhesive or colour. */
  readonly setUps: number;
  /** The minute at which the last batch is ready; 0 where there is nothing. */
  readonly makespanMinute: number;
}

/** The levels in the order in which they decide. */
export const VALUE_LEVELS = [
  'conflicts',
  'weightedLateMinutes',
  'closedWindows',
  'sessions',
  'setUps',
  'makespanMinute',
] as const satisfies readonly (keyof PlanValue)[];

/** Negative where `a` is the better plan, 0 where they cost the same on every level. */
export function comparePlanValues(a: PlanValue, b: PlanValue): number {
  for (const level of VALUE_LEVELS) {
    if (a[level] !== b[level]) return a[level] - b[level];
  }
  return 0;
}

/** What a plan costs, counted from the plan itself. */
export function planValue(problem: PlanningProblem, plan: ShopPlan): PlanValue {
  const placed = new Map(plan.placed.map((place) => [place.taskId, place]));
  const ready = batchReadyMinutes(problem, placed);
  let weightedLateMinutes = 0;
  for (const batch of problem.batches) {
    const readyMinute = ready.get(batch.id) ?? Number.NEGATIVE_INFINITY;
    if (batch.dueMinute !== null) weightedLateMinutes += batch.weight * Math.max(0, readyMinute - batch.dueMinute);
  }
  const open = problem.tasks
    .filter((task) => task.state.kind === 'open' || task.state.kind === 'pinned')
    .flatMap((task) => placed.get(task.id) ?? []);
  return {
    conflicts: plan.unplaced.length + brokenPins(problem, plan),
    weightedLateMinutes,
    closedWindows: open.reduce((sum, place) => sum + place.remedyLinkIds.length, 0),
    sessions: sessionsUsed(problem, open),
    setUps: open.filter((place) => place.setUpMinutes > 0).length,
    makespanMinute: Math.max(0, ...ready.values()),
  };
}

/**
 * When each batch is ready: the last of its tasks' finishes with what each still needs after it. A batch without
 * tasks has no entry; one with an unplaced task is ready at the horizon at the earliest.
 */
export function batchReadyMinutes(
  problem: PlanningProblem,
  placed: ReadonlyMap<string, PlannedTask>,
): ReadonlyMap<string, number> {
  const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  const ready = new Map<string, number>();
  for (const task of problem.tasks) {
    const place = placed.get(task.id);
    const own = place === undefined ? null : minuteAfter(tables, task.readyAfter, place.finishMinute);
    const readyMinute = own ?? problem.horizonMinute;
    ready.set(task.batchId, Math.max(ready.get(task.batchId) ?? Number.NEGATIVE_INFINITY, readyMinute));
  }
  return ready;
}

function brokenPins(problem: PlanningProblem, plan: ShopPlan): number {
  return checkPlan(problem, plan).filter(
    (violation) =>
      (violation.kind === 'least-lag' || violation.kind === 'greatest-lag') && isGivenViolation(problem, violation),
  ).length;
}

function sessionsUsed(problem: PlanningProblem, places: readonly PlannedTask[]): number {
  const used = new Set<string>();
  const people = new Map(problem.people.map((person) => [person.id, person]));
  for (const { personId, pieces } of places) {
    const sessions = personId === null ? [] : (people.get(personId)?.sessions ?? []);
    for (const piece of pieces) {
      const index = sessions.findIndex((s) => s.startMinute <= piece.startMinute && piece.endMinute <= s.endMinute);
      if (index >= 0) used.add(`${personId} ${index}`);
    }
  }
  return used.size;
}
