import { aloneBound } from '@/lib/schedule/alone-bound';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { planValue } from '@/lib/schedule/plan-value';
import { problemFaults } from '@/lib/schedule/problem-faults';
import { type SmallestReason, smallestReasons } from '@/lib/schedule/smallest-reason';
import { othersFirst } from './others-first';
import { solveBound } from './solve-bound';
import { ToldPlans } from './told-plans';
import type { PlanNews, SearchJob } from './worker-messages';

/** Plans made between two looks at the clock and at whether it was called off. Chosen: a tenth of a second at 1,000 tasks. */
const STEP = 8;
/** Least time between two plans that are told, in ms: each is drawn anew. Chosen. */
const TELL_MS = 400;

/**
 * Looks for a plan within the budget, telling every better one at once, and then for a proof of how good it is. Lets
 * other messages to its thread come in between.
 */
export async function searchPlan(
  { jobId, task, budget }: SearchJob,
  isCancelled: () => boolean,
  tell: (news: PlanNews) => void,
): Promise<void> {
  const { problem } = task.shop;
  const faults = problemFaults(problem);
  if (faults.length > 0) throw new Error(`the problem is not sound: ${JSON.stringify(faults.slice(0, 5))}`);
  const beganAt = performance.now();
  const plans = new ToldPlans(task);
  const improver = new PlanImprover(problem, plans.held, budget.seed);
  const aloneLate = aloneBound(problem);
  let toldAt = Number.NEGATIVE_INFINITY;
  let isBetter = true;
  const tellBest = (leastLate: number, reasons: readonly SmallestReason[] = []) => {
    const best = improver.best();
    const late = planValue(problem, best).weightedLateMinutes;
    const isProvedBest = best.unplaced.length === 0 && late <= leastLate;
    const plan = plans.told(best, { unavoidableLateMinutes: leastLate, isProvedBest }, reasons);
    tell({ kind: 'plan', jobId, plansMade: improver.plansMade, plan });
    toldAt = performance.now();
    isBetter = false;
  };
  const isOver = () =>
    improver.plansMade >= budget.plans || performance.now() - beganAt > budget.withinMs || isCancelled();
  tellBest(aloneLate);
  while (improver.canImprove && !isOver()) {
    isBetter = improver.improve(STEP) || isBetter;
    if (isBetter && performance.now() - toldAt > TELL_MS) tellBest(aloneLate);
    await othersFirst();
  }
  if (isBetter) tellBest(aloneLate);
  const best = improver.best();
  const reasons = smallestReasons(problem, best);
  if (reasons.length > 0) tellBest(aloneLate, reasons);
  const late = planValue(problem, best).weightedLateMinutes;
  if (best.unplaced.length === 0 && late > aloneLate && !isCancelled()) {
    const lastMinute = Math.max(...best.placed.map(({ finishMinute }) => finishMinute));
    const proved = Math.min(late, (await solveBound(problem, lastMinute)) ?? 0);
    if (proved > aloneLate) tellBest(proved, reasons);
  }
  tell({ kind: 'end', jobId, plansMade: improver.plansMade });
}
