import { type AloneTimes, aloneTimes, inRouteOrder, mayDo } from '@/lib/schedule/alone-bound';
import type { Lag } from '@/lib/schedule/lag';
import type { MinuteSpan, PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/** More variables than this are not worth the wait beside what they prove. Chosen. */
const MOST_VARIABLES = 25_000;
/** The solver's tolerance: what it calls the least may be this much too high, as a share and in minutes. */
const TOLERANCE = 1e-6;

/**
 * A linear programme whose least value no plan that places every task can beat: tasks in shares over bench sessions,
 * each task whole, no session fuller than its minutes, and each batch at least as late as the shares of its tasks say.
 * What comes after `lastMinute` is one session without end. Order within a session, set-ups, places and windows are left
 * out, so it is never more than what the best plan costs. In CPLEX LP format; null where there is nothing to prove or
 * it would be too large. The value is weighted minutes late; take it through `provenMinutes`.
 */
export function sessionProgramme(problem: PlanningProblem, lastMinute: number): string | null {
  const times = aloneTimes(problem);
  const tails = leastTails(problem);
  const sessions = sessionsUntil(problem, lastMinute);
  const dueOf = new Map(problem.batches.map((batch, index) => [batch.id, { ...batch, index }]));
  const capacity = new Map<number, string[]>();
  const rows: string[] = [];
  let variables = 0;
  for (const [i, task] of problem.tasks.entries()) {
    const batch = dueOf.get(task.batchId);
    if (task.state.kind !== 'open' || task.attendedMinutes === 0 || batch === undefined) continue;
    const shares: string[] = [];
    const lateness: string[] = [];
    for (const [s, session] of sessions.entries()) {
      const begins = Math.max(session.startMinute, times.start.get(task.id) ?? 0);
      const room = session.endMinute - begins;
      const needed = task.leastPieceMinutes === null ? task.attendedMinutes : 1;
      if (room < needed || !(session.person === null || mayDo(session.person, task))) continue;
      const name = `x${i}_${s}`;
      shares.push(name);
      const own = capacity.get(s) ?? [];
      capacity.set(s, own);
      own.push(`${task.attendedMinutes} ${name}`);
      const finish = Math.max(begins + needed, times.finish.get(task.id) ?? 0);
      const late = batch.dueMinute === null ? 0 : readyThen(problem, task, finish, tails) - batch.dueMinute;
      if (late > 0) lateness.push(`${late} ${name}`);
    }
    if (shares.length === 0) return null;
    variables += shares.length;
    rows.push(`${shares.join('\n + ')} = 1`);
    if (lateness.length > 0) rows.push(`t${batch.index} - ${lateness.join('\n - ')} >= 0`);
  }
  if (variables === 0 || variables > MOST_VARIABLES) return null;
  for (const [s, terms] of capacity) {
    const session = sessions[s];
    if (session === undefined || session.person === null) continue;
    rows.push(`${terms.join('\n + ')} <= ${session.endMinute - session.startMinute}`);
  }
  const aim = problem.batches.map(({ weight }, index) => `${weight} t${index}`).join('\n + ');
  const bounds = problem.batches.map((batch, index) => `t${index} >= ${aloneLateness(batch, times)}`);
  return ['Minimize', aim, 'Subject To', ...rows, 'Bounds', ...bounds, 'End', ''].join('\n');
}

/** Whole weighted minutes that the least value of the programme proves. */
export function provenMinutes(leastValue: number): number {
  return Math.max(0, Math.floor(leastValue * (1 - TOLERANCE) - TOLERANCE));
}

interface BoundSession extends MinuteSpan {
  /** null: the one without end, in which anybody may do anything. */
  readonly person: PlanningProblem['people'][number] | null;
}

function sessionsUntil({ people }: PlanningProblem, lastMinute: number): readonly BoundSession[] {
  const own = people.flatMap((person) =>
    person.sessions.filter(({ startMinute }) => startMinute <= lastMinute).map((session) => ({ ...session, person })),
  );
  return [...own, { startMinute: lastMinute, endMinute: Number.MAX_SAFE_INTEGER, person: null }];
}

function readyThen(problem: PlanningProblem, task: Task, finish: number, tails: ReadonlyMap<string, number>): number {
  return Math.min(problem.horizonMinute, finish + (tails.get(task.id) ?? 0));
}

function aloneLateness(batch: PlanningProblem['batches'][number], { ready }: AloneTimes): number {
  return batch.dueMinute === null ? 0 : Math.max(0, (ready.get(batch.id) ?? 0) - batch.dueMinute);
}

/** From the finish of each task until its batch is ready at the least: the shortest cures there are, and the work between. */
function leastTails(problem: PlanningProblem): ReadonlyMap<string, number> {
  const shortest = new Map(
    problem.lagTables.map(({ id, minutes }) => [
      id,
      Math.min(...minutes.map((length) => length ?? Number.MAX_SAFE_INTEGER)),
    ]),
  );
  const least = (lag: Lag) => (lag.kind === 'fixed' ? Math.max(0, lag.minutes) : (shortest.get(lag.tableId) ?? 0));
  const tails = new Map<string, number>();
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  for (const task of [...inRouteOrder(problem)].reverse()) {
    let tail = Math.min(problem.horizonMinute, least(task.readyAfter));
    for (const link of problem.links) {
      const next = tasks.get(link.toTaskId);
      if (link.kind !== 'least' || link.fromTaskId !== task.id || link.from !== 'finish' || link.to !== 'start')
        continue;
      if (next === undefined || next.batchId !== task.batchId || next.state.kind !== 'open') continue;
      tail = Math.max(tail, least(link.lag) + next.attendedMinutes + (tails.get(next.id) ?? 0));
    }
    tails.set(task.id, Math.min(tail, problem.horizonMinute));
  }
  return tails;
}
