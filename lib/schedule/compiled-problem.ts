import type { Lag, LagTable } from '@/lib/schedule/lag';
import { isFixed, type Link, type PlanningProblem, type Task } from '@/lib/schedule/planning-problem';

/** A minute after everything. */
export const NEVER = 0x3fffffff;

/** Entries of a lag table as ends, so that looking one up is one division. */
export interface CompiledTable {
  readonly startMinute: number;
  readonly stepMinutes: number;
  /** The end for each beginning; NEVER where it is not reached. */
  readonly ends: Int32Array;
}

/** A lag with its table at hand. */
export interface CompiledLag {
  readonly minutes: number;
  readonly table: CompiledTable | null;
}

export interface CompiledLink {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly isLeast: boolean;
  readonly fromFinish: boolean;
  readonly toFinish: boolean;
  readonly lag: CompiledLag;
  /** Minutes of its remedy; -1: it must be met. */
  readonly remedyMinutes: number;
}

export interface CompiledHold {
  readonly resource: number;
  readonly amount: number;
  readonly until: CompiledLag;
}

/** A problem with every id turned into an index: what the planner computes with. Indices follow the problem's lists. */
export interface CompiledProblem {
  readonly problem: PlanningProblem;
  readonly taskCount: number;
  readonly attended: Int32Array;
  /** 0: not to be put down. */
  readonly leastPiece: Int32Array;
  /** -1: none. */
  readonly setUpKey: Int32Array;
  readonly setUpMinutes: Int32Array;
  readonly setUpKeyCount: number;
  /** The latest of what batch, task and now allow. */
  readonly release: Int32Array;
  readonly batchOf: Int32Array;
  readonly people: readonly (readonly number[])[];
  readonly holds: readonly (readonly CompiledHold[])[];
  readonly readyAfter: readonly CompiledLag[];
  readonly fixed: Uint8Array;
  readonly linksIn: readonly (readonly CompiledLink[])[];
  readonly linksOut: readonly (readonly CompiledLink[])[];
  /** Tasks that have to be placed before each: the other ends of its links in. */
  readonly before: readonly (readonly number[])[];
  readonly open: readonly number[];
  /** 1: an open task with a link to a pinned one. */
  readonly isBeforePin: Uint8Array;
}

/** Compiles a sound problem (`problemFaults` finds nothing). */
export function compileProblem(problem: PlanningProblem): CompiledProblem {
  const { tasks, batches, nowMinute } = problem;
  const n = tasks.length;
  const batchIndex = indexOf(batches);
  const resourceIndex = indexOf(problem.resources);
  const tables = new Map(problem.lagTables.map((table) => [table.id, compiledTable(table)]));
  const lag = (source: Lag): CompiledLag =>
    source.kind === 'fixed'
      ? { minutes: source.minutes, table: null }
      : { minutes: 0, table: tables.get(source.tableId) ?? null };
  const keys = new Map<string, number>();
  const setUpKey = new Int32Array(n).fill(-1);
  for (const [i, { setUp }] of tasks.entries()) {
    if (setUp === null) continue;
    const key = keys.get(setUp.key) ?? keys.size;
    keys.set(setUp.key, key);
    setUpKey[i] = key;
  }
  const batchOf = Int32Array.from(tasks, (task) => batchIndex.get(task.batchId) ?? 0);
  const { linksIn, linksOut } = compiledLinks(problem, lag);
  return {
    problem,
    taskCount: n,
    attended: Int32Array.from(tasks, (task) => task.attendedMinutes),
    leastPiece: Int32Array.from(tasks, (task) => task.leastPieceMinutes ?? 0),
    setUpKey,
    setUpMinutes: Int32Array.from(tasks, (task) => task.setUp?.minutes ?? 0),
    setUpKeyCount: keys.size,
    release: Int32Array.from(tasks, (task, i) =>
      Math.max(nowMinute, task.releaseMinute, batches[batchOf[i] ?? 0]?.releaseMinute ?? nowMinute),
    ),
    batchOf,
    people: tasks.map((task) => peopleFor(problem, task)),
    holds: tasks.map((task) =>
      task.holds.map((hold) => ({
        resource: resourceIndex.get(hold.resourceId) ?? 0,
        amount: hold.amount,
        until: lag(hold.until),
      })),
    ),
    readyAfter: tasks.map((task) => lag(task.readyAfter)),
    fixed: Uint8Array.from(tasks, (task) => (isFixed(task) ? 1 : 0)),
    linksIn,
    linksOut,
    before: linksIn.map((links, task) =>
      links
        .filter(goesBefore)
        .map(({ from }) => from)
        .filter((from) => from !== task),
    ),
    open: tasks.flatMap((task, i) => (isFixed(task) ? [] : [i])),
    isBeforePin: Uint8Array.from(tasks, (task, i) =>
      !isFixed(task) && linksOut[i]?.some((link) => tasks[link.to]?.state.kind === 'pinned') ? 1 : 0,
    ),
  };
}

/** A least lag that is negative does not say that its `from` comes first. */
function goesBefore(link: CompiledLink): boolean {
  return !link.isLeast || link.lag.table !== null || link.lag.minutes >= 0;
}

/** The first minute at which what began at `from` is sure to be over; NEVER where it is not. */
export function opensAt(lag: CompiledLag, from: number): number {
  const { table } = lag;
  if (table === null) return from + lag.minutes;
  const index = Math.ceil((from - table.startMinute) / table.stepMinutes);
  return table.ends[Math.max(index, 0)] ?? NEVER;
}

/** The last minute at which a window that runs from `from` is sure to be open, as `closingMinute`; NEVER: it does not close. */
export function closesAt(lag: CompiledLag, from: number): number {
  const { table } = lag;
  if (table === null) return from + lag.minutes;
  const index = Math.floor((from - table.startMinute) / table.stepMinutes);
  if (index < 0) return from;
  return Math.max(table.ends[Math.min(index, table.ends.length - 1)] ?? NEVER, from);
}

/** Tables compiled before: one problem is compiled again and again with something changed, its cures rarely. */
const compiledTables = new WeakMap<LagTable, CompiledTable>();

function compiledTable(table: LagTable): CompiledTable {
  const known = compiledTables.get(table);
  if (known !== undefined) return known;
  const ends = Int32Array.from(table.minutes, (minutes, i) =>
    minutes === null ? NEVER : table.startMinute + i * table.stepMinutes + minutes,
  );
  const compiled = { startMinute: table.startMinute, stepMinutes: table.stepMinutes, ends };
  compiledTables.set(table, compiled);
  return compiled;
}

function compiledLinks(problem: PlanningProblem, lag: (source: Lag) => CompiledLag) {
  const taskIndex = indexOf(problem.tasks);
  const linksIn: CompiledLink[][] = problem.tasks.map(() => []);
  const linksOut: CompiledLink[][] = problem.tasks.map(() => []);
  for (const [index, link] of problem.links.entries()) {
    const from = taskIndex.get(link.fromTaskId) ?? 0;
    const to = taskIndex.get(link.toTaskId) ?? 0;
    const compiled = compiledLink(link, index, from, to, lag(link.lag));
    linksIn[to]?.push(compiled);
    linksOut[from]?.push(compiled);
  }
  return { linksIn, linksOut };
}

function compiledLink(link: Link, index: number, from: number, to: number, lag: CompiledLag): CompiledLink {
  return {
    index,
    from,
    to,
    isLeast: link.kind === 'least',
    fromFinish: link.from === 'finish',
    toFinish: link.to === 'finish',
    lag,
    remedyMinutes: link.kind === 'greatest' ? (link.remedy?.minutes ?? -1) : -1,
  };
}

function peopleFor(problem: PlanningProblem, { by }: Task): readonly number[] {
  return problem.people.flatMap((person, i) => {
    const may =
      by.kind === 'anyone' || (by.kind === 'skill' ? person.skills.includes(by.skill) : person.id === by.personId);
    return may ? [i] : [];
  });
}

function indexOf(list: readonly { readonly id: string }[]): ReadonlyMap<string, number> {
  return new Map(list.map(({ id }, i) => [id, i]));
}
