import { mayDo } from '@/lib/schedule/alone-bound';
import { NO_LAG } from '@/lib/schedule/lag';
import type { BenchPerson, PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/** One thing that a plan has to keep to, and that could be dropped to see whether it is what stands in the way. */
export type Condition =
  /** What all other batches need. */
  | { readonly kind: 'other-work' }
  /** What is pinned, under way or cures, with the time and the places it takes. */
  | { readonly kind: 'fixed'; readonly taskId: string }
  | { readonly kind: 'batch-release'; readonly batchId: string }
  | { readonly kind: 'release'; readonly taskId: string }
  /** A greatest lag without a remedy. */
  | { readonly kind: 'window'; readonly linkId: string }
  /** A least lag: a cure that is waited for. */
  | { readonly kind: 'cure'; readonly linkId: string }
  /** Places that a task takes. */
  | { readonly kind: 'hold'; readonly taskId: string; readonly resourceId: string }
  /** That its places stay taken until its cure is far enough. */
  | { readonly kind: 'hold-cure'; readonly taskId: string; readonly resourceId: string }
  /** Who may do it. */
  | { readonly kind: 'who'; readonly taskId: string }
  /** That it is done in one go within one session. */
  | { readonly kind: 'one-go'; readonly taskId: string }
  /** The hours in which those who may do it are at the bench. */
  | { readonly kind: 'hours'; readonly taskId: string };

/**
 * Everything that the tasks of `route` have to keep to, in the order in which it is dropped: what explains best comes
 * last and so stays. `fixed` tasks count where they take anybody's time or a place from now on.
 */
export function conditionsOf(problem: PlanningProblem, route: readonly Task[]): readonly Condition[] {
  const ids = new Set(route.map(({ id }) => id));
  const { nowMinute } = problem;
  const open = route.filter(({ state }) => state.kind === 'open' || state.kind === 'pinned');
  const fixed = problem.tasks.filter(
    ({ id, state, holds }) =>
      state.kind !== 'open' &&
      (state.kind === 'pinned' ? !isGoal(id, route) : state.finishMinute > nowMinute || holds.length > 0),
  );
  const into = problem.links.filter(({ toTaskId, fromTaskId }) => ids.has(toTaskId) && ids.has(fromTaskId));
  return [
    ...problem.batches.flatMap(({ id, releaseMinute }): Condition[] =>
      releaseMinute > nowMinute && open.some(({ batchId }) => batchId === id)
        ? [{ kind: 'batch-release', batchId: id }]
        : [],
    ),
    ...open.flatMap(({ id, releaseMinute }): Condition[] =>
      releaseMinute > nowMinute ? [{ kind: 'release', taskId: id }] : [],
    ),
    ...fixed.map(({ id }): Condition => ({ kind: 'fixed', taskId: id })),
    ...into.flatMap((link): Condition[] =>
      link.kind === 'least' && (link.lag.kind === 'table' || link.lag.minutes > 0)
        ? [{ kind: 'cure', linkId: link.id }]
        : [],
    ),
    ...into.flatMap((link): Condition[] =>
      link.kind === 'greatest' && link.remedy === null ? [{ kind: 'window', linkId: link.id }] : [],
    ),
    ...open.flatMap(({ id, holds }): Condition[] =>
      holds.flatMap(({ resourceId, until }): Condition[] =>
        until.kind === 'table' || until.minutes > 0 ? [{ kind: 'hold-cure', taskId: id, resourceId }] : [],
      ),
    ),
    ...open.flatMap(({ id, holds }): Condition[] =>
      holds.flatMap(({ resourceId, amount }): Condition[] =>
        amount > 0 ? [{ kind: 'hold', taskId: id, resourceId }] : [],
      ),
    ),
    ...open.flatMap((task): Condition[] => {
      if (task.attendedMinutes === 0) return [];
      const taskId = task.id;
      return [
        ...(task.by.kind === 'anyone' ? [] : [{ kind: 'who', taskId } as const]),
        ...(task.leastPieceMinutes === null ? [{ kind: 'one-go', taskId } as const] : []),
        { kind: 'hours', taskId },
      ];
    }),
  ];
}

/** The last of a route is what a reason is looked for. */
function isGoal(id: string, route: readonly Task[]): boolean {
  return route.at(-1)?.id === id;
}

/** A name of its own for each condition of a problem. */
export function conditionKey(condition: Condition): string {
  return Object.values(condition).join(' ');
}

/** The problem with some conditions dropped. `other-work` is not dropped here: it is the choice of the problem. */
export function without(problem: PlanningProblem, dropped: readonly Condition[]): PlanningProblem {
  if (dropped.length === 0) return problem;
  const keys = new Set(dropped.map(conditionKey));
  const is: IsDropped = (kind, id, resourceId) =>
    keys.has(resourceId === undefined ? `${kind} ${id}` : `${kind} ${id} ${resourceId}`);
  const changed = new Set(dropped.flatMap((one) => ('taskId' in one ? [one.taskId] : [])));
  const always: BenchPerson[] = [];
  const gone = new Set(
    problem.tasks.filter(({ id, state }) => state.kind !== 'open' && is('fixed', id)).map(({ id }) => id),
  );
  const isPinned = (id: string) => problem.tasks.some((task) => task.id === id && task.state.kind === 'pinned');
  const links = problem.links.flatMap((link) => {
    const isGone = (id: string) => gone.has(id) && !isPinned(id);
    if (isGone(link.fromTaskId) || isGone(link.toTaskId)) return [];
    if (link.kind === 'greatest' && is('window', link.id)) return [];
    return [link.kind === 'least' && is('cure', link.id) ? { ...link, lag: NO_LAG } : link];
  });
  const linked = new Set(links.flatMap(({ fromTaskId, toTaskId }) => [fromTaskId, toTaskId]));
  const tasks = problem.tasks.flatMap((task): Task[] => {
    const { id } = task;
    if (gone.has(id)) {
      // A pin that others wait for is planned like the rest; one that nobody waits for is left out.
      if (!isPinned(id) || !linked.has(id)) return [];
      return [{ ...task, state: { kind: 'open' } }];
    }
    return [changed.has(id) ? eased(task, problem, is, always) : task];
  });
  const left = new Set(tasks.map(({ id }) => id));
  return {
    ...problem,
    tasks: always.length === 0 ? tasks : tasks.map(byThoseHere),
    links: links.filter(({ fromTaskId, toTaskId }) => left.has(fromTaskId) && left.has(toTaskId)),
    batches: problem.batches.map((batch) =>
      is('batch-release', batch.id) ? { ...batch, releaseMinute: problem.nowMinute } : batch,
    ),
    people:
      always.length === 0
        ? problem.people
        : [...problem.people.map((person) => ({ ...person, skills: [...person.skills, HERE] })), ...always],
  };
}

/** What everybody has who really works here: those who are always there for one task do no other. */
const HERE = 'works here';

function byThoseHere(task: Task): Task {
  return task.by.kind === 'anyone' ? { ...task, by: { kind: 'skill', skill: HERE } } : task;
}

type IsDropped = (kind: Condition['kind'], id: string, resourceId?: string) => boolean;

/** One task without what is dropped of it; who has to be at the bench all the time for it is added to `always`. */
function eased(task: Task, problem: PlanningProblem, is: IsDropped, always: BenchPerson[]): Task {
  const { id: taskId } = task;
  let own = task;
  const holds = task.holds.flatMap((hold) => {
    const { resourceId } = hold;
    if (is('hold', taskId, resourceId)) return [];
    return [is('hold-cure', taskId, resourceId) ? { ...hold, until: NO_LAG } : hold];
  });
  if (holds.some((hold, i) => hold !== task.holds[i]) || holds.length !== task.holds.length) own = { ...own, holds };
  if (is('release', taskId)) own = { ...own, releaseMinute: problem.nowMinute };
  if (is('who', taskId)) own = { ...own, by: { kind: 'anyone' } };
  if (is('one-go', taskId) && own.leastPieceMinutes === null) {
    const setUpMinutes = own.setUp?.minutes ?? 0;
    own = { ...own, leastPieceMinutes: 1, setUp: null, attendedMinutes: own.attendedMinutes + setUpMinutes };
  }
  if (is('hours', taskId) && (attendants(problem, own).length > 0 || problem.people.length === 0)) {
    const id = `always ${taskId}`;
    const sessions = [{ startMinute: problem.nowMinute, endMinute: problem.horizonMinute }];
    if (problem.horizonMinute > problem.nowMinute) {
      always.push({ id, name: id, skills: [], sessions });
      const { state } = own;
      const by = { kind: 'person', personId: id } as const;
      own = {
        ...own,
        by,
        state: state.kind === 'pinned' && state.personId !== null ? { ...state, personId: id } : state,
      };
    }
  }
  return own;
}

/** The people who may do a task. */
export function attendants(
  { people }: Pick<PlanningProblem, 'people'>,
  task: Pick<Task, 'by'>,
): readonly BenchPerson[] {
  return people.filter((person) => mayDo(person, task));
}
