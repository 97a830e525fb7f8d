import 'server-only';
import path from 'node:path';
import type { Worker } from 'node:worker_threads';
import type { PlanJob, PlanNews, SentJob } from '@/app/_plan/worker-messages';

/** Longest a job may take beyond its own time before the thread is ended, in ms. Chosen: loading and a slow bound. */
const GRACE_MS = 30_000;

/** A job that was handed to the planner's thread. */
export interface RunningJob {
  /** Calls it off; the best plan so far was told already. */
  cancel(): void;
}

interface Waiting {
  readonly job: SentJob;
  readonly tell: (news: PlanNews) => void;
}

interface Running extends Waiting {
  readonly deadline: NodeJS.Timeout;
}

/**
 * One thread for the whole process, which the next job finds loaded. Searches take turns; what is short, or waits for a
 * thread of its own, is handed over at once and answered between two steps of a search.
 */
class PlannerThread {
  #worker: Worker | null = null;
  readonly #running = new Map<string, Running>();
  readonly #queue: Waiting[] = [];

  start(asked: PlanJob, tell: (news: PlanNews) => void): RunningJob {
    const cancelled = new Int32Array(new SharedArrayBuffer(4));
    const waiting: Waiting = { job: { ...asked, cancelled }, tell };
    if (takesTurns(asked)) this.#queue.push(waiting);
    else this.#hand(waiting);
    this.#next();
    return { cancel: () => Atomics.store(cancelled, 0, 1) };
  }

  #next(): void {
    if ([...this.#running.values()].some(({ job }) => takesTurns(job))) return;
    const next = this.#queue.shift();
    if (next !== undefined) this.#hand(next);
  }

  #hand(waiting: Waiting): void {
    const { job } = waiting;
    const deadline = setTimeout(() => this.#fail('It took too long and was ended.'), searchMs(job) + GRACE_MS);
    this.#running.set(job.jobId, { ...waiting, deadline });
    this.#loaded().postMessage(job);
  }

  #loaded(): Worker {
    if (this.#worker !== null) return this.#worker;
    // Loaded as it stands: asked for in this way, the bundler does not see the file and leaves it alone.
    const threads = process.getBuiltinModule('node:worker_threads');
    const worker = new threads.Worker(path.join(process.cwd(), 'app', '_plan', 'plan-thread.mjs'));
    worker.on('message', (news: PlanNews) => this.#hear(news));
    worker.on('error', (error) => this.#fail(error instanceof Error ? error.message : String(error)));
    // It never keeps a server from stopping.
    worker.unref();
    this.#worker = worker;
    return worker;
  }

  #hear(news: PlanNews): void {
    const running = this.#running.get(news.jobId);
    if (running === undefined) return;
    running.tell(news);
    if (news.kind === 'plan' || news.kind === 'better') return;
    this.#over(running);
    this.#next();
  }

  /** A thread that failed is not trusted with another job: all that it was at are told. */
  #fail(message: string): void {
    void this.#worker?.terminate();
    this.#worker = null;
    for (const running of [...this.#running.values()]) {
      running.tell({ kind: 'failed', jobId: running.job.jobId, message });
      this.#over(running);
    }
    this.#next();
  }

  #over({ job, deadline }: Running): void {
    clearTimeout(deadline);
    this.#running.delete(job.jobId);
  }
}

/** Whether a job keeps the thread busy while it runs. */
function takesTurns(job: PlanJob): boolean {
  return job.kind === 'search';
}

/** How long a job looks for something better, ms; 0: it answers at once. */
function searchMs(job: PlanJob): number {
  switch (job.kind) {
    case 'search':
      return job.budget.withinMs;
    case 'harder':
      return job.withinMs;
    case 'pin':
      return 0;
  }
}

// The framework may load this module more than once in one process; the thread is kept beside all of them.
const shared: typeof globalThis & { lurewrightPlanner?: PlannerThread } = globalThis;

/** Hands a job to the planner's thread and tells what it finds; what comes last of each kind always comes. */
export function startPlanJob(job: PlanJob, tell: (news: PlanNews) => void): RunningJob {
  shared.lurewrightPlanner ??= new PlannerThread();
  return shared.lurewrightPlanner.start(job, tell);
}
