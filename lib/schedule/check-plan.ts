import { attendanceViolations } from '@/lib/schedule/check-attendance';
import { holdViolations } from '@/lib/schedule/check-holds';
import { linkViolations } from '@/lib/schedule/check-links';
import type { PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';
import type { TaskPlace } from '@/lib/schedule/task-place';
import type { Violation } from '@/lib/schedule/violation';

/**
 * Everything that is wrong with a plan; empty for a plan that can be carried out. Shares no code with the planner and
 * looks at the plan alone, so any plan may be asked about: the planner's, one that was dragged, one kept from before.
 *
 * What happened is not judged: `done` and `under-way` tasks take their people's time and their places, but only what
 * is still to come can be wrong. Pinned tasks are judged like open ones: a pin in conflict shows here.
 */
export function checkPlan(problem: PlanningProblem, plan: ShopPlan): readonly Violation[] {
  const { violations, places } = placesOf(problem, plan);
  violations.push(...placed(problem, places));
  violations.push(...attendanceViolations(problem, places));
  violations.push(...holdViolations(problem, places));
  violations.push(...linkViolations(problem, places));
  return violations;
}

/**
 * Whether a violation comes from what the maker or history has fixed, so that no planner may mend it: all tasks in it
 * are fixed, or it is a link into a fixed task.
 */
export function isGivenViolation(problem: PlanningProblem, violation: Violation): boolean {
  const fixed = new Set(problem.tasks.filter((task) => task.state.kind !== 'open').map((task) => task.id));
  if (violation.kind === 'least-lag' || violation.kind === 'greatest-lag') {
    const link = problem.links.find((candidate) => candidate.id === violation.linkId);
    return link !== undefined && fixed.has(link.toTaskId);
  }
  return violation.taskIds.length > 0 && violation.taskIds.every((id) => fixed.has(id));
}

function placesOf(problem: PlanningProblem, plan: ShopPlan) {
  const violations: Violation[] = [];
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const places = new Map<string, TaskPlace>();
  const named = new Set<string>();
  for (const { taskId } of [...plan.placed, ...plan.unplaced]) {
    if (!tasks.has(taskId)) violations.push({ kind: 'unknown-task', taskIds: [taskId] });
    else if (named.has(taskId)) violations.push({ kind: 'placed-twice', taskIds: [taskId] });
    named.add(taskId);
  }
  for (const task of problem.tasks) {
    if (!named.has(task.id)) violations.push({ kind: 'missing', taskIds: [task.id] });
  }
  for (const place of plan.placed) {
    const task = tasks.get(place.taskId);
    if (task !== undefined && !places.has(task.id)) places.set(task.id, { task, place });
  }
  return { violations, places };
}

function placed(problem: PlanningProblem, places: ReadonlyMap<string, TaskPlace>): readonly Violation[] {
  const violations: Violation[] = [];
  const batches = new Map(problem.batches.map((batch) => [batch.id, batch]));
  for (const { task, place } of places.values()) {
    const taskIds = [task.id];
    if (!keepsItsState(task, place)) violations.push({ kind: 'moved-what-is-fixed', taskIds });
    if (task.state.kind === 'done' || task.state.kind === 'under-way') continue;
    const notBeforeMinute = Math.max(
      problem.nowMinute,
      task.releaseMinute,
      batches.get(task.batchId)?.releaseMinute ?? Number.NEGATIVE_INFINITY,
    );
    if (place.startMinute < notBeforeMinute) violations.push({ kind: 'too-early', taskIds, notBeforeMinute });
    if (place.finishMinute > problem.horizonMinute) violations.push({ kind: 'beyond-horizon', taskIds });
  }
  return violations;
}

function keepsItsState(task: Task, place: PlannedTask): boolean {
  const { state } = task;
  switch (state.kind) {
    case 'open':
      return true;
    case 'pinned':
      return place.startMinute === state.startMinute && (state.personId === null || place.personId === state.personId);
    case 'under-way':
    case 'done':
      return (
        place.startMinute === state.startMinute &&
        place.finishMinute === state.finishMinute &&
        place.personId === state.personId
      );
  }
}
