import { expect, test } from 'vitest';
import { checkPlan } from '@/lib/schedule/check-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { shopInstance } from './shop-instance';

test('a cure that lasts longer moves its own batch and at most a tenth of the others, where the bench has room', () => {
  const problem = shopInstance(20, 2, 'comfortable', 2);
  const improver = new PlanImprover(problem, null, 1);
  improver.improve(100);
  const held = improver.best();
  const slipped = problem.links.find(({ lag }) => lag.kind === 'table' && lag.tableId === 'handle');
  const links = problem.links.map((link) =>
    link === slipped ? { ...link, lag: { kind: 'fixed', minutes: 3 * 1440 } as const } : link,
  );
  const now = { ...problem, links };
  expect(checkPlan(now, held)).not.toEqual([]);
  const again = new PlanImprover(now, held, 1);
  again.improve(40);
  const plan = again.best();
  expect(checkPlan(now, plan)).toEqual([]);
  const before = new Map(held.placed.map((place) => [place.taskId, place.startMinute]));
  const own = problem.tasks.find(({ id }) => id === slipped?.toTaskId)?.batchId;
  const others = problem.tasks.filter(({ batchId }) => batchId !== own).map(({ id }) => id);
  const moved = plan.placed.filter(
    (place) => others.includes(place.taskId) && place.startMinute !== before.get(place.taskId),
  );
  expect(moved.length).toBeLessThanOrEqual(0.1 * others.length);
});
