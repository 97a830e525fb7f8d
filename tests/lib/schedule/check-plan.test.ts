import { expect, test } from 'vitest';
import { checkPlan } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { plantFault } from './mutated-plan';
import { randomShop } from './random-shop';

const FAULTS = process.env.SOAK === '1' ? 2_000 : 240;

test(`finds every one of ${FAULTS} faults planted into plans that hold`, () => {
  const random = seededRandom(6);
  const planted = new Map<string, number>();
  let count = 0;
  for (let seed = 1; count < FAULTS; seed++) {
    const problem = randomShop(seed);
    const plan = firstPlan(problem);
    // A plan with a fault in it already, from its pins, would prove nothing.
    if (checkPlan(problem, plan).length > 0) continue;
    for (let i = 0; i < 4 && count < FAULTS; i++) {
      const mutation = plantFault(problem, plan, random);
      if (mutation === null) continue;
      expect(checkPlan(problem, mutation.plan).length, `seed ${seed}: ${mutation.what}`).toBeGreaterThan(0);
      planted.set(mutation.what, (planted.get(mutation.what) ?? 0) + 1);
      count++;
    }
  }
  console.log([...planted].map(([what, times]) => `${what}: ${times}`).join('; '));
  expect(planted.size).toBeGreaterThanOrEqual(20);
});
