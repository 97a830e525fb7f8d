import { aloneBound } from '@/lib/schedule/alone-bound';
import { planValue } from '@/lib/schedule/plan-value';
import { harderWords } from './harder-words';
import { heldPlan } from './held-plan';
import { ToldPlans } from './told-plans';
import { tryHarder } from './try-harder';
import type { HarderJob, PlanNews } from './worker-messages';

/** Looks for a better plan than the job's, telling each one that is found, and says in the end what came of it. */
export async function harderPlan(
  { jobId, task, plan: from, withinMs }: HarderJob,
  isCancelled: () => boolean,
  tell: (news: PlanNews) => void,
): Promise<void> {
  const { problem } = task.shop;
  const plans = new ToldPlans(task);
  let best = heldPlan(from, task.shop);
  const unavoidableLateMinutes = from.unavoidableLateMinutes ?? aloneBound(problem);
  const answer = await tryHarder({
    problem,
    plan: best,
    withinMs,
    isCancelled,
    tell: (plan) => {
      best = plan;
      tell({ kind: 'better', jobId, plan: plans.told(plan, { unavoidableLateMinutes, isProvedBest: false }) });
    },
  });
  const isProvedBest = answer.kind === 'looked' && answer.isProved && answer.limits.length === 0;
  const proved = { unavoidableLateMinutes: planValue(problem, best).weightedLateMinutes, isProvedBest };
  tell({ kind: 'harder', jobId, words: harderWords(answer), plan: isProvedBest ? plans.told(best, proved) : null });
}
