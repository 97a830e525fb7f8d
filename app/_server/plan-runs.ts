import 'server-only';
import { randomUUID } from 'node:crypto';
import { heldPlan } from '@/app/_plan/held-plan';
import { movedVisits } from '@/app/_plan/moved-visits';
import { type ShopProblem, shopProblem } from '@/app/_plan/shop-problem';
import { timetableOf } from '@/app/_plan/timetable';
import { whatIfWords, withWhatIf } from '@/app/_plan/what-if';
import type { PlanBudget, PlanNews } from '@/app/_plan/worker-messages';
import type { Timetable, WhatIf } from '@/lib/contracts/stored-plan';
import { checkPlan } from '@/lib/schedule/check-plan';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import type { SmallestReason } from '@/lib/schedule/smallest-reason';
import type { Violation } from '@/lib/schedule/violation';
import type { Instant } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { findAcceptedPlan } from '@/prisma/data/plans';
import { getShop } from '@/prisma/data/shop';
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
  /** Raised with every better plan and every better bound. */
  readonly version: number;
  /** The best so far; null: none yet. */
  readonly timetable: Timetable | null;
}

/** How long a plan is looked for. Chosen: what one waits for at the bench; two seconds more gain little. */
export const BUDGET: PlanBudget = { seed: 1, plans: 40_000, withinMs: 3_000 };
/** Searches kept for comparing; the oldest goes first. Chosen. */
const MOST_RUNS = 12;

interface Kept {
  run: PlanRun;
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
  const shop = await getShop(database);
  const input = await loadPlanInput(database, shop, nowAt, whatIf?.warmerC ?? 0);
  const held = await findAcceptedPlan(database);
  const made = shopProblem(whatIf === null ? input : withWhatIf(input, whatIf));
  const heldThen = held === null ? null : heldPlan(held.timetable, made);
  const run: PlanRun = {
    id: randomUUID(),
    madeAt: nowAt,
    againstPlanId: held?.id ?? null,
    whatIf: whatIf === null ? [] : whatIfWords(input, whatIf, shop.temperatureUnit),
    status: 'running',
    message: null,
    plansMade: 0,
    version: 0,
    timetable: null,
  };
  const kept: Kept = { run, job: null };
  runs.set(run.id, kept);
  for (const [id, old] of [...runs].slice(0, -MOST_RUNS)) {
    old.job?.cancel();
    runs.delete(id);
  }
  const violations = heldThen === null ? [] : checkPlan(made.problem, heldThen);
  const before = held === null ? null : { timetable: held.timetable, violations };
  const hear = new NewsHearer(kept, made, before, shop.timeZone);
  kept.job = startPlanJob({ jobId: run.id, problem: made.problem, held: heldThen, budget }, (news) => hear.hear(news));
  return run;
}

/** Turns what the planner tells into a run that can be shown. */
class NewsHearer {
  #plan: ShopPlan | null = null;
  #bound: { lateMinutes: number; isProvedBest: boolean } | null = null;
  #reasons: readonly SmallestReason[] = [];

  constructor(
    private readonly kept: Kept,
    private readonly shop: ShopProblem,
    private readonly before: { readonly timetable: Timetable; readonly violations: readonly Violation[] } | null,
    private readonly zone: string,
  ) {}

  hear(news: PlanNews): void {
    const { run } = this.kept;
    switch (news.kind) {
      case 'plan':
        this.#plan = news.plan;
        this.#show({ plansMade: news.plansMade });
        break;
      case 'bound':
        this.#bound = news;
        this.#show({});
        break;
      case 'reasons':
        this.#reasons = news.reasons;
        this.#show({});
        break;
      case 'end':
        this.#show({ plansMade: Math.max(run.plansMade, news.plansMade), status: 'done' });
        break;
      case 'failed':
        console.error(`The planner failed: ${news.message}`);
        this.#show({ status: 'failed', message: 'The planner ended without an answer. Try again.' });
        break;
    }
  }

  #show(change: Partial<PlanRun>): void {
    const { run } = this.kept;
    this.kept.run = { ...run, ...change, version: run.version + 1, timetable: this.#timetable() };
  }

  #timetable(): Timetable | null {
    if (this.#plan === null) return null;
    const proof = {
      unavoidableLateMinutes: this.#bound?.lateMinutes ?? null,
      isProvedBest: this.#bound?.isProvedBest ?? false,
    };
    const timetable = timetableOf(this.shop, this.#plan, proof, this.kept.run.whatIf, this.#reasons);
    if (this.before === null) return timetable;
    const { timetable: old, violations } = this.before;
    return { ...timetable, moved: movedVisits(old, timetable, violations, this.shop, this.zone) };
  }
}
