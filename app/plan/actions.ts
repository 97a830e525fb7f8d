'use server';

import { refresh } from 'next/cache';
import { acceptPlan } from '@/app/_commands/accept-plan';
import { pinVisit } from '@/app/_commands/pin-visit';
import { othersFirst } from '@/app/_plan/others-first';
import type { PinCheck } from '@/app/_plan/pin-effect';
import { now } from '@/app/_server/clock';
import { checkPin } from '@/app/_server/pin-check';
import { cancelPlanRun, findPlanRun, startPlanRun, timetableOfRun, tryHarderRun } from '@/app/_server/plan-runs';
import { pinRequestSchema, planRequestSchema } from '@/lib/contracts/stored-plan';
import { db } from '@/prisma/client';
import { getShop } from '@/prisma/data/shop';

type Answer<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly message: string };

const NOT_READ = { ok: false, message: 'This could not be read. Reload the page and try again.' } as const;

/** Begins a search for a plan and answers its id. */
export async function startPlanAction(request: unknown): Promise<Answer<{ readonly runId: string }>> {
  const parsed = planRequestSchema.safeParse(request);
  if (!parsed.success) return NOT_READ;
  const run = await startPlanRun(await db(), parsed.data.whatIf, now());
  return { ok: true, runId: run.id };
}

/** Calls a search off; its best plan so far stays. */
export async function cancelPlanAction(runId: string): Promise<void> {
  cancelPlanRun(String(runId));
}

/** Begins to look harder for a better plan than that of a search. */
export async function tryHarderAction(runId: string): Promise<Answer<object>> {
  return tryHarderRun(String(runId))
    ? { ok: true }
    : { ok: false, message: 'This search runs already or is not kept any more.' };
}

/** Makes the plan of a search the one that holds. */
export async function acceptPlanAction(runId: string): Promise<Answer<object>> {
  const run = findPlanRun(String(runId));
  const timetable = run === null ? null : timetableOfRun(run);
  if (run === null || timetable === null) {
    return { ok: false, message: 'This plan is not kept any more. Plan anew.' };
  }
  cancelPlanRun(run.id);
  await othersFirst();
  const accepted = await acceptPlan(await db(), timetable, run.againstPlanId, now());
  // Nothing is drawn anew here: the page that shows the plan is gone to next.
  return accepted.ok ? { ok: true } : accepted;
}

/** What pinning a visit would mean; nothing is saved. */
export async function checkPinAction(request: unknown): Promise<Answer<PinCheck>> {
  const parsed = pinRequestSchema.safeParse(request);
  if (!parsed.success) return NOT_READ;
  const database = await db();
  return { ok: true, ...(await checkPin(database, await getShop(database), parsed.data, now())) };
}

/** Pins a visit at an hour, or lets it go. */
export async function pinAction(request: unknown): Promise<Answer<object>> {
  const parsed = pinRequestSchema.safeParse(request);
  if (!parsed.success) return NOT_READ;
  const result = await pinVisit(await db(), parsed.data, now());
  if (!result.ok) return result;
  refresh();
  return { ok: true };
}
