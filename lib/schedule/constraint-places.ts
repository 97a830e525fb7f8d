import { type AxisSession, spansOnAxis } from '@/lib/schedule/bench-axis';
import { mergedSpans } from '@/lib/schedule/bench-sessions';
import { capacityAt, minuteAfter } from '@/lib/schedule/check-holds';
import type { ModelLags } from '@/lib/schedule/constraint-lags';
import { knownTerm, type ModelTerm, type ModelText } from '@/lib/schedule/constraint-text';
import type { ModelVisit } from '@/lib/schedule/constraint-visits';
import type { Hold, PlanningProblem, Resource } from '@/lib/schedule/planning-problem';
import type { PlannedTask } from '@/lib/schedule/shop-plan';

/** What the use of bench and resources is written with. */
export interface UseContext {
  readonly problem: PlanningProblem;
  readonly text: ModelText;
  readonly axis: readonly AxisSession[];
  readonly lags: ModelLags;
  readonly visits: readonly ModelVisit[];
  /** What stays where it is. */
  readonly staying: readonly PlannedTask[];
}

interface Use {
  readonly start: ModelTerm;
  readonly length: ModelTerm;
  readonly amount: number;
}

/** Nobody does two things at a time: on the axis no two visits overlap, nor one with what stays. */
export function keepOneThingAtATime({ problem, text, axis, visits, staying }: UseContext): void {
  const people = new Map(problem.people.map(({ id }, i) => [id, i]));
  const done = new Set(problem.tasks.flatMap(({ id, state }) => (state.kind === 'done' ? [id] : [])));
  const blocked = staying.flatMap(({ taskId, personId, pieces }) =>
    done.has(taskId) || personId === null
      ? []
      : pieces.flatMap((piece) => spansOnAxis(axis, people.get(personId) ?? -1, piece)),
  );
  const uses: Use[] = mergedSpans(blocked).map(({ startMinute, endMinute }) => known(startMinute, endMinute, 1));
  for (const { bench } of visits) {
    if (bench !== null) uses.push({ start: bench.axisStart, length: bench.duration, amount: 1 });
  }
  text.atMostAtATime(uses, 1);
}

/** No resource is held by more than it has, at any minute from now on. */
export function keepResources(context: UseContext): void {
  for (const resource of context.problem.resources) {
    const holds = context.visits.flatMap((visit) =>
      visit.task.holds
        .filter(({ resourceId, amount }) => resourceId === resource.id && amount > 0)
        .map((hold) => useOf(context, visit, hold)),
    );
    if (holds.length === 0) continue;
    const most = Math.max(resource.capacity, ...resource.changes.map(({ capacity }) => capacity));
    const taken = takenPlaces(context, resource, most);
    const asked = holds.reduce((sum, { amount }) => sum + amount, 0);
    if (asked + Math.max(0, ...taken.map(({ amount }) => amount)) <= most) continue;
    context.text.atMostAtATime([...taken, ...holds], most);
  }
}

/** From its start until its lag after its finish is over. */
function useOf({ text, lags }: UseContext, { start, finish, bench, task }: ModelVisit, { amount, until }: Hold): Use {
  const isWhole = bench !== null && task.leastPieceMinutes === null;
  const end = lags.opening(until, finish, null);
  if (isWhole && until.kind === 'fixed' && until.minutes === 0)
    return { start: start.term, length: bench.duration, amount };
  const length = text.variable('h', 0, Math.max(0, end.most - start.term.least));
  const isForward = until.kind === 'table' || until.minutes >= 0;
  text.zero([
    [1, isForward ? end : text.later(end, start.term)],
    [-1, start.term],
    [-1, length],
  ]);
  return { start: start.term, length, amount };
}

/** What is not free of a resource: closed, or held by what stays; in stretches that do not overlap. */
function takenPlaces({ problem, staying }: UseContext, resource: Resource, most: number): readonly Use[] {
  const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const spans = staying.flatMap(({ taskId, startMinute, finishMinute }) =>
    (tasks.get(taskId)?.holds ?? [])
      .filter(({ resourceId, amount }) => resourceId === resource.id && amount > 0)
      .map(({ amount, until }) => ({
        startMinute,
        endMinute: minuteAfter(tables, until, finishMinute) ?? Number.POSITIVE_INFINITY,
        amount,
      })),
  );
  const lastMinute = problem.horizonMinute * 2;
  const moments = new Set([problem.nowMinute]);
  for (const { fromMinute } of resource.changes) moments.add(fromMinute);
  for (const { startMinute, endMinute } of spans) moments.add(startMinute).add(Math.min(endMinute, lastMinute));
  const ordered = [...moments].filter((minute) => minute >= problem.nowMinute).sort((a, b) => a - b);
  return ordered.flatMap((minute, i): Use[] => {
    const held = spans.reduce(
      (sum, span) => (span.startMinute <= minute && minute < span.endMinute ? sum + span.amount : sum),
      0,
    );
    const amount = Math.min(most, most - capacityAt(resource, minute) + held);
    const end = ordered[i + 1] ?? lastMinute;
    return amount <= 0 ? [] : [known(minute, end, amount)];
  });
}

function known(start: number, end: number, amount: number): Use {
  return { start: knownTerm(start), length: knownTerm(end - start), amount };
}
