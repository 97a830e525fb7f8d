import { type CompiledHold, type CompiledProblem, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import type { MinuteSpan, Resource } from '@/lib/schedule/planning-problem';

/** Something of which there is only so much until a minute, with what each task takes of it. */
export interface Scarcity {
  readonly amounts: ReadonlyMap<number, number>;
  /** What tasks that are finished by a minute can have had of it, all together. */
  readonly roomUntil: (minute: number) => number;
}

/** The bench minutes of all who may do some task, and the places of each resource, as the given open tasks use them. */
export function scarcities(compiled: CompiledProblem, tasks: readonly number[]): readonly Scarcity[] {
  const groups = new Map(tasks.map((task) => [(compiled.people[task] ?? []).join(), compiled.people[task] ?? []]));
  const benches = [...groups.values()].map((people) =>
    benchOf(
      compiled,
      people,
      tasks.filter((task) => compiled.people[task]?.every((person) => people.includes(person))),
    ),
  );
  return [...benches, ...compiled.problem.resources.flatMap((resource, r) => placesOf(compiled, resource, r, tasks))];
}

/** Minutes at the bench. Who sets up in a session has so much less of it: each task bears its share at the least. */
function benchOf(compiled: CompiledProblem, people: readonly number[], tasks: readonly number[]): Scarcity {
  const { problem, setUpKey, setUpMinutes, attended } = compiled;
  const sessions = people.flatMap((person) => problem.people[person]?.sessions ?? []);
  const longest = Math.max(0, ...sessions.map((s) => s.endMinute - s.startMinute));
  const leastSetUp = new Map<number, number>();
  let paid = 0;
  for (const [task, key] of setUpKey.entries()) {
    if (key < 0) continue;
    const minutes = setUpMinutes[task] ?? 0;
    leastSetUp.set(key, Math.min(minutes, leastSetUp.get(key) ?? minutes));
    // What happened or is pinned may have paid for others in its session.
    if (compiled.fixed[task] === 1) paid += minutes;
  }
  const amountOf = (task: number) => {
    const minutes = attended[task] ?? 0;
    const setUp = leastSetUp.get(setUpKey[task] ?? -1) ?? 0;
    return longest > setUp ? minutes * (longest / (longest - setUp)) : minutes;
  };
  return {
    amounts: new Map(tasks.map((task) => [task, amountOf(task)])),
    roomUntil: (minute) =>
      sessions.reduce((sum, s) => sum + Math.max(0, Math.min(s.endMinute, minute) - s.startMinute), paid),
  };
}

/**
 * Places of a resource. Whatever begins to hold them from some minute on until the first of it could be over holds
 * them together at that end, so the sessions fall into stretches of which each has room for what there is once.
 */
function placesOf(
  compiled: CompiledProblem,
  resource: Resource,
  r: number,
  tasks: readonly number[],
): readonly Scarcity[] {
  const holds = tasks.flatMap((task) => {
    const minutes = compiled.attended[task] ?? 0;
    const own = (compiled.holds[task] ?? []).filter(
      ({ resource: held, amount, until }) =>
        held === r && amount > 0 && (until.table !== null || minutes + until.minutes > 0),
    );
    return own.map((hold) => ({ task, hold }));
  });
  if (holds.length === 0) return [];
  const { nowMinute, people } = compiled.problem;
  const persons = new Set(holds.flatMap(({ task }) => compiled.people[task] ?? []));
  const sessions = [...persons]
    .flatMap((person) => people[person]?.sessions ?? [])
    .sort((a, b) => a.startMinute - b.startMinute);
  const stretches = stretchesOf(sessions, nowMinute, (minute) => firstOver(compiled, holds, minute));
  const amounts = new Map<number, number>();
  for (const { task, hold } of holds) amounts.set(task, (amounts.get(task) ?? 0) + hold.amount);
  return [
    {
      amounts,
      roomUntil: (minute) =>
        stretches
          .filter(({ startMinute }) => startMinute < minute)
          .reduce((sum, { endMinute }) => sum + capacityAt(resource, endMinute - 1), 0),
    },
  ];
}

/** The first minute at which one of the holds that begin at `minute` or later can be over. */
function firstOver(
  { attended }: CompiledProblem,
  holds: readonly { readonly task: number; readonly hold: CompiledHold }[],
  minute: number,
): number {
  return Math.min(...holds.map(({ task, hold }) => opensAt(hold.until, minute + (attended[task] ?? 0))));
}

/** Stretches that begin in a session, one after the other, each until what begins with it can be over. */
function stretchesOf(
  sessions: readonly MinuteSpan[],
  fromMinute: number,
  overAt: (minute: number) => number,
): readonly MinuteSpan[] {
  const stretches: MinuteSpan[] = [];
  let covered = fromMinute;
  for (const { startMinute, endMinute } of sessions) {
    while (covered < endMinute) {
      const begins = Math.max(covered, startMinute);
      covered = overAt(begins);
      stretches.push({ startMinute: begins, endMinute: covered });
      if (covered >= NEVER) return stretches;
    }
  }
  return stretches;
}

function capacityAt({ capacity, changes }: Resource, minute: number): number {
  return changes.findLast(({ fromMinute }) => fromMinute <= minute)?.capacity ?? capacity;
}
