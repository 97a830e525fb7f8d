import { expect, test } from 'vitest';
import { checkPlan } from '@/lib/schedule/check-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { shopInstance } from './shop-instance';

const problem = shopInstance(20, 2, 'comfortable', 2);

function planned() {
  const improver = new PlanImprover(problem, null, 1);
  improver.improve(100);
  return improver.best();
}

test('where nothing clashes and all is in time, planning again moves nothing', () => {
  const held = planned();
  const again = new PlanImprover(problem, held, 2);
  again.improve(40);
  expect(again.best()).toEqual(held);
});

test('a plan made again after a cure that lasts longer holds', () => {
  const held = planned();
  const slipped = problem.links.find(({ lag }) => lag.kind === 'table' && lag.tableId === 'handle');
  const links = problem.links.map((link) =>
    link === slipped ? { ...link, lag: { kind: 'fixed', minutes: 3 * 1440 } as const } : link,
  );
  const now = { ...problem, links };
  expect(checkPlan(now, held)).not.toEqual([]);
  const again = new PlanImprover(now, held, 1);
  again.improve(40);
  expect(checkPlan(now, again.best())).toEqual([]);
});
