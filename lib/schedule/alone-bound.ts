import { type LagTable, openingMinute } from '@/lib/schedule/lag';
import type { BenchPerson, PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/**
 * Weighted minutes late that no plan can avoid, from each batch alone: every task at the earliest minute at which what
 * it waits for is over and somebody who may do it is at the bench, whatever else there is to do. Set-ups, places,
 * remedies and all other tasks are left out, so it is never more than what the best plan costs.
 */
export function aloneBound(problem: PlanningProblem): number {
  const { ready } = aloneTimes(problem);
  return problem.batches.reduce((sum, { id, dueMinute, weight }) => {
    const readyMinute = ready.get(id);
    return dueMinute === null || readyMinute === undefined ? sum : sum + weight * Math.max(0, readyMinute - dueMinute);
  }, 0);
}

/** Earliest minutes if the bench were its own: of the tasks by task id, of the batches by batch id. */
export interface AloneTimes {
  readonly start: ReadonlyMap<string, number>;
  readonly finish: ReadonlyMap<string, number>;
  readonly ready: ReadonlyMap<string, number>;
}

/** The earliest minutes at which each task could be attended, and each batch be ready, whatever else there is to do. */
export function aloneTimes(problem: PlanningProblem): AloneTimes {
  const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  const finish = new Map<string, number>();
  const start = new Map<string, number>();
  const ready = new Map<string, number>();
  const releases = new Map(problem.batches.map((batch) => [batch.id, batch.releaseMinute]));
  for (const task of inRouteOrder(problem)) {
    let earliest = Math.max(problem.nowMinute, task.releaseMinute, releases.get(task.batchId) ?? 0);
    for (const link of problem.links) {
      if (link.kind !== 'least' || link.toTaskId !== task.id) continue;
      const from = (link.from === 'finish' ? finish : start).get(link.fromTaskId);
      if (from === undefined) continue;
      const opens = lagEnd(link.lag, from, tables) ?? problem.horizonMinute;
      // A link to the finish says the less of the start the longer the task is.
      earliest = Math.max(earliest, link.to === 'start' ? opens : opens - task.attendedMinutes);
    }
    const [begins, ends] = earliestVisit(problem, task, earliest);
    start.set(task.id, begins);
    finish.set(task.id, ends);
    // A batch with a task that has no place counts as ready at the horizon, so no more than that is certain.
    const own = Math.min(lagEnd(task.readyAfter, ends, tables) ?? problem.horizonMinute, problem.horizonMinute);
    ready.set(task.batchId, Math.max(ready.get(task.batchId) ?? 0, own));
  }
  return { start, finish, ready };
}

/** The earliest start and the earliest finish of a task from a minute on; of what happened, when it did. */
function earliestVisit(problem: PlanningProblem, task: Task, from: number): readonly [number, number] {
  const { state } = task;
  if (state.kind === 'done' || state.kind === 'under-way') return [state.startMinute, state.finishMinute];
  if (state.kind === 'pinned') return [state.startMinute, state.startMinute + task.attendedMinutes];
  if (task.attendedMinutes === 0) return [from, from];
  const visits = problem.people.filter((person) => mayDo(person, task)).map((person) => visitOf(person, task, from));
  const begins = Math.min(...visits.map(([own]) => own));
  const ends = Math.min(...visits.map(([, own]) => own));
  return [Math.min(problem.horizonMinute, begins), Math.min(problem.horizonMinute, ends)];
}

function visitOf({ sessions }: BenchPerson, task: Task, from: number): readonly [number, number] {
  let left = task.attendedMinutes;
  let begun: number | null = null;
  for (const { startMinute, endMinute } of sessions) {
    const at = Math.max(startMinute, from);
    const room = endMinute - at;
    if (room <= 0) continue;
    if (task.leastPieceMinutes === null) {
      if (room >= left) return [at, at + left];
      continue;
    }
    begun ??= at;
    if (room >= left) return [begun, at + left];
    left -= room;
  }
  return [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
}

/** Whether a person may attend a task. */
export function mayDo(person: BenchPerson, { by }: Pick<Task, 'by'>): boolean {
  switch (by.kind) {
    case 'anyone':
      return true;
    case 'skill':
      return person.skills.includes(by.skill);
    case 'person':
      return person.id === by.personId;
  }
}

function lagEnd(lag: Task['readyAfter'], from: number, tables: ReadonlyMap<string, LagTable>): number | null {
  if (lag.kind === 'fixed') return from + lag.minutes;
  const table = tables.get(lag.tableId);
  return table === undefined ? null : openingMinute(table, from);
}

/** The tasks with each one after those that it waits for. */
export function inRouteOrder({ tasks, links }: PlanningProblem): readonly Task[] {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const before = new Map<string, string[]>();
  for (const link of links) {
    if (link.kind === 'least') before.set(link.toTaskId, [...(before.get(link.toTaskId) ?? []), link.fromTaskId]);
  }
  const ordered: Task[] = [];
  const seen = new Set<string>();
  const visit = (id: string) => {
    if (seen.has(id)) return;
    seen.add(id);
    for (const from of before.get(id) ?? []) visit(from);
    const task = byId.get(id);
    if (task !== undefined) ordered.push(task);
  };
  for (const task of tasks) visit(task.id);
  return ordered;
}
