import { expect, test } from 'vitest';
import { compileProblem } from '@/lib/schedule/compiled-problem';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import { ruleOrders } from '@/lib/schedule/task-order';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { randomShop } from './random-shop';
import { shopInstance } from './shop-instance';

const SHOPS = process.env.SOAK === '1' ? 600 : 60;
const ORDERS = 25;

test(`${SHOPS} shops: an order costs the same from where it differs from the settled one as from its first task on`, () => {
  let cut = 0;
  for (let seed = 1; seed <= SHOPS; seed++) {
    const random = seededRandom(seed);
    const index = (count: number) => Math.floor(random() * count);
    const compiled = compileProblem(seed % 20 === 0 ? shopInstance(8, 2, 'tight', seed) : randomShop(seed));
    const whole = new PlanDecoder(compiled);
    const resumed = new PlanDecoder(compiled);
    let settled = [...(ruleOrders(compiled)[0] ?? [])];
    if (settled.length === 0) continue;
    for (let i = 0; i < ORDERS; i++) {
      const order = [...settled];
      const [task = 0] = order.splice(index(order.length), 1);
      order.splice(index(order.length + 1), 0, task);
      if (random() < 0.3) whole.delays[task] = 1 - (whole.delays[task] ?? 0);
      if (random() < 0.1) whole.floor[task] = index(5_000);
      resumed.delays.set(whole.delays);
      resumed.floor.set(whole.floor);
      whole.decode(order);
      const late = whole.value[1] ?? 0;
      const mostLate = random() < 0.3 ? late * random() : Number.POSITIVE_INFINITY;
      // Left half done, an order is later than what was asked for.
      if (resumed.weigh(order, mostLate)) expect(resumed.value, `seed ${seed}`).toEqual(whole.value);
      else {
        cut++;
        expect(whole.value[0] === 0 && late <= mostLate, `seed ${seed}`).toBe(false);
      }
      if (random() < 0.5) continue;
      settled = order;
      resumed.settleOn(order);
    }
  }
  expect(cut).toBeGreaterThan(0);
});
