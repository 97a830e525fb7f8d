import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import type { SmallestReason } from '@/lib/schedule/smallest-reason';

/** How long the planner looks, and from where: the same seed and number of plans give the same plan. */
export interface PlanBudget {
  readonly seed: number;
  /** Plans made at most. */
  readonly plans: number;
  /** Milliseconds at most; what comes first ends it. */
  readonly withinMs: number;
}

/** What the worker is asked. */
export interface PlanJob {
  readonly jobId: string;
  readonly problem: PlanningProblem;
  /** The plan that holds: where it can be kept it is. null: there is none. */
  readonly held: ShopPlan | null;
  readonly budget: PlanBudget;
  /** Its first number is 1 as soon as the job is called off. */
  readonly cancelled: Int32Array<SharedArrayBuffer>;
}

/** What the worker tells. */
export type PlanNews =
  /** A plan that holds, better than those before it. */
  | { readonly kind: 'plan'; readonly jobId: string; readonly plan: ShopPlan; readonly plansMade: number }
  /** Weighted minutes late that no plan can avoid. */
  | { readonly kind: 'bound'; readonly jobId: string; readonly lateMinutes: number; readonly isProvedBest: boolean }
  /** Why the plan told last leaves out what it leaves out, and what would change that. */
  | { readonly kind: 'reasons'; readonly jobId: string; readonly reasons: readonly SmallestReason[] }
  | { readonly kind: 'end'; readonly jobId: string; readonly plansMade: number }
  | { readonly kind: 'failed'; readonly jobId: string; readonly message: string };
