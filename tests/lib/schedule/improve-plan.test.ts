import { expect, test } from 'vitest';
import { aloneBound } from '@/lib/schedule/alone-bound';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { comparePlanValues, planValue } from '@/lib/schedule/plan-value';
import { randomShop } from './random-shop';

const SHOPS = process.env.SOAK === '1' ? 2_000 : 120;
const STEPS = 60;

test(`${SHOPS} shops: every plan of the search holds, none is worse than the first, none beats the bound`, () => {
  let better = 0;
  let late = 0;
  let bound = 0;
  for (let seed = 1; seed <= SHOPS; seed++) {
    const problem = randomShop(seed);
    const first = firstPlan(problem);
    const improver = new PlanImprover(problem, null, seed);
    improver.improve(STEPS);
    const plan = improver.best();
    const wrong = checkPlan(problem, plan).filter((violation) => !isGivenViolation(problem, violation));
    expect(wrong, `seed ${seed}`).toEqual([]);
    const [was, is] = [planValue(problem, first), planValue(problem, plan)];
    expect(comparePlanValues(is, was), `seed ${seed}`).toBeLessThanOrEqual(0);
    expect(aloneBound(problem), `seed ${seed}`).toBeLessThanOrEqual(is.weightedLateMinutes + 1e-6);
    if (comparePlanValues(is, was) < 0) better++;
    late += is.weightedLateMinutes;
    bound += aloneBound(problem);
  }
  console.log(
    `${better} of ${SHOPS} shops got a better plan; ${Math.round((100 * bound) / late)} % of the lateness is proved`,
  );
});

test('the same seed and number of plans give the same plan', () => {
  const problem = randomShop(7);
  const made = [1, 2].map(() => {
    const improver = new PlanImprover(problem, null, 5);
    improver.improve(100);
    return improver.best();
  });
  expect(made[0]).toEqual(made[1]);
});

test('a plan that holds is kept where nothing is won by moving', () => {
  const problem = randomShop(11);
  const first = new PlanImprover(problem, null, 1);
  first.improve(200);
  const held = first.best();
  const again = new PlanImprover(problem, held, 2);
  again.improve(200);
  const starts = (plan: typeof held) => new Map(plan.placed.map(({ taskId, startMinute }) => [taskId, startMinute]));
  const was = starts(held);
  const moved = [...starts(again.best())].filter(([id, start]) => was.get(id) !== start);
  expect(moved.length).toBeLessThanOrEqual(Math.ceil(was.size / 10));
});
