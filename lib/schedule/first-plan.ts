import { compileProblem } from '@/lib/schedule/compiled-problem';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { ruleOrders } from '@/lib/schedule/task-order';
import { compareValues } from '@/lib/schedule/value-order';

/** A plan at once: the best of eleven rules of priority. Takes sound problems (`problemFaults` finds nothing). */
export function firstPlan(problem: PlanningProblem): ShopPlan {
  const compiled = compileProblem(problem);
  const decoder = new PlanDecoder(compiled);
  let best: Float64Array | null = null;
  let bestOrder: readonly number[] = [];
  for (const order of ruleOrders(compiled)) {
    decoder.decode(order);
    if (best !== null && compareValues(decoder.value, best) >= 0) continue;
    best = decoder.value.slice();
    bestOrder = order;
  }
  decoder.decode(bestOrder);
  return decoder.plan();
}
