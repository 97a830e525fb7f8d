import { checkPlan } from '@/lib/schedule/check-plan';
import { firstPlan } from '@/lib/schedule/first-plan';
import { batchReadyMinutes } from '@/lib/schedule/plan-value';
import type { Task } from '@/lib/schedule/planning-problem';
import { durationText } from '@/lib/units/format-duration';
import { MINUTE_MS } from '@/lib/units/instant';
import { unplacedWords, violationWords, visitLabel } from './plan-words';
import type { ShopProblem } from './shop-problem';

/** What pinning a visit would mean. */
export interface PinCheck {
  /** Why it cannot be kept there, each in a sentence; empty: it can. */
  readonly clashes: readonly string[];
  /** What it would cost: batches that get ready later than without the pin. */
  readonly effects: readonly string[];
}

/** A task with the state that a pin gives it. */
export interface PinnedTask {
  readonly taskId: string;
  readonly state: Task['state'];
}

/** Less is told as nothing: a quick plan for a check is not the best one. Chosen. */
const LEAST_TOLD_MINUTES = 12 * 60;

/**
 * Tries a pin on a plan made at once, beside one without it: what is wrong only with the pin is its own fault. A task
 * that is not open changes nothing.
 */
export function pinEffect(shop: ShopProblem, { taskId, state }: PinnedTask, zone: string): PinCheck {
  const { problem } = shop;
  const tasks = problem.tasks.map((task) =>
    task.id === taskId && task.state.kind === 'open' ? { ...task, state } : task,
  );
  const before = tried(shop, zone);
  const after = tried({ ...shop, problem: { ...problem, tasks } }, zone);
  const known = new Set(before.faults);
  const effects = problem.batches.flatMap((batch) => {
    const was = before.ready.get(batch.id);
    const is = after.ready.get(batch.id);
    if (was === undefined || is === undefined || is - was < LEAST_TOLD_MINUTES) return [];
    return [`${batch.name} is ready ${durationText((is - was) * MINUTE_MS)} later.`];
  });
  return { clashes: after.faults.filter((fault) => !known.has(fault)), effects };
}

function tried(shop: ShopProblem, zone: string) {
  const { problem, about } = shop;
  const plan = firstPlan(problem);
  const faults = [
    ...checkPlan(problem, plan).map((violation) => violationWords(violation, shop, zone)),
    ...plan.unplaced.map(
      ({ taskId, reason }) => `${visitLabel(about.get(taskId))} has no place then. ${unplacedWords(reason, shop)}`,
    ),
  ];
  return { faults, ready: batchReadyMinutes(problem, new Map(plan.placed.map((place) => [place.taskId, place]))) };
}
