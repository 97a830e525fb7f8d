import type { Link, MinuteSpan, PlanningProblem, Resource, Task } from '@/lib/schedule/planning-problem';

const NO_LAG = { kind: 'fixed', minutes: 0 } as const;

/** A task of one batch that anyone may do at any time, but for what is said. */
export function smallTask(id: string, attendedMinutes: number, more: Partial<Task> = {}): Task {
  return {
    id,
    batchId: 'batch',
    name: id,
    attendedMinutes,
    by: { kind: 'anyone' },
    leastPieceMinutes: null,
    setUp: null,
    releaseMinute: 0,
    holds: [],
    readyAfter: NO_LAG,
    state: { kind: 'open' },
    ...more,
  };
}

/** `to` follows `from` after so many minutes at the least. */
export function follows(from: string, to: string, minutes = 0): Link {
  const ends = { fromTaskId: from, from: 'finish', toTaskId: to, to: 'start' } as const;
  return { id: `${from}>${to}`, kind: 'least', ...ends, lag: { kind: 'fixed', minutes } };
}

/** `to` ends so many minutes after the start of `from` at the latest. */
export function within(from: string, to: string, minutes: number): Link {
  const ends = { fromTaskId: from, from: 'start', toTaskId: to, to: 'finish' } as const;
  return { id: `${from}>${to}!`, kind: 'greatest', ...ends, lag: { kind: 'fixed', minutes }, remedy: null };
}

/** Minutes of a day: `at(5, 9)` is nine o'clock of the sixth day. */
export function at(day: number, hour: number, minute = 0): number {
  return day * 1440 + hour * 60 + minute;
}

/** From hour to hour on each of the days named. */
export function hoursOn(days: readonly number[], from: number, to: number): readonly MinuteSpan[] {
  return days.map((day) => ({ startMinute: at(day, from), endMinute: at(day, to) }));
}

/** Two weeks of one batch with Ann at the bench. */
export function smallShop(
  sessions: readonly MinuteSpan[],
  tasks: readonly Task[],
  more: { readonly links?: readonly Link[]; readonly resources?: readonly Resource[] } & Partial<PlanningProblem> = {},
): PlanningProblem {
  return {
    epochAt: 0,
    nowMinute: 0,
    horizonMinute: 14 * 1440,
    batches: [{ id: 'batch', name: 'Batch', releaseMinute: 0, dueMinute: null, weight: 1 }],
    tasks,
    links: [],
    people: [{ id: 'ann', name: 'Ann', skills: [], sessions }],
    resources: [],
    lagTables: [],
    ...more,
  };
}
