import type { Lag, LagTable } from '@/lib/schedule/lag';
import type { BenchPerson, Hold, Link, PlannedBatch, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** Odd problems of every kind that the model allows, one a seed: small, so that ten thousand of them can be planned. */
export function randomShop(seed: number): PlanningProblem {
  const random = seededRandom(seed);
  const int = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const chance = (share: number) => random() < share;
  const pick = <T>(list: readonly [T, ...T[]]): T => list[Math.floor(random() * list.length)] ?? list[0];
  const horizonMinute = int(2, 28) * 1440;
  const people: BenchPerson[] = Array.from({ length: int(0, 3) + (chance(0.95) ? 1 : 0) }, (_, p) => ({
    id: `person${p}`,
    name: `Person ${p}`,
    skills: chance(0.5) ? ['paint'] : [],
    sessions: sessions(),
  }));
  function sessions() {
    const spans: { startMinute: number; endMinute: number }[] = [];
    for (let day = 0; day * 1440 < horizonMinute; day++) {
      if (chance(0.3)) continue; // away
      const startMinute = day * 1440 + int(0, 1200);
      const endMinute = startMinute + pick([15, 60, 180, 180, 240]);
      if (startMinute > (spans.at(-1)?.endMinute ?? -1)) spans.push({ startMinute, endMinute });
    }
    return spans;
  }
  const lagTables: LagTable[] = Array.from({ length: 2 }, (_, t) => {
    const stepMinutes = pick([30, 60, 360]);
    let end = 0;
    const minutes = Array.from(
      { length: Math.floor((horizonMinute / stepMinutes) * (chance(0.1) ? 0.5 : 1.2)) },
      (_x, i) => {
        end = Math.max(end, i * stepMinutes + int(200, 900));
        return end - i * stepMinutes;
      },
    );
    return { id: `table${t}`, startMinute: chance(0.9) ? 0 : -720, stepMinutes, minutes };
  });
  const lag = (): Lag =>
    chance(0.5)
      ? { kind: 'fixed', minutes: pick([0, 0, 30, 600, 1440]) }
      : { kind: 'table', tableId: pick(['table0', 'table1']) };
  const resources = Array.from({ length: int(0, 3) }, (_, r) => ({
    id: `resource${r}`,
    name: `Resource ${r}`,
    capacity: int(0, 6),
    changes: chance(0.6)
      ? []
      : Array.from({ length: int(1, 12) }, (_x, i) => ({ fromMinute: i * 1440 + (i % 2) * 600, capacity: int(0, 6) })),
  }));
  const batches: PlannedBatch[] = [];
  const tasks: Task[] = [];
  const links: Link[] = [];
  const nowMinute = chance(0.3) ? int(0, 2000) : 0;
  for (let b = 0; b < int(1, 5); b++) {
    batches.push({
      id: `batch${b}`,
      name: `Batch ${b}`,
      releaseMinute: chance(0.7) ? 0 : int(0, horizonMinute),
      dueMinute: chance(0.2) ? null : int(0, horizonMinute),
      weight: pick([1, 1, 2, 0, 5]),
    });
    const first = tasks.length;
    const count = int(1, 7);
    for (let k = 0; k < count; k++) {
      const id = `task${tasks.length}`;
      const isBreakable = chance(0.15);
      tasks.push({
        id,
        batchId: `batch${b}`,
        name: id,
        attendedMinutes: pick([0, 5, 20, 45, 90, 150]),
        by: by(),
        leastPieceMinutes: isBreakable ? pick([1, 10, 30]) : null,
        setUp: !isBreakable && chance(0.4) ? { key: pick(['red', 'slow glue']), minutes: pick([0, 5, 15]) } : null,
        releaseMinute: chance(0.85) ? 0 : int(0, horizonMinute),
        holds: holds(),
        readyAfter: chance(0.8) ? { kind: 'fixed', minutes: 0 } : lag(),
        state: state(k),
      });
      for (let before = first; before < first + k; before++) {
        const isNext = before === first + k - 1;
        if (!chance(isNext ? 0.85 : 0.1)) continue;
        const ends = { fromTaskId: `task${before}`, toTaskId: id };
        links.push({
          id: `link${links.length}`,
          kind: 'least',
          ...ends,
          from: chance(0.9) ? 'finish' : 'start',
          to: chance(0.93) ? 'start' : 'finish',
          lag: chance(0.03) ? { kind: 'fixed', minutes: -60 } : lag(),
        });
        if (!chance(0.3)) continue;
        links.push({
          id: `link${links.length}`,
          kind: 'greatest',
          ...ends,
          from: chance(0.5) ? 'finish' : 'start',
          to: chance(0.8) ? 'start' : 'finish',
          lag: chance(0.7) ? { kind: 'fixed', minutes: pick([60, 900, 1560, 3000]) } : lag(),
          remedy: chance(0.6) ? { minutes: pick([0, 10, 30]), words: 'sand' } : null,
        });
      }
    }
  }
  function by(): Task['by'] {
    if (chance(0.7)) return { kind: 'anyone' };
    if (chance(0.5)) return { kind: 'skill', skill: pick(['paint', 'paint', 'turning']) };
    const person = people[int(0, people.length - 1)];
    return person === undefined ? { kind: 'anyone' } : { kind: 'person', personId: person.id };
  }
  function holds(): Hold[] {
    return resources.flatMap((resource) =>
      chance(0.35)
        ? [{ resourceId: resource.id, amount: int(0, 3), until: chance(0.3) ? { kind: 'fixed', minutes: 0 } : lag() }]
        : [],
    );
  }
  function state(k: number): Task['state'] {
    const personId = chance(0.5) ? (people[int(0, people.length - 1)]?.id ?? null) : null;
    if (k === 0 && chance(0.1)) {
      const startMinute = int(-600, nowMinute);
      return { kind: 'done', startMinute, finishMinute: startMinute + int(0, 60), personId };
    }
    if (k <= 1 && chance(0.06)) {
      return { kind: 'under-way', startMinute: nowMinute - int(0, 60), finishMinute: nowMinute + int(0, 60), personId };
    }
    if (chance(0.08)) return { kind: 'pinned', startMinute: int(0, horizonMinute), personId };
    return { kind: 'open' };
  }
  return { epochAt: 0, nowMinute, horizonMinute, batches, tasks, links, people, resources, lagTables };
}
