import { mergedSpans } from '@/lib/schedule/bench-sessions';
import type { Lag } from '@/lib/schedule/lag';
import type { MinuteSpan, PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/** A change in the shop that makes what was impossible possible. Each was tried as it stands here. */
export type Lift =
  /** More hours at the bench: `extends` names the session that they touch, null where they stand alone. */
  | {
      readonly kind: 'hours';
      readonly personId: string;
      readonly startMinute: number;
      readonly endMinute: number;
      readonly extends: MinuteSpan | null;
    }
  /** More places wherever there are any. */
  | { readonly kind: 'places'; readonly resourceId: string; readonly places: number }
  /** A resource that closes later each time. */
  | { readonly kind: 'open-longer'; readonly resourceId: string; readonly minutes: number }
  /** The task takes no more places than this at once. */
  | { readonly kind: 'fewer-places'; readonly taskId: string; readonly resourceId: string; readonly amount: number }
  /** The task takes no longer than this at once: fewer pieces. */
  | { readonly kind: 'shorter'; readonly taskId: string; readonly attendedMinutes: number }
  /** The task may be put down, in stretches of no more than this. */
  | { readonly kind: 'put-down'; readonly taskId: string; readonly leastPieceMinutes: number }
  | { readonly kind: 'longer-window'; readonly linkId: string; readonly minutes: number }
  /** A closed window may be remedied, at this many minutes. */
  | { readonly kind: 'remedy'; readonly linkId: string; readonly minutes: number }
  /** A cure that is over after so many minutes. */
  | { readonly kind: 'cure-within'; readonly linkId: string; readonly minutes: number }
  | {
      readonly kind: 'hold-within';
      readonly taskId: string;
      readonly resourceId: string;
      readonly minutes: number;
    }
  | { readonly kind: 'batch-release'; readonly batchId: string; readonly minute: number }
  | { readonly kind: 'release'; readonly taskId: string; readonly minute: number }
  /** A pin that is let go. */
  | { readonly kind: 'unpin'; readonly taskId: string }
  /** A pin that is set to another minute. */
  | { readonly kind: 'pin-at'; readonly taskId: string; readonly minute: number }
  | { readonly kind: 'anyone'; readonly taskId: string }
  /** Another batch is left out. */
  | { readonly kind: 'leave-out'; readonly batchId: string };

/** The problem as it would be with a change made; sound where it was sound. */
export function lifted(problem: PlanningProblem, lift: Lift): PlanningProblem {
  const task = (id: string, change: (task: Task) => Task): PlanningProblem => ({
    ...problem,
    tasks: problem.tasks.map((one) => (one.id === id ? change(one) : one)),
  });
  switch (lift.kind) {
    case 'hours': {
      const { personId, startMinute, endMinute } = lift;
      const people = problem.people.map((person) =>
        person.id === personId
          ? { ...person, sessions: mergedSpans([...person.sessions, { startMinute, endMinute }]) }
          : person,
      );
      return { ...problem, people };
    }
    case 'places':
      return withResource(problem, lift.resourceId, (capacity) => (capacity > 0 ? capacity + lift.places : capacity));
    case 'open-longer':
      return closingLater(problem, lift.resourceId, lift.minutes);
    case 'fewer-places':
      return task(lift.taskId, (one) => ({
        ...one,
        holds: one.holds.map((hold) => (hold.resourceId === lift.resourceId ? { ...hold, amount: lift.amount } : hold)),
      }));
    case 'shorter':
      return task(lift.taskId, (one) => ({ ...one, attendedMinutes: lift.attendedMinutes }));
    case 'put-down':
      return task(lift.taskId, (one) => ({ ...one, leastPieceMinutes: lift.leastPieceMinutes }));
    case 'longer-window':
      return withLag(problem, lift.linkId, (lag) => longer(problem, lag, lift.minutes));
    case 'remedy': {
      const { minutes } = lift;
      const links = problem.links.map((link) =>
        link.id === lift.linkId && link.kind === 'greatest' ? { ...link, remedy: { minutes, words: '' } } : link,
      );
      return { ...problem, links };
    }
    case 'cure-within':
      return withLag(problem, lift.linkId, () => ({ kind: 'fixed', minutes: lift.minutes }));
    case 'hold-within': {
      const until: Lag = { kind: 'fixed', minutes: lift.minutes };
      return task(lift.taskId, (one) => ({
        ...one,
        holds: one.holds.map((hold) => (hold.resourceId === lift.resourceId ? { ...hold, until } : hold)),
      }));
    }
    case 'batch-release': {
      const { batchId, minute } = lift;
      const batches = problem.batches.map((one) => (one.id === batchId ? { ...one, releaseMinute: minute } : one));
      return { ...problem, batches };
    }
    case 'release':
      return task(lift.taskId, (one) => ({ ...one, releaseMinute: lift.minute }));
    case 'unpin':
      return task(lift.taskId, (one) => ({ ...one, state: { kind: 'open' } }));
    case 'pin-at':
      return task(lift.taskId, (one) =>
        one.state.kind === 'pinned' ? { ...one, state: { ...one.state, startMinute: lift.minute } } : one,
      );
    case 'anyone':
      return task(lift.taskId, (one) => ({ ...one, by: { kind: 'anyone' } }));
    case 'leave-out': {
      const gone = new Set(problem.tasks.filter((one) => one.batchId === lift.batchId).map(({ id }) => id));
      return {
        ...problem,
        tasks: problem.tasks.filter(({ id }) => !gone.has(id)),
        links: problem.links.filter(({ fromTaskId, toTaskId }) => !gone.has(fromTaskId) && !gone.has(toTaskId)),
      };
    }
  }
}

function withResource(
  problem: PlanningProblem,
  resourceId: string,
  places: (capacity: number) => number,
): PlanningProblem {
  const resources = problem.resources.map((one) =>
    one.id === resourceId
      ? {
          ...one,
          capacity: places(one.capacity),
          changes: one.changes.map((change) => ({ ...change, capacity: places(change.capacity) })),
        }
      : one,
  );
  return { ...problem, resources };
}

/** Every change to no places comes so much later; where it would come after the opening that follows, both go. */
function closingLater(problem: PlanningProblem, resourceId: string, minutes: number): PlanningProblem {
  const resources = problem.resources.map((one) => {
    if (one.id !== resourceId) return one;
    const changes: { fromMinute: number; capacity: number }[] = [];
    for (const [i, change] of one.changes.entries()) {
      const fromMinute = change.capacity === 0 ? change.fromMinute + minutes : change.fromMinute;
      const next = one.changes[i + 1];
      if (change.capacity === 0 && next !== undefined && fromMinute >= next.fromMinute) continue;
      changes.push({ fromMinute, capacity: change.capacity });
    }
    return { ...one, changes };
  });
  return { ...problem, resources };
}

function withLag(problem: PlanningProblem, linkId: string, change: (lag: Lag) => Lag | LagWithTable): PlanningProblem {
  const tables = [...problem.lagTables];
  const links = problem.links.map((link) => {
    if (link.id !== linkId) return link;
    const lag = change(link.lag);
    if (lag.kind !== 'own-table') return { ...link, lag };
    // A window may be made longer once more.
    const id = `${linkId}, longer ${tables.length}`;
    tables.push({ ...lag.table, id });
    return { ...link, lag: { kind: 'table' as const, tableId: id } };
  });
  return { ...problem, links, lagTables: tables };
}

interface LagWithTable {
  readonly kind: 'own-table';
  readonly table: PlanningProblem['lagTables'][number];
}

function longer({ lagTables }: PlanningProblem, lag: Lag, by: number): Lag | LagWithTable {
  if (lag.kind === 'fixed') return { kind: 'fixed', minutes: lag.minutes + by };
  const table = lagTables.find(({ id }) => id === lag.tableId);
  if (table === undefined) return lag;
  const minutes = table.minutes.map((one) => (one === null ? null : one + by));
  return { kind: 'own-table', table: { ...table, minutes } };
}
