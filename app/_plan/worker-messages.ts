import type { PlannedBatchLine, Timetable } from '@/lib/contracts/stored-plan';
import type { PinCheck, PinnedTask } from './pin-effect';
import type { ShopProblem } from './shop-problem';

/** How long the planner looks, and from where: the same seed and number of plans give the same plan. */
export interface PlanBudget {
  readonly seed: number;
  /** Plans made at most. */
  readonly plans: number;
  /** Milliseconds at most; what comes first ends it. */
  readonly withinMs: number;
}

/** Everything that a plan is made from and told in: the thread answers in the shop's terms, ready to be shown. */
export interface PlanTask {
  readonly shop: ShopProblem;
  /** The plan that holds: where it can be kept it is. null: there is none. */
  readonly held: Timetable | null;
  readonly zone: string;
  /** What is changed in the shop for a comparison, in words. */
  readonly whatIf: readonly string[];
}

/** Looks for a plan. */
export interface SearchJob {
  readonly kind: 'search';
  readonly jobId: string;
  readonly task: PlanTask;
  readonly budget: PlanBudget;
}

/** Asks what a pin would mean. */
export interface PinJob {
  readonly kind: 'pin';
  readonly jobId: string;
  /** The shop without the pin. */
  readonly shop: ShopProblem;
  readonly pinned: PinnedTask;
  readonly zone: string;
}

/** Looks for a better plan than one by a constraint solver. */
export interface HarderJob {
  readonly kind: 'harder';
  readonly jobId: string;
  readonly task: PlanTask;
  /** The plan to be bettered, as it was told. */
  readonly plan: Timetable;
  readonly withinMs: number;
}

/** What the planner's thread can be asked: another kind of job is one more member, with its branch in `plan-worker.ts`. */
export type PlanJob = SearchJob | PinJob | HarderJob;

/** A job on its way to the thread: its first number is 1 as soon as it is called off. */
export type SentJob = PlanJob & { readonly cancelled: Int32Array<SharedArrayBuffer> };

/** What is compared of a plan beside others. */
export type PlanSummary = Pick<Timetable, 'value' | 'unavoidableLateMinutes' | 'isProvedBest'> & {
  readonly batches: readonly PlannedBatchLine[];
};

/** A plan that holds, better than those before it or with a better proof. */
export interface ToldPlan {
  readonly summary: PlanSummary;
  /** The `Timetable` as JSON: handed on to the browser as it is. */
  readonly timetableJson: string;
}

/** What the thread tells of a job; `pin`, `harder`, `end` or `failed` comes last. */
export type PlanNews =
  | { readonly kind: 'pin'; readonly jobId: string; readonly check: PinCheck }
  | { readonly kind: 'plan'; readonly jobId: string; readonly plansMade: number; readonly plan: ToldPlan }
  | { readonly kind: 'better'; readonly jobId: string; readonly plan: ToldPlan }
  | { readonly kind: 'harder'; readonly jobId: string; readonly plan: ToldPlan | null; readonly words: string }
  | { readonly kind: 'end'; readonly jobId: string; readonly plansMade: number }
  | { readonly kind: 'failed'; readonly jobId: string; readonly message: string };
