import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import type { SmallestReason } from '@/lib/schedule/smallest-reason';
import type { Violation } from '@/lib/schedule/violation';
import { heldPlan } from './held-plan';
import { movedVisits } from './moved-visits';
import { type PlanProof, timetableOf } from './timetable';
import type { PlanTask, ToldPlan } from './worker-messages';

/** Puts plans into the shop's terms, with what moved against the plan that holds and why. */
export class ToldPlans {
  /** The plan that holds as a plan of the problem as it is now; null: there is none. */
  readonly held: ShopPlan | null;
  readonly #heldViolations: readonly Violation[];

  constructor(private readonly task: PlanTask) {
    this.held = task.held === null ? null : heldPlan(task.held, task.shop);
    this.#heldViolations = this.held === null ? [] : checkPlan(task.shop.problem, this.held);
  }

  /** Throws on a plan that does not hold: code that shares nothing with the planner looks at each before it is told. */
  told(plan: ShopPlan, proof: PlanProof, reasons: readonly SmallestReason[]): ToldPlan {
    const { shop, held, zone, whatIf } = this.task;
    const wrong = checkPlan(shop.problem, plan).find((violation) => !isGivenViolation(shop.problem, violation));
    if (wrong !== undefined) throw new Error(`the planner made a plan that does not hold: ${JSON.stringify(wrong)}`);
    const made = timetableOf(shop, plan, proof, whatIf, reasons);
    const moved = held === null ? [] : movedVisits(held, made, this.#heldViolations, shop, zone);
    const { value, unavoidableLateMinutes, isProvedBest, batches } = made;
    return {
      summary: { value, unavoidableLateMinutes, isProvedBest, batches },
      timetableJson: JSON.stringify({ ...made, moved }),
    };
  }
}
