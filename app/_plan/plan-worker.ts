/**
 * The planner in a thread of its own, so that the server answers while it looks. Started by `app/_server/plan-worker.ts`;
 * whatever a job does, the thread goes on.
 */
import { readlinkSync } from 'node:fs';
import { setPriority } from 'node:os';
import path from 'node:path';
import { parentPort } from 'node:worker_threads';
import { harderPlan } from './harder-plan';
import { pinEffect } from './pin-effect';
import { searchPlan } from './search-plan';
import type { PlanNews, SentJob } from './worker-messages';

const port = parentPort;
if (port === null) throw new Error('plan-worker.ts is started as a worker thread');

/** How far it stands back behind the server's own thread, as a niceness. Chosen: the server gets nine tenths if it asks. */
const NICENESS = 10;

/** Linux knows each thread by a number and gives it a priority of its own; elsewhere all threads are alike. */
function standBack(): void {
  if (process.platform !== 'linux') return;
  setPriority(Number(path.basename(readlinkSync('/proc/thread-self'))), NICENESS);
}

function tell(news: PlanNews): void {
  port?.postMessage(news);
}

async function run(job: SentJob): Promise<void> {
  const isCancelled = () => Atomics.load(job.cancelled, 0) === 1;
  switch (job.kind) {
    case 'search':
      return searchPlan(job, isCancelled, tell);
    case 'harder':
      return harderPlan(job, isCancelled, tell);
    case 'pin':
      return tell({ kind: 'pin', jobId: job.jobId, check: pinEffect(job.shop, job.pinned, job.zone) });
  }
}

standBack();
port.on('message', (job: SentJob) => {
  run(job).catch((error: unknown) => {
    tell({ kind: 'failed', jobId: job.jobId, message: error instanceof Error ? error.message : String(error) });
  });
});
