/**
 * The planner in a thread of its own, so that the server answers while it looks. Started by `app/_server/plan-worker.ts`
 * with one job at a time; tells every better plan at once and never stops the thread.
 */
import { parentPort } from 'node:worker_threads';
import { firstPlan } from '@/lib/schedule/first-plan';
import type { PlanJob, PlanNews } from './worker-messages';

const port = parentPort;
if (port === null) throw new Error('plan-worker.ts is started as a worker thread');

function tell(news: PlanNews): void {
  port?.postMessage(news);
}

async function run({ jobId, problem }: PlanJob): Promise<void> {
  const plan = firstPlan(problem);
  tell({ kind: 'plan', jobId, plan, plansMade: 1 });
  tell({ kind: 'end', jobId, plansMade: 1 });
}

port.on('message', (job: PlanJob) => {
  run(job).catch((error: unknown) => {
    tell({ kind: 'failed', jobId: job.jobId, message: error instanceof Error ? error.message : String(error) });
  });
});
