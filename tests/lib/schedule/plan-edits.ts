import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';

/** One planted fault, and the plan with it. */
export interface Mutation {
  readonly what: string;
  readonly plan: ShopPlan;
}

/** One of a list; undefined where it is empty. */
export type Pick = <T>(list: readonly T[]) => T | undefined;

export function swapped(plan: ShopPlan, place: PlannedTask, by: PlannedTask): ShopPlan {
  return { ...plan, placed: plan.placed.map((one) => (one === place ? by : one)) };
}

/** The same visit at another time. */
export function shifted(place: PlannedTask, by: number): PlannedTask {
  return {
    ...place,
    startMinute: place.startMinute + by,
    finishMinute: place.finishMinute + by,
    pieces: place.pieces.map((piece) => ({ startMinute: piece.startMinute + by, endMinute: piece.endMinute + by })),
  };
}

export function toCome(problem: PlanningProblem, plan: ShopPlan): readonly PlannedTask[] {
  const open = new Set(problem.tasks.filter(({ state }) => state.kind === 'open').map(({ id }) => id));
  return plan.placed.filter(({ taskId }) => open.has(taskId));
}

export function attended(problem: PlanningProblem, plan: ShopPlan): readonly PlannedTask[] {
  return toCome(problem, plan).filter(({ pieces }) => pieces.length > 0);
}
