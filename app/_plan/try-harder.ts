import { constraintAnswerSchema } from '@/lib/contracts/solver-message';
import { batchesPlacedAnew } from '@/lib/schedule/batches-placed-anew';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { planOfAnswer } from '@/lib/schedule/constraint-answer';
import { constraintModel, type ModelLimit } from '@/lib/schedule/constraint-model';
import { comparePlanValues, planValue } from '@/lib/schedule/plan-value';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { SOLVER_FOLDER, type SolverEnd, solverWorks, startSolver } from './constraint-solver';

/** What came of looking harder for a plan. */
export type HarderAnswer =
  /** The solver is not there or does not work. */
  | { readonly kind: 'not-available' }
  /** There is nothing that it could look for. */
  | { readonly kind: 'nothing-to-gain' }
  | {
      readonly kind: 'looked';
      readonly seconds: number;
      readonly isBetter: boolean;
      /** What it proved: that no plan is less late than the best one; only of plans within the limits. */
      readonly isProved: boolean;
      readonly limits: readonly ModelLimit[];
    };

export interface HarderSearch {
  readonly problem: PlanningProblem;
  /** A plan that holds. */
  readonly plan: ShopPlan;
  readonly withinMs: number;
  readonly isCancelled: () => boolean;
  /** Each better plan. */
  readonly tell: (plan: ShopPlan) => void;
  readonly folder?: string;
}

/** Looks at whether it was called off, and for what can be told, in ms: each plan is drawn anew. Chosen. */
const LOOK_MS = 400;

/**
 * Looks for a plan that is better than one by a constraint solver: in its own thread, so that this one stays free.
 * Whatever the solver says is decoded, checked and compared before it is told.
 */
export async function tryHarder(search: HarderSearch): Promise<HarderAnswer> {
  const { problem, withinMs, isCancelled, tell, folder = SOLVER_FOLDER } = search;
  let best = search.plan;
  const made = constraintModel(problem, best, batchesPlacedAnew(problem, best));
  if (!made.ok) {
    const { refusal } = made;
    if (refusal.kind !== 'none-better') return { kind: 'nothing-to-gain' };
    return { kind: 'looked', seconds: 0, isBetter: false, isProved: true, limits: refusal.limits };
  }
  const { model } = made;
  const beganAt = performance.now();
  let isUntold = false;
  const tellBest = () => {
    if (isUntold) tell(best);
    isUntold = false;
  };
  let look: NodeJS.Timeout | undefined;
  const calledOff = new Promise<'called-off'>((resolve) => {
    look = setInterval(() => {
      tellBest();
      if (isCancelled()) resolve('called-off');
    }, LOOK_MS);
  });
  const works = await Promise.race([solverWorks(folder), calledOff]);
  if (works === false) {
    clearInterval(look);
    return { kind: 'not-available' };
  }
  let leastCost: number | null = null;
  const hear = (printed: string) => {
    const answer = constraintAnswerSchema.parse(JSON.parse(printed));
    leastCost = answer.late[0] ?? null;
    const plan = planOfAnswer(problem, search.plan, model, answer);
    const isSound = checkPlan(problem, plan).every((violation) => isGivenViolation(problem, violation));
    if (!isSound || comparePlanValues(planValue(problem, plan), planValue(problem, best)) >= 0) return;
    best = plan;
    isUntold = true;
  };
  const solver = startSolver({ text: model.text, withinMs, tell: hear }, folder);
  void calledOff.then(() => solver.cancel());
  const end: SolverEnd = await solver.end;
  clearInterval(look);
  tellBest();
  if (end.kind === 'failed' && best === search.plan) return { kind: 'not-available' };
  // Where the solver's plan could not be carried out as well as it says, nothing is proved about ours.
  const late = planValue(problem, best).weightedLateMinutes;
  const isAsGood = leastCost === null || late * model.weightScale <= leastCost + 1e-6;
  return {
    kind: 'looked',
    seconds: Math.round((performance.now() - beganAt) / 1000),
    isBetter: best !== search.plan,
    isProved: end.kind === 'proved' && isAsGood,
    limits: model.limits,
  };
}
