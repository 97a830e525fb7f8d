import type { LagTable } from '@/lib/schedule/lag';
import type { Link, PlannedBatch, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import { seededRandom } from '@/lib/statistics/seeded-random';

export const LOADS = ['comfortable', 'tight', 'overloaded'] as const;
export type Load = (typeof LOADS)[number];

const DAY = 1440;
/** Eight weeks and as many again, so that an overloaded shop still gets all its work done. */
const DAYS = 240;
/** Share of the bench minutes until the last due date that the work takes. */
const SHARE: Readonly<Record<Load, number>> = { comfortable: 0.45, tight: 0.92, overloaded: 1.4 };

/**
 * A workshop as it may be: evenings, a Saturday and a Sunday morning, some of them away; routes of 10 to 16 steps from
 * drilling to assembly with glue-ups that cure longer by night, coats on a rotator with windows, a booth by day.
 * `batches` with 1 to 3 `people`; the same numbers give the same shop.
 */
export function shopInstance(batches: number, people: number, load: Load, seed: number): PlanningProblem {
  const random = seededRandom(seed * 7919 + batches * 31 + people);
  const int = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const chance = (share: number) => random() < share;
  const tasks: Task[] = [];
  const links: Link[] = [];
  const work: number[] = [];
  for (let b = 0; b < batches; b++) work.push(addRoute(b));

  function addRoute(b: number): number {
    let before: string | null = null;
    let sum = 0;
    const colour = `colour ${int(1, 4)}`;
    const visit = (name: string, attendedMinutes: number, more: Partial<Task> = {}): string => {
      const id = `b${b}-${tasks.length}`;
      sum += attendedMinutes;
      tasks.push({
        id,
        batchId: `b${b}`,
        name,
        attendedMinutes,
        by: { kind: 'anyone' },
        leastPieceMinutes: null,
        setUp: null,
        releaseMinute: 0,
        holds: [],
        readyAfter: { kind: 'fixed', minutes: 0 },
        state: { kind: 'open' },
        ...more,
      });
      return id;
    };
    const link = (from: string, to: string, table: string | null) => {
      const lag =
        table === null ? ({ kind: 'fixed', minutes: 0 } as const) : ({ kind: 'table', tableId: table } as const);
      links.push({
        id: `l${links.length}`,
        kind: 'least',
        fromTaskId: from,
        from: 'finish',
        toTaskId: to,
        to: 'start',
        lag,
      });
    };
    const next = (id: string, table: string | null = null) => {
      if (before !== null) link(before, id, table);
      before = id;
    };
    next(visit('shape', int(40, 120), { leastPieceMinutes: 20 }));
    next(visit('drill', int(20, 60)));
    const wires = visit('twist wires', int(20, 60), { leastPieceMinutes: 15 });
    let glue: string | null = null;
    for (let mix = int(1, 4); mix > 0; mix--) {
      const id = visit('glue', int(15, 30), {
        setUp: { key: 'slow glue', minutes: 10 },
        holds: [{ resourceId: 'clamps', amount: int(2, 6), until: { kind: 'table', tableId: 'handle' } }],
      });
      if (glue === null) link(wires, id, null);
      next(id);
      glue = id;
    }
    next(visit('seal', int(10, 25)), 'handle');
    for (let coat = int(1, 3); coat > 0; coat--) {
      next(
        visit('paint', int(15, 40), {
          setUp: { key: colour, minutes: 15 },
          by: chance(0.3) ? { kind: 'skill', skill: 'paint' } : { kind: 'anyone' },
          holds: [{ resourceId: 'booth', amount: 1, until: { kind: 'fixed', minutes: 30 } }],
        }),
        coat === 1 ? 'dry' : null,
      );
    }
    const coats = int(2, 4);
    for (let coat = 0; coat < coats; coat++) {
      const last: string | null = before;
      const id = visit('topcoat', int(20, 45), {
        setUp: { key: 'topcoat', minutes: 10 },
        holds: [{ resourceId: 'rotator', amount: int(4, 12), until: { kind: 'table', tableId: 'handle' } }],
      });
      next(id, coat === 0 ? 'dry' : 'recoat');
      if (coat === 0 || last === null) continue;
      const lag = { kind: 'fixed', minutes: 26 * 60 } as const;
      const remedy = { minutes: 30, words: 'sand' };
      links.push({
        id: `l${links.length}`,
        kind: 'greatest',
        fromTaskId: last,
        from: 'start',
        toTaskId: id,
        to: 'start',
        lag,
        remedy,
      });
    }
    next(visit('assemble', int(30, 80), { leastPieceMinutes: 20 }), 'ship');
    return sum;
  }

  const benches = Array.from({ length: people }, (_, p) => ({
    id: `p${p}`,
    name: `Person ${p + 1}`,
    skills: p === 0 || chance(0.5) ? ['paint'] : [],
    sessions: Array.from({ length: DAYS }, (_x, day) => {
      const span = (from: number, to: number) => ({
        startMinute: day * DAY + from * 60,
        endMinute: day * DAY + to * 60,
      });
      if (day % 7 === 5) return [span(9, 12.5), span(13.5, 18)];
      if (day % 7 === 6) return chance(0.7) ? [span(10, 13)] : [];
      return chance(0.75) ? [span(19, 22)] : [];
    }).flat(),
  }));
  const minutesUntil = (minute: number) =>
    benches
      .flatMap(({ sessions }) => sessions)
      .reduce((sum, s) => sum + Math.max(0, Math.min(s.endMinute, minute) - s.startMinute), 0);
  let done = 0;
  const list = work.map((minutes, b): PlannedBatch => {
    done += minutes;
    let due = 10 * DAY;
    while (minutesUntil(due) * SHARE[load] < done) due += DAY;
    return {
      id: `b${b}`,
      name: `Batch ${b + 1}`,
      releaseMinute: 0,
      dueMinute: due + int(0, 4) * DAY,
      weight: int(1, 3),
    };
  });
  return {
    epochAt: 0,
    nowMinute: 0,
    horizonMinute: DAYS * DAY,
    batches: list,
    tasks,
    links,
    people: benches,
    resources: [
      { id: 'clamps', name: 'clamps', capacity: 12, changes: [] },
      { id: 'rotator', name: 'rotator', capacity: 24, changes: [] },
      { id: 'booth', name: 'booth', capacity: 1, changes: [] },
    ],
    lagTables: [cure('handle', 420), cure('dry', 180), cure('recoat', 300), cure('ship', 1500)],
  };
}

/** A cure that takes half as long again when begun at night, summed hour by hour so that ends never fall. */
function cure(id: string, warmMinutes: number): LagTable {
  const minutes = Array.from({ length: DAYS * 24 }, (_, hour) => {
    let left = warmMinutes;
    let length = 0;
    while (left > 0) {
      const ofDay = (hour * 60 + length) % DAY;
      const rate = ofDay >= 8 * 60 && ofDay < 22 * 60 ? 1 : 0.6;
      left -= 60 * rate;
      length += 60;
    }
    return length;
  });
  return { id, startMinute: 0, stepMinutes: 60, minutes };
}
