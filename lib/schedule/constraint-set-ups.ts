import type { AxisSession } from '@/lib/schedule/bench-axis';
import { knownTerm, type ModelText, shiftedTerm, type YesNo } from '@/lib/schedule/constraint-text';
import type { BenchTerms, ModelVisit } from '@/lib/schedule/constraint-visits';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { PlannedTask } from '@/lib/schedule/shop-plan';

/** A visit pays its set-up unless another of its key begins before it in the same session. */
export function keepSetUps(
  problem: PlanningProblem,
  text: ModelText,
  axis: readonly AxisSession[],
  visits: readonly ModelVisit[],
  staying: readonly PlannedTask[],
): void {
  const ready = readySessions(problem, axis, staying);
  const after = routesAfter(problem);
  for (const { task, bench } of visits) {
    const { setUp } = task;
    if (setUp === null || bench === null || bench.pays === null) continue;
    const others = visits.filter(
      (other) => other.task.id !== task.id && other.task.setUp?.key === setUp.key && !after(task.id, other.task.id),
    );
    const { pays, session, axisStart } = bench;
    const excuses = others.flatMap((other) => (other.bench === null ? [] : [excuseBy(text, bench, other.bench)]));
    for (const made of ready) {
      if (made.key !== setUp.key) continue;
      const isReady = text.yesNo('x');
      text.sameIf(isReady, session, knownTerm(made.session));
      text.atMostZeroIf(isReady, [
        [1, knownTerm(made.from)],
        [-1, axisStart],
      ]);
      excuses.push(isReady);
    }
    text.anyOf([pays, ...excuses]);
  }
}

/** Half of an equivalence is enough: no visit pays gladly. */
function excuseBy(text: ModelText, own: BenchTerms, other: BenchTerms): YesNo {
  const isExcused = text.yesNo('x');
  text.sameIf(isExcused, own.session, other.session);
  text.atMostZeroIf(isExcused, [
    [1, shiftedTerm(other.axisStart, 1)],
    [-1, own.axisStart],
  ]);
  return isExcused;
}

/** Where what stays has a set-up paid already, and from which minute of the axis on. */
function readySessions(problem: PlanningProblem, axis: readonly AxisSession[], staying: readonly PlannedTask[]) {
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const people = new Map(problem.people.map(({ id }, i) => [id, i]));
  return staying.flatMap(({ taskId, personId, startMinute }) => {
    const key = tasks.get(taskId)?.setUp?.key;
    const person = people.get(personId ?? '');
    if (key === undefined || person === undefined) return [];
    const own = problem.people[person]?.sessions.find(
      (one) => one.startMinute <= startMinute && startMinute < one.endMinute,
    );
    return axis.flatMap((session, index) => {
      if (session.person !== person || session.clockEnd !== own?.endMinute) return [];
      const from = Math.max(session.axisStart, startMinute + session.axisStart - session.clockStart);
      return [{ session: index + 1, from, key }];
    });
  });
}

/** Whether one task can only be done after another, by the least lags that do not run backwards. */
function routesAfter(problem: PlanningProblem): (first: string, second: string) => boolean {
  const next = new Map<string, string[]>();
  for (const link of problem.links) {
    if (link.kind !== 'least' || (link.lag.kind === 'fixed' && link.lag.minutes < 0) || link.from !== 'finish')
      continue;
    if (link.to !== 'start') continue;
    next.set(link.fromTaskId, [...(next.get(link.fromTaskId) ?? []), link.toTaskId]);
  }
  const reached = new Map<string, ReadonlySet<string>>();
  const reach = (from: string): ReadonlySet<string> => {
    const known = reached.get(from);
    if (known !== undefined) return known;
    const own = new Set<string>();
    for (const to of next.get(from) ?? []) {
      own.add(to);
      for (const further of reach(to)) own.add(further);
    }
    reached.set(from, own);
    return own;
  };
  return (first, second) => reach(first).has(second);
}
