import 'server-only';
import { randomUUID } from 'node:crypto';
import { shopProblemInTurns } from '@/app/_plan/shop-problem';
import { whatIfWords, withWhatIf } from '@/app/_plan/what-if';
import type { PlanBudget, PlanJob, PlanNews, PlanTask, ToldPlan } from '@/app/_plan/worker-messages';
import type { Timetable, WhatIf } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { findAcceptedPlanId } from '@/prisma/data/plans';
import { getShop } from '@/prisma/data/shop';
import { acceptedPlan } from './accepted-plan';
import { loadPlanInput } from './plan-input';
import { type RunningJob, startPlanJob } from './plan-worker';

/** One search for a plan: nothing of it is saved until it is accepted. */
export interface PlanRun {
  readonly id: string;
  readonly madeAt: Instant;
  /** The plan that held when it was begun. */
  readonly againstPlanId: string | null;
  readonly whatIf: readonly string[];
  readonly status: 'running' | 'done' | 'failed';
  readonly message: string | null;
  readonly plansMade: number;
  /** Raised with everything that the thread tells. */
  readonly version: number;
  /** The best so far; null: none yet. */
  readonly plan: ToldPlan | null;
  /** Whether what runs, or ran last, tried harder for a better plan. */
  readonly isHarder: boolean;
  /** What came of trying harder, in words; null: it was not tried, or it is still running. */
  readonly harder: string | null;
}

/** How long a plan is looked for. Chosen: what one waits for at the bench; two seconds more gain little. */
export const BUDGET: PlanBudget = { seed: 1, plans: 40_000, withinMs: 3_000 };
/** Searches kept for comparing; the oldest goes first. Chosen. */
const MOST_RUNS = 12;

/** How long a better plan is looked for by the constraint solver, ms. Chosen in the issue. */
const HARDER_MS = 30_000;

interface Kept {
  run: PlanRun;
  /** What its plan was made from. */
  readonly task: PlanTask;
  job: RunningJob | null;
}

// Beside all copies of this module that the framework may load.
const shared: typeof globalThis & { lurewrightPlanRuns?: Map<string, Kept> } = globalThis;
shared.lurewrightPlanRuns ??= new Map();
const runs = shared.lurewrightPlanRuns;

/** A search by its id; null: it was never begun, or too many came after it. */
export function findPlanRun(runId: string): PlanRun | null {
  return runs.get(runId)?.run ?? null;
}

/** The searches that are kept, oldest first. */
export function listPlanRuns(): readonly PlanRun[] {
  return [...runs.values()].map(({ run }) => run);
}

/** The plan of a search as one can be accepted; null: it has none yet. */
export function timetableOfRun({ plan }: PlanRun): Timetable | null {
  return plan === null ? null : JSON.parse(plan.timetableJson);
}

/** Calls a search off; the best plan so far stays. */
export function cancelPlanRun(runId: string): void {
  runs.get(runId)?.job?.cancel();
}

/** Begins a search for a plan of the shop as it is, or as it might be. */
export async function startPlanRun(
  database: Db,
  whatIf: WhatIf | null,
  nowAt: Instant,
  budget: PlanBudget = BUDGET,
): Promise<PlanRun> {
  const { task, againstPlanId } = await planTask(database, whatIf, nowAt);
  return keepRun({ madeAt: nowAt, againstPlanId, whatIf: task.whatIf }, task, (jobId) => ({
    kind: 'search',
    jobId,
    task,
    budget,
  }));
}

/**
 * Looks for a better plan than that of a search that is over, by the constraint solver, in the background. False where
 * there is nothing to better, or it is looked for already.
 */
export function tryHarderRun(runId: string): boolean {
  const kept = runs.get(runId);
  const plan = kept === undefined ? null : timetableOfRun(kept.run);
  if (kept === undefined || plan === null || kept.run.status !== 'done') return false;
  const { task, run } = kept;
  kept.run = { ...run, status: 'running', isHarder: true, harder: null, version: run.version + 1 };
  begin(kept, { kind: 'harder', jobId: randomUUID(), task, plan, withinMs: HARDER_MS });
  return true;
}

/** What the planner's thread is given of the shop, and the plan that it is told against. */
async function planTask(
  database: Db,
  whatIf: WhatIf | null,
  nowAt: Instant,
): Promise<{ readonly task: PlanTask; readonly againstPlanId: string | null }> {
  const shop = await getShop(database);
  const input = await loadPlanInput(database, shop, nowAt, whatIf?.warmerC ?? 0);
  const againstPlanId = await findAcceptedPlanId(database);
  const held = await acceptedPlan(database);
  const task: PlanTask = {
    shop: await shopProblemInTurns(whatIf === null ? input : withWhatIf(input, whatIf)),
    held: held?.timetable ?? null,
    zone: shop.timeZone,
    whatIf: whatIf === null ? [] : whatIfWords(input, whatIf, shop.temperatureUnit),
  };
  return { task, againstPlanId };
}

/** Hands a job to the planner's thread and keeps what it tells as a run that can be shown. */
function keepRun(
  begun: Pick<PlanRun, 'madeAt' | 'againstPlanId' | 'whatIf'>,
  task: PlanTask,
  jobOf: (id: string) => PlanJob,
): PlanRun {
  const id = randomUUID();
  const run: PlanRun = {
    ...begun,
    id,
    status: 'running',
    message: null,
    plansMade: 0,
    version: 0,
    plan: null,
    isHarder: false,
    harder: null,
  };
  const kept: Kept = { run, task, job: null };
  runs.set(id, kept);
  for (const [oldId, old] of [...runs].slice(0, -MOST_RUNS)) {
    old.job?.cancel();
    runs.delete(oldId);
  }
  begin(kept, jobOf(id));
  return run;
}

function begin(kept: Kept, job: PlanJob): void {
  kept.job = startPlanJob(job, (news) => {
    kept.run = { ...kept.run, ...changeOf(news), version: kept.run.version + 1 };
  });
}

function changeOf(news: PlanNews): Partial<PlanRun> {
  switch (news.kind) {
    case 'plan':
      return { plansMade: news.plansMade, plan: news.plan };
    case 'better':
      return { plan: news.plan };
    case 'harder':
      return { ...(news.plan === null ? {} : { plan: news.plan }), harder: news.words, status: 'done' };
    case 'pin':
      return {};
    case 'end':
      return { plansMade: news.plansMade, status: 'done' };
    case 'failed':
      console.error(`The planner failed: ${news.message}`);
      return { status: 'failed', message: 'The planner ended without an answer. Try again.' };
  }
}
