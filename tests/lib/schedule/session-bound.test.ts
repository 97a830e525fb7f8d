import loadHighs from 'highs';
import { expect, test } from 'vitest';
import { solveBound } from '@/app/_plan/solve-bound';
import { aloneBound } from '@/lib/schedule/alone-bound';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { planValue } from '@/lib/schedule/plan-value';
import type { PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import { randomShop } from './random-shop';

const SHOPS = process.env.SOAK === '1' ? 1_000 : 80;

test(`${SHOPS} shops: what is proved over the sessions is never more than what a plan costs`, async () => {
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
  console.log(`late ${late} weighted minutes; proved ${alone} by each batch alone, ${proved} over the sessions`);
});

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
