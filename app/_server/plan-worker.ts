import 'server-only';
import path from 'node:path';
import type { Worker } from 'node:worker_threads';
import type { PlanJob, PlanNews } from '@/app/_plan/worker-messages';

/** Longest a job may take beyond its own time before its thread is ended, in ms. Chosen: loading and a slow bound. */
const GRACE_MS = 30_000;

/** A job that was handed to the planner's thread. */
export interface RunningJob {
  /** Calls it off; the best plan so far was told already. */
  cancel(): void;
}

type Asked = Omit<PlanJob, 'cancelled'>;

interface Waiting {
  readonly job: PlanJob;
  readonly tell: (news: PlanNews) => void;
}

/** One thread for the whole process: jobs take turns, and the next one finds it loaded. */
class PlannerThread {
  #worker: Worker | null = null;
  #running: Waiting | null = null;
  #deadline: NodeJS.Timeout | undefined;
  readonly #queue: Waiting[] = [];

  start(asked: Asked, tell: (news: PlanNews) => void): RunningJob {
    const cancelled = new Int32Array(new SharedArrayBuffer(4));
    this.#queue.push({ job: { ...asked, cancelled }, tell });
    this.#next();
    return { cancel: () => Atomics.store(cancelled, 0, 1) };
  }

  #next(): void {
    if (this.#running !== null) return;
    const next = this.#queue.shift();
    if (next === undefined) return;
    this.#running = next;
    this.#deadline = setTimeout(
      () => this.#fail('It took too long and was ended.'),
      next.job.budget.withinMs + GRACE_MS,
    );
    this.#loaded().postMessage(next.job);
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
    if (news.jobId !== this.#running?.job.jobId) return;
    this.#running.tell(news);
    if (news.kind === 'end' || news.kind === 'failed') this.#over();
  }

  /** A thread that failed is not trusted with another job. */
  #fail(message: string): void {
    void this.#worker?.terminate();
    this.#worker = null;
    if (this.#running === null) return;
    this.#running.tell({ kind: 'failed', jobId: this.#running.job.jobId, message });
    this.#over();
  }

  #over(): void {
    clearTimeout(this.#deadline);
    this.#running = null;
    this.#next();
  }
}

// The framework may load this module more than once in one process; the thread is kept beside all of them.
const shared: typeof globalThis & { lurewrightPlanner?: PlannerThread } = globalThis;

/** Hands a job to the planner's thread and tells what it finds; `end` or `failed` comes last, and always comes. */
export function startPlanJob(job: Asked, tell: (news: PlanNews) => void): RunningJob {
  shared.lurewrightPlanner ??= new PlannerThread();
  return shared.lurewrightPlanner.start(job, tell);
}
