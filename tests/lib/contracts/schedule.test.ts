import { expect, test } from 'vitest';
import { planningProblemSchema, shopPlanSchema } from '@/lib/contracts/schedule';
import { firstPlan } from '@/lib/schedule/first-plan';
import { randomShop } from '../schedule/random-shop';

test('odd shops and their plans come through the contract as they went in', () => {
  for (let seed = 1; seed <= 40; seed++) {
    const problem = randomShop(seed);
    const plan = firstPlan(problem);
    expect(planningProblemSchema.parse(JSON.parse(JSON.stringify(problem)))).toEqual(problem);
    expect(shopPlanSchema.parse(JSON.parse(JSON.stringify(plan)))).toEqual(plan);
  }
});

test('a fraction of a minute, an unknown key and a negative capacity are refused', () => {
  const problem = randomShop(3);
  expect(planningProblemSchema.safeParse({ ...problem, nowMinute: 0.5 }).success).toBe(false);
  expect(planningProblemSchema.safeParse({ ...problem, hurry: true }).success).toBe(false);
  const resource = { id: 'r', name: 'r', capacity: -1, changes: [] };
  expect(planningProblemSchema.safeParse({ ...problem, resources: [resource] }).success).toBe(false);
});
