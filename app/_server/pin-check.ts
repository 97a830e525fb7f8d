import 'server-only';
import { unplacedWords, violationWords, visitLabel } from '@/app/_plan/plan-words';
import { shopProblem } from '@/app/_plan/shop-problem';
import type { PinRequest } from '@/lib/contracts/stored-plan';
import { checkPlan } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { batchReadyMinutes } from '@/lib/schedule/plan-value';
import { durationText } from '@/lib/units/format-duration';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import type { ShopSettings } from '@/prisma/data/shop';
import { loadPlanInput } from './plan-input';

/** What pinning a visit would mean. */
export interface PinCheck {
  /** Why it cannot be kept there, each in a sentence; empty: it can. */
  readonly clashes: readonly string[];
  /** What it would cost: batches that get ready later than without the pin. */
  readonly effects: readonly string[];
}

/** Less is told as nothing: a quick plan for a check is not the best one. Chosen. */
const LEAST_TOLD_MINUTES = 12 * 60;

/**
 * Tries a pin on a plan made at once, beside one without it: what is wrong only with the pin is its own fault. Nothing
 * is saved.
 */
export async function checkPin(database: Db, shop: ShopSettings, pin: PinRequest, nowAt: Instant): Promise<PinCheck> {
  const input = await loadPlanInput(database, shop, nowAt);
  const pins = input.pins.filter(({ batchId, taskKey }) => batchId !== pin.batchId || taskKey !== pin.taskKey);
  const before = tried({ ...input, pins });
  const { batchId, taskKey, startAt, personId } = pin;
  const after = tried({ ...input, pins: startAt === null ? pins : [...pins, { batchId, taskKey, startAt, personId }] });
  const known = new Set(before.faults);
  const effects = after.made.problem.batches.flatMap((batch) => {
    const was = before.ready.get(batch.id);
    const is = after.ready.get(batch.id);
    if (was === undefined || is === undefined || is - was < LEAST_TOLD_MINUTES) return [];
    return [`${batch.name} is ready ${durationText((is - was) * MINUTE_MS)} later.`];
  });
  return { clashes: after.faults.filter((fault) => !known.has(fault)), effects };

  function tried(own: typeof input) {
    const made = shopProblem(own);
    const plan = firstPlan(made.problem);
    const faults = [
      ...checkPlan(made.problem, plan).map((violation) => violationWords(violation, made, shop.timeZone)),
      ...plan.unplaced.map(
        ({ taskId, reason }) =>
          `${visitLabel(made.about.get(taskId))} has no place then. ${unplacedWords(reason, made)}`,
      ),
    ];
    const ready = batchReadyMinutes(made.problem, new Map(plan.placed.map((place) => [place.taskId, place])));
    return { made, faults, ready };
  }
}
