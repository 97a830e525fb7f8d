import { aloneTimes } from '@/lib/schedule/alone-bound';
import { BenchBook } from '@/lib/schedule/bench-book';
import { type CompiledProblem, compileProblem, NEVER } from '@/lib/schedule/compiled-problem';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { ReadyAlone } from '@/lib/schedule/ready-alone';
import { scarcities } from '@/lib/schedule/scarcity';

/** More terms than this are not worth the wait beside what they prove. Chosen. */
const MOST_TERMS = 150_000;
/** The solver's tolerance: what it calls the least may be this much too high, as a share and in minutes. */
const TOLERANCE = 1e-6;
/** How fine the minutes after a task are counted. */
const STEP_MINUTES = 15;

/**
 * A programme whose least value no plan that places every task can beat: for each batch and each of the minutes at
 * which it may be ready, whether it is ready then or later (`y`, 0 or 1). Whatever has to be finished by the end of a
 * session so that batches are ready before that must fit into what there is of the bench and of each resource until
 * then (`scarcities`). Windows and the order within that are left out. Its value is weighted minutes late; take it
 * through `provenMinutes`. In CPLEX LP format; null where there is nothing to prove or it would be too large. Nothing
 * is counted after `lastMinute`: the later that is, the more it proves.
 */
export function finishProgramme(problem: PlanningProblem, lastMinute: number): string | null {
  const compiled = compileProblem(problem);
  const book = new BenchBook(compiled);
  const ready = new ReadyAlone(compiled, book, STEP_MINUTES);
  const grids = readyGrids(compiled, book, ready, lastMinute);
  const rows = capacityRows(compiled, book, ready, grids, lastMinute);
  const terms = rows.reduce((sum, row) => sum + row.work.size, 0);
  if (terms === 0 || terms > MOST_TERMS) return null;
  const cost: string[] = [];
  const order: string[] = [];
  const names: string[] = [];
  let constant = 0;
  for (const [b, grid] of grids.entries()) {
    const weight = problem.batches[b]?.weight ?? 0;
    constant += weight * (grid.from - grid.due);
    for (const [k, minute] of grid.minutes.entries()) {
      names.push(nameOf(b, k));
      cost.push(`${weight * (minute - (grid.minutes[k - 1] ?? grid.from))} ${nameOf(b, k)}`);
      if (k > 0) order.push(`${nameOf(b, k - 1)} - ${nameOf(b, k)} >= 0`);
    }
  }
  if (names.length === 0) return null;
  // What is needed by then, less what is put off, within what there is.
  const capacity = rows.map(({ work, room }) => {
    const needed = [...work.values()].reduce((sum, minutes) => sum + minutes, 0);
    const putOff = [...work].map(([name, minutes]) => `${shown(minutes)} ${name}`).join('\n + ');
    return `${putOff} >= ${shown(needed - room)}`;
  });
  const aim = [`${constant} one`, ...cost].join('\n + ');
  const limits = ['Bounds', 'one = 1', 'Binary', ...names];
  return ['Minimize', aim, 'Subject To', ...capacity, ...order, ...limits, 'End', ''].join('\n');
}

/** Whole weighted minutes that the least value of the programme proves. */
export function provenMinutes(leastValue: number): number {
  return Math.max(0, Math.floor(leastValue * (1 - TOLERANCE) - TOLERANCE));
}

/** The minutes at which a batch may be ready too late: the earliest of each session. */
interface ReadyGrid {
  readonly due: number;
  /** Late from here on: its due minute, or later where it cannot be ready by then. */
  readonly from: number;
  readonly minutes: readonly number[];
}

function nameOf(batch: number, k: number): string {
  return `y${batch}_${k}`;
}

function readyGrids(
  compiled: CompiledProblem,
  book: BenchBook,
  ready: ReadyAlone,
  lastMinute: number,
): readonly ReadyGrid[] {
  const { problem } = compiled;
  const alone = aloneTimes(problem).ready;
  const starts = [...new Set(book.sessionStart)].filter((start) => start <= lastMinute).sort((a, b) => a - b);
  return problem.batches.map((batch, b) => {
    const last = compiled.open.findLast((task) => compiled.batchOf[task] === b);
    const due = batch.dueMinute ?? problem.horizonMinute;
    const from =
      batch.dueMinute === null ? due : Math.max(due, Math.min(alone.get(batch.id) ?? due, problem.horizonMinute));
    if (last === undefined || batch.dueMinute === null || batch.weight === 0) return { due, from, minutes: [] };
    const minutes = starts.map((start) => ready.after(last, start + (compiled.attended[last] ?? 0)));
    const rising = minutes.filter((minute, i) => minute > (minutes[i - 1] ?? 0));
    return { due, from, minutes: rising.filter((minute) => minute > from && minute < problem.horizonMinute) };
  });
}

interface CapacityRow {
  /** What is used up by the variable that puts it off. */
  readonly work: ReadonlyMap<string, number>;
  readonly room: number;
}

function capacityRows(
  compiled: CompiledProblem,
  book: BenchBook,
  ready: ReadyAlone,
  grids: readonly ReadyGrid[],
  lastMinute: number,
): readonly CapacityRow[] {
  const ends = [...new Set(book.sessionEnd)].filter((end) => end <= lastMinute).sort((a, b) => a - b);
  const tasks = compiled.open.filter((task) => {
    const grid = grids[compiled.batchOf[task] ?? 0];
    return (compiled.attended[task] ?? 0) > 0 && grid !== undefined && grid.minutes.length > 0;
  });
  // By task and session: what puts off its finish beyond the end of that session.
  const putOff = new Map(
    tasks.map((task) => {
      const batch = compiled.batchOf[task] ?? 0;
      const names = ends.map((end) => {
        const after = ready.after(task, finishAfter(compiled, book, task, end));
        const k = lastUpTo(grids[batch]?.minutes ?? [], after);
        return k < 0 ? null : nameOf(batch, k);
      });
      return [task, names];
    }),
  );
  return scarcities(compiled, tasks).flatMap(({ amounts, roomUntil }) =>
    ends.flatMap((end, e) => {
      const work = new Map<string, number>();
      let needed = 0;
      for (const [task, amount] of amounts) {
        const name = putOff.get(task)?.[e] ?? null;
        if (name === null) continue;
        work.set(name, (work.get(name) ?? 0) + amount);
        needed += amount;
      }
      const room = roomUntil(end);
      return needed > room ? [{ work, room }] : [];
    }),
  );
}

/** The earliest finish of a task that is not finished by the end of some session. */
function finishAfter(compiled: CompiledProblem, book: BenchBook, task: number, end: number): number {
  const minutes = compiled.attended[task] ?? 0;
  const isWhole = compiled.leastPiece[task] === 0;
  let earliest = NEVER;
  for (const person of compiled.people[task] ?? []) {
    for (let s = book.sessionAfter(person, end); s < (book.firstOf[person + 1] ?? 0); s++) {
      const start = book.sessionStart[s] ?? 0;
      const finish = Math.max(end + 1, start + (isWhole ? minutes : 1));
      if (finish > (book.sessionEnd[s] ?? 0)) continue;
      earliest = Math.min(earliest, finish);
      break;
    }
  }
  return earliest;
}

/** Shares of a minute that set-ups are counted in, as the solver reads them. */
function shown(minutes: number): string {
  return minutes.toFixed(6);
}

/** The index of the last of rising minutes that is not after a minute; -1: none is. */
function lastUpTo(minutes: readonly number[], minute: number): number {
  let low = 0;
  let high = minutes.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((minutes[middle] ?? 0) <= minute) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
