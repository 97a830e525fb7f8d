import { expect, test } from 'vitest';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { problemFaults } from '@/lib/schedule/problem-faults';
import { randomShop } from './random-shop';

const SHOPS = process.env.SOAK === '1' ? 10_000 : 150;

test(`plans of ${SHOPS} odd shops hold but for what their pins and their history make impossible`, () => {
  let tasks = 0;
  let unplaced = 0;
  for (let seed = 1; seed <= SHOPS; seed++) {
    const problem = randomShop(seed);
    expect(problemFaults(problem), `seed ${seed}`).toEqual([]);
    const plan = firstPlan(problem);
    const wrong = checkPlan(problem, plan).filter((violation) => !isGivenViolation(problem, violation));
    expect(wrong, `seed ${seed}`).toEqual([]);
    tasks += problem.tasks.length;
    unplaced += plan.unplaced.length;
  }
  console.log(`${SHOPS} shops, ${tasks} tasks, ${unplaced} of them impossible`);
  expect(unplaced).toBeLessThan(0.75 * tasks);
});
