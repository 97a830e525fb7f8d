/**
 * The planner in a thread of its own, so that the server answers while it looks. Started by `app/_server/plan-worker.ts`
 * with one job at a time; tells every better plan at once and never stops the thread.
 */
import { parentPort } from 'node:worker_threads';
import { aloneBound } from '@/lib/schedule/alone-bound';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { PlanImprover } from '@/lib/schedule/improve-plan';
import { planValue } from '@/lib/schedule/plan-value';
import { problemFaults } from '@/lib/schedule/problem-faults';
import { smallestReasons } from '@/lib/schedule/smallest-reason';
import { solveBound } from './solve-bound';
import type { PlanJob, PlanNews } from './worker-messages';

/** Plans made between two looks at the clock and at whether it was called off. Chosen: some milliseconds. */
const STEP = 50;
/** Least time between two plans that are told, in ms: each is drawn anew. Chosen. */
const TELL_MS = 400;

const port = parentPort;
if (port === null) throw new Error('plan-worker.ts is started as a worker thread');

function tell(news: PlanNews): void {
  port?.postMessage(news);
}

async function run({ jobId, problem, held, budget, cancelled }: PlanJob): Promise<void> {
  const faults = problemFaults(problem);
  if (faults.length > 0) throw new Error(`the problem is not sound: ${JSON.stringify(faults.slice(0, 5))}`);
  const beganAt = performance.now();
  const improver = new PlanImprover(problem, held, budget.seed);
  const lateMinutes = aloneBound(problem);
  let toldAt = Number.NEGATIVE_INFINITY;
  let isBetter = true;
  const tellBest = () => {
    const plan = improver.best();
    // Looked at by code that shares nothing with the planner: a plan that does not hold is never told.
    const wrong = checkPlan(problem, plan).filter((violation) => !isGivenViolation(problem, violation));
    if (wrong.length > 0) throw new Error(`the planner made a plan that does not hold: ${JSON.stringify(wrong[0])}`);
    const isProvedBest = plan.unplaced.length === 0 && planValue(problem, plan).weightedLateMinutes <= lateMinutes;
    tell({ kind: 'plan', jobId, plan, plansMade: improver.plansMade });
    tell({ kind: 'bound', jobId, lateMinutes, isProvedBest });
    toldAt = performance.now();
    isBetter = false;
  };
  const isOver = () =>
    improver.plansMade >= budget.plans ||
    performance.now() - beganAt > budget.withinMs ||
    Atomics.load(cancelled, 0) === 1;
  tellBest();
  while (improver.canImprove && !isOver()) {
    isBetter = improver.improve(STEP) || isBetter;
    if (isBetter && performance.now() - toldAt > TELL_MS) tellBest();
  }
  if (isBetter) tellBest();
  const best = improver.best();
  const reasons = smallestReasons(problem, best);
  if (reasons.length > 0) tell({ kind: 'reasons', jobId, reasons });
  const late = planValue(problem, best).weightedLateMinutes;
  if (best.unplaced.length === 0 && late > lateMinutes && Atomics.load(cancelled, 0) === 0) {
    const lastMinute = Math.max(...best.placed.map(({ finishMinute }) => finishMinute));
    const proved = Math.min(late, Math.max(lateMinutes, (await solveBound(problem, lastMinute)) ?? 0));
    tell({ kind: 'bound', jobId, lateMinutes: proved, isProvedBest: proved >= late });
  }
  tell({ kind: 'end', jobId, plansMade: improver.plansMade });
}

port.on('message', (job: PlanJob) => {
  run(job).catch((error: unknown) => {
    tell({ kind: 'failed', jobId: job.jobId, message: error instanceof Error ? error.message : String(error) });
  });
});
