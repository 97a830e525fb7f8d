import loadHighs from 'highs';
import { expect, test } from 'vitest';
import { solveBound } from '@/app/_plan/solve-bound';
import { aloneBound } from '@/lib/schedule/alone-bound';
import { compileProblem } from '@/lib/schedule/compiled-problem';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import { planValue } from '@/lib/schedule/plan-value';
import type { PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { randomShop } from './random-shop';
import { shopInstance } from './shop-instance';

const TINY = process.env.SOAK === '1' ? 200 : 15;
const SHOPS = process.env.SOAK === '1' ? 1_000 : 80;

test(`${SHOPS} shops: what is proved of the bench and its places is never more than what a plan costs`, async () => {
  let late = 0;
  let alone = 0;
  let proved = 0;
  for (let seed = 1; seed <= SHOPS; seed++) {
    const problem = randomShop(seed);
    const improver = new PlanImprover(problem, null, seed);
    improver.improve(100);
    const plan = improver.best();
    if (plan.unplaced.length > 0) continue;
    const { weightedLateMinutes } = planValue(problem, plan);
    const lastMinute = Math.max(0, ...plan.placed.map(({ finishMinute }) => finishMinute));
    const bound = Math.max(aloneBound(problem), (await solveBound(problem, lastMinute)) ?? 0);
    expect(bound, `seed ${seed}`).toBeLessThanOrEqual(weightedLateMinutes + 1e-6);
    late += weightedLateMinutes;
    alone += aloneBound(problem);
    proved += bound;
  }
  console.log(`late ${late} weighted minutes; proved ${alone} by each batch alone, ${proved} together`);
});

test(`${TINY} tiny shops: what is proved is never more than the best of all orders`, async () => {
  let least = 0;
  let proved = 0;
  let alone = 0;
  for (let seed = 1; seed <= TINY; seed++) {
    const problem = tinyShop(seed);
    const decoder = new PlanDecoder(compileProblem(problem));
    let best = Number.POSITIVE_INFINITY;
    for (const order of ordersOf(problem.tasks.map((_, i) => i))) {
      decoder.decode(order);
      if (decoder.value[0] === 0) best = Math.min(best, decoder.value[1] ?? 0);
    }
    if (best === Number.POSITIVE_INFINITY) continue;
    const bound = (await solveBound(problem, problem.horizonMinute)) ?? 0;
    expect(Math.max(bound, aloneBound(problem)), `seed ${seed}`).toBeLessThanOrEqual(best);
    least += best;
    proved += Math.max(bound, aloneBound(problem));
    alone += aloneBound(problem);
  }
  console.log(`least ${least} weighted minutes late; proved ${alone} by each batch alone, ${proved} together`);
  expect(proved).toBeGreaterThan(alone);
});

test.each([
  [8, 1, 'tight'],
  [8, 1, 'overloaded'],
] as const)(
  '%i batches, %i people, %s: more is proved than by each batch alone, and no more than the plan costs',
  async (batches, people, load) => {
    const problem = shopInstance(batches, people, load, 1);
    const improver = new PlanImprover(problem, null, 1);
    improver.improve(500);
    const plan = improver.best();
    const { weightedLateMinutes } = planValue(problem, plan);
    const bound = await solveBound(problem, Math.max(...plan.placed.map(({ finishMinute }) => finishMinute)));
    console.log(`${batches} batches, ${load}: plan ${weightedLateMinutes}, proved ${bound}`);
    expect(bound ?? 0).toBeLessThanOrEqual(weightedLateMinutes);
    expect(bound ?? 0).toBeGreaterThan(aloneBound(problem));
  },
);

/** Two or three batches of one to three visits that all should be ready at once: few places, short evenings. */
function tinyShop(seed: number): PlanningProblem {
  const random = seededRandom(seed);
  const int = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const chance = (share: number) => random() < share;
  const tasks: Task[] = [];
  const links: PlanningProblem['links'][number][] = [];
  const batches = Array.from({ length: int(2, 3) }, (_, b) => ({
    id: `b${b}`,
    name: `b${b}`,
    releaseMinute: 0,
    dueMinute: int(0, 2) * 1440,
    weight: int(1, 3),
  }));
  for (const { id: batchId } of batches) {
    const count = int(1, batches.length === 2 ? 3 : 2);
    for (let k = 0; k < count; k++) {
      const id = `${batchId}-${k}`;
      const isBreakable = chance(0.2);
      tasks.push({
        id,
        batchId,
        name: id,
        attendedMinutes: 15 * int(1, 5),
        by: chance(0.8) ? { kind: 'anyone' } : { kind: 'person', personId: 'p0' },
        leastPieceMinutes: isBreakable ? 10 : null,
        setUp: isBreakable || chance(0.5) ? null : { key: chance(0.5) ? 'red' : 'glue', minutes: 15 },
        releaseMinute: 0,
        holds: chance(0.5)
          ? [{ resourceId: 'rack', amount: int(1, 2), until: { kind: 'fixed', minutes: chance(0.5) ? 600 : 0 } }]
          : [],
        readyAfter: { kind: 'fixed', minutes: chance(0.5) ? 0 : 700 },
        state: { kind: 'open' },
      });
      if (k > 0) {
        const lag = { kind: 'fixed', minutes: chance(0.5) ? 0 : 400 } as const;
        links.push({
          id,
          kind: 'least',
          fromTaskId: `${batchId}-${k - 1}`,
          from: 'finish',
          toTaskId: id,
          to: 'start',
          lag,
        });
      }
    }
  }
  const people = Array.from({ length: int(1, 2) }, (_, p) => ({
    id: `p${p}`,
    name: `p${p}`,
    skills: [],
    sessions: Array.from({ length: 20 }, (_day, day) => {
      const startMinute = day * 1440 + 1140 - p * 30;
      return { startMinute, endMinute: startMinute + 90 };
    }),
  }));
  const resources = [{ id: 'rack', name: 'rack', capacity: int(2, 3), changes: [{ fromMinute: 4320, capacity: 2 }] }];
  return {
    epochAt: 0,
    nowMinute: 0,
    horizonMinute: 20 * 1440,
    batches,
    tasks,
    links,
    people,
    resources,
    lagTables: [],
  };
}

function ordersOf(list: readonly number[]): readonly (readonly number[])[] {
  if (list.length <= 1) return [list];
  return list.flatMap((first) => ordersOf(list.filter((one) => one !== first)).map((rest) => [first, ...rest]));
}

test('two batches that share one evening: one of them is late by a day, and that is proved', async () => {
  const task = (id: string): Task => ({
    id,
    batchId: id,
    name: id,
    attendedMinutes: 60,
    by: { kind: 'anyone' },
    leastPieceMinutes: null,
    setUp: null,
    releaseMinute: 0,
    holds: [],
    readyAfter: { kind: 'fixed', minutes: 0 },
    state: { kind: 'open' },
  });
  const evening = (day: number) => ({ startMinute: day * 1440, endMinute: day * 1440 + 60 });
  const problem: PlanningProblem = {
    epochAt: 0,
    nowMinute: 0,
    horizonMinute: 20_000,
    batches: ['a', 'b'].map((id) => ({ id, name: id, releaseMinute: 0, dueMinute: 60, weight: 1 })),
    tasks: [task('a'), task('b')],
    links: [],
    people: [{ id: 'ada', name: 'Ada', skills: [], sessions: [evening(0), evening(1), evening(2)] }],
    resources: [],
    lagTables: [],
  };
  expect(aloneBound(problem)).toBe(0);
  expect(await solveBound(problem, 1500)).toBe(1439);
});

test('the solver that ships with the app is the one it was tried with', async () => {
  const highs = await loadHighs();
  const { Status, ObjectiveValue } = highs.solve(
    'Minimize\nx + 2 y\nSubject To\nx + y >= 3\nBounds\n0 <= x <= 2\nEnd\n',
  );
  expect([Status, ObjectiveValue]).toEqual(['Optimal', 4]);
});
