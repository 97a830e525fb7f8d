import { type Lag, lagTableFault } from '@/lib/schedule/lag';
import type { PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/** Where the parts of a problem do not fit each other; `id` is that of the part at fault. */
export interface ProblemFault {
  readonly code:
    | 'id-used-twice'
    | 'unknown-batch'
    | 'unknown-person'
    | 'unknown-resource'
    | 'unknown-lag-table'
    | 'unknown-task'
    | 'links-in-a-circle'
    | 'sessions-out-of-order'
    | 'changes-out-of-order'
    | 'lag-ends-earlier'
    | 'set-up-may-be-put-down'
    | 'finishes-before-start';
  readonly id: string;
}

/**
 * What makes a problem unfit to plan, beyond its shape: doubled or unknown ids, least lags in a circle, sessions that
 * touch or are out of order, a cure that ends earlier when begun later, a set-up on a task that may be put down.
 * Empty for a sound problem. The planner takes sound problems only.
 */
export function problemFaults(problem: PlanningProblem): readonly ProblemFault[] {
  const faults: ProblemFault[] = [];
  const { batches, tasks, links, people, resources, lagTables } = problem;
  for (const list of [batches, tasks, links, people, resources, lagTables]) faults.push(...doubled(list));
  const tables = new Set(lagTables.map(({ id }) => id));
  const known = (lag: Lag, id: string) => {
    if (lag.kind === 'table' && !tables.has(lag.tableId)) faults.push({ code: 'unknown-lag-table', id });
  };
  faults.push(...taskFaults(problem, known));
  const taskIds = new Set(tasks.map(({ id }) => id));
  for (const link of links) {
    if (!taskIds.has(link.fromTaskId) || !taskIds.has(link.toTaskId))
      faults.push({ code: 'unknown-task', id: link.id });
    known(link.lag, link.id);
  }
  for (const { id, sessions } of people) {
    const isWrong = sessions.some(
      (s, i) => s.endMinute <= s.startMinute || (i > 0 && s.startMinute <= (sessions[i - 1]?.endMinute ?? 0)),
    );
    if (isWrong) faults.push({ code: 'sessions-out-of-order', id });
  }
  for (const { id, changes } of resources) {
    const isWrong = changes.some((change, i) => i > 0 && change.fromMinute <= (changes[i - 1]?.fromMinute ?? 0));
    if (isWrong) faults.push({ code: 'changes-out-of-order', id });
  }
  for (const table of lagTables) {
    if (lagTableFault(table) !== null) faults.push({ code: 'lag-ends-earlier', id: table.id });
  }
  const circle = faults.length === 0 ? taskInCircle(problem) : null;
  return circle === null ? faults : [...faults, { code: 'links-in-a-circle', id: circle }];
}

function doubled(list: readonly { readonly id: string }[]): readonly ProblemFault[] {
  const seen = new Set<string>();
  return list.flatMap(({ id }) => {
    const isDoubled = seen.has(id);
    seen.add(id);
    return isDoubled ? [{ code: 'id-used-twice' as const, id }] : [];
  });
}

function taskFaults(problem: PlanningProblem, known: (lag: Lag, id: string) => void): readonly ProblemFault[] {
  const faults: ProblemFault[] = [];
  const batches = new Set(problem.batches.map(({ id }) => id));
  const people = new Set(problem.people.map(({ id }) => id));
  const resources = new Set(problem.resources.map(({ id }) => id));
  for (const task of problem.tasks) {
    const { id, state } = task;
    if (!batches.has(task.batchId)) faults.push({ code: 'unknown-batch', id });
    if (namedPeople(task).some((person) => !people.has(person))) faults.push({ code: 'unknown-person', id });
    if (task.holds.some((hold) => !resources.has(hold.resourceId))) faults.push({ code: 'unknown-resource', id });
    if (task.setUp !== null && task.leastPieceMinutes !== null) faults.push({ code: 'set-up-may-be-put-down', id });
    if ((state.kind === 'done' || state.kind === 'under-way') && state.finishMinute < state.startMinute)
      faults.push({ code: 'finishes-before-start', id });
    for (const lag of [task.readyAfter, ...task.holds.map((hold) => hold.until)]) known(lag, id);
  }
  return faults;
}

function namedPeople(task: Task): readonly string[] {
  const by = task.by.kind === 'person' ? [task.by.personId] : [];
  const own = task.state.kind === 'open' || task.state.personId === null ? [] : [task.state.personId];
  return [...by, ...own];
}

/** A task that waits for itself by least lags that are not negative; null where there is none. */
function taskInCircle(problem: PlanningProblem): string | null {
  const after = new Map<string, string[]>(problem.tasks.map(({ id }) => [id, []]));
  const waits = new Map<string, number>(problem.tasks.map(({ id }) => [id, 0]));
  for (const link of problem.links) {
    if (link.kind !== 'least' || (link.lag.kind === 'fixed' && link.lag.minutes < 0)) continue;
    after.get(link.fromTaskId)?.push(link.toTaskId);
    waits.set(link.toTaskId, (waits.get(link.toTaskId) ?? 0) + 1);
  }
  const ready = [...waits].flatMap(([id, count]) => (count === 0 ? [id] : []));
  for (const id of ready) {
    waits.delete(id);
    for (const next of after.get(id) ?? []) {
      const left = (waits.get(next) ?? 0) - 1;
      waits.set(next, left);
      if (left === 0) ready.push(next);
    }
  }
  return [...waits.keys()][0] ?? null;
}
