import { batchReadyMinutes } from '@/lib/schedule/plan-value';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';

/** Up to so many open batches are all placed anew. Chosen: beyond it the solver found nothing in its time. */
const MOST_BATCHES = 8;
/** Of more than that, so many. Chosen. */
const WINDOW_BATCHES = 4;

/**
 * The batches that are worth placing anew all at once: all that have open tasks, or of many the few that are the most
 * late by weight in a plan. null: all of them.
 */
export function batchesPlacedAnew(problem: PlanningProblem, plan: ShopPlan): ReadonlySet<string> | null {
  const open = new Set(problem.tasks.flatMap(({ state, batchId }) => (state.kind === 'open' ? [batchId] : [])));
  if (open.size <= MOST_BATCHES) return null;
  const ready = batchReadyMinutes(problem, new Map(plan.placed.map((place) => [place.taskId, place])));
  const late = problem.batches
    .filter(({ id }) => open.has(id))
    .map(({ id, dueMinute, weight }) => ({
      id,
      cost: dueMinute === null ? 0 : weight * Math.max(0, (ready.get(id) ?? 0) - dueMinute),
    }))
    .sort((a, b) => b.cost - a.cost);
  return new Set(late.slice(0, WINDOW_BATCHES).map(({ id }) => id));
}
