import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { type Condition, conditionKey, conditionsOf, without } from '@/lib/schedule/condition';
import { findLifts } from '@/lib/schedule/find-lifts';
import { type Lift, lifted } from '@/lib/schedule/lift';
import { aloneProblem, type PassBudget, PlaceJudge, routeTo } from '@/lib/schedule/place-judge';
import type { PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';

/** One thing that makes a task impossible by itself. */
export interface Cause {
  /** No fewer of them make it impossible: with any one dropped it gets a place. */
  readonly conditions: readonly Condition[];
  /** Changes that lift this cause, each by itself, as small as they were found; the first is the least. */
  readonly lifts: readonly Lift[];
}

/** Why a task cannot be planned, or why a pin cannot be kept, and what would change that. */
export interface SmallestReason {
  readonly taskId: string;
  /** Each is enough to make it impossible; all have to be lifted. */
  readonly causes: readonly Cause[];
  /** Whether the first lifts of all causes together were found to give it a place. */
  readonly isLifted: boolean;
  /** Whether that holds only with nothing else to do: with the rest of the plan first there was no place even so. */
  readonly isOnlyAlone: boolean;
  /**
   * Whether the impossibility is certain. Else it was found by the planner's own rules, which place one task after the
   * other and could overlook a place.
   */
  readonly isCertain: boolean;
}

/** Passes of the decoder for all that one plan leaves out. Chosen: about a second for a shop of 500 tasks. */
export const REASON_PASSES = 2_000;
/** More causes of one task are not looked for. Chosen: nobody reads more. */
const MOST_CAUSES = 3;

/**
 * The smallest reason that can be found for each task that a plan has no place for, and for each pin that cannot be
 * kept where it is: what cannot be planned by its own makes a reason, what only waits for that does not. The least set
 * is found by dropping conditions as long as it stays impossible (deletion filter), first with the task's route alone
 * in the shop, else with all other work. Tasks for which `passes` no longer reached are left out.
 */
export function smallestReasons(
  problem: PlanningProblem,
  plan: ShopPlan,
  passes: number = REASON_PASSES,
): readonly SmallestReason[] {
  const budget: PassBudget = { left: passes };
  const reasons: SmallestReason[] = [];
  for (const taskId of rootTasks(problem, plan)) {
    // One task must not use up what the others need.
    const own: PassBudget = { left: Math.min(budget.left, Math.ceil(passes / 4)) };
    const given = own.left;
    const reason = new ReasonFinder(problem, plan, taskId, own).find();
    budget.left -= given - own.left;
    if (reason !== null) reasons.push(reason);
    if (budget.left <= 0) break;
  }
  return reasons;
}

/** What has no place although nothing that it waits for lacks one, and pins in conflict. */
function rootTasks(problem: PlanningProblem, plan: ShopPlan): readonly string[] {
  const roots = plan.unplaced.flatMap(({ taskId, reason }) => (reason.kind === 'waits-for-unplaced' ? [] : [taskId]));
  const pinned = new Set(problem.tasks.flatMap(({ id, state }) => (state.kind === 'pinned' ? [id] : [])));
  for (const violation of checkPlan(problem, plan)) {
    if (!isGivenViolation(problem, violation)) continue;
    // Of a link the later end is the one that cannot be kept.
    const own = violation.taskIds.filter((id) => pinned.has(id)).at(-1);
    if (own !== undefined && !roots.includes(own)) roots.push(own);
  }
  return roots;
}

/** Finds the causes of one task. */
class ReasonFinder {
  readonly #route: readonly Task[];
  readonly #task: Task | undefined;

  constructor(
    private readonly problem: PlanningProblem,
    private readonly plan: ShopPlan,
    private readonly taskId: string,
    private readonly budget: PassBudget,
  ) {
    this.#route = routeTo(problem, taskId);
    this.#task = problem.tasks.find(({ id }) => id === taskId);
  }

  find(): SmallestReason | null {
    if (this.#task === undefined) return null;
    const alone = aloneProblem(this.problem, this.#route);
    const judge = new PlaceJudge(this.taskId, this.budget);
    const others = new PlaceJudge(this.taskId, this.budget, this.#othersFirst());
    if (judge.planWithPlace(alone) !== null) return this.#explained(this.problem, others, [{ kind: 'other-work' }]);
    const reason = this.#explained(alone, judge, []);
    return reason === null ? null : this.#amongOthers(reason, others);
  }

  /** Of the lifts that help with nothing else to do, those that help beside the rest of the plan; else says so. */
  #amongOthers(reason: SmallestReason, others: PlaceJudge): SmallestReason {
    const { causes, isLifted } = reason;
    const last = causes.at(-1);
    if (!isLifted || last === undefined) return reason;
    const before = causes.slice(0, -1);
    const firsts = before.flatMap(({ lifts }) => lifts.slice(0, 1));
    const lifts = last.lifts.filter((lift) => {
      const together = [...firsts, lift];
      const letGo = together.flatMap((one) => (one.kind === 'unpin' ? [one.taskId] : []));
      return others.planWithPlace(together.reduce(lifted, this.problem), letGo) !== null;
    });
    if (lifts.length === 0) return { ...reason, isOnlyAlone: true };
    return { ...reason, causes: [...before, { ...last, lifts }] };
  }

  /** The rest of the shop in the order of the plan. */
  #othersFirst(): readonly string[] {
    const own = new Set(this.#route.map(({ id }) => id));
    return [...this.plan.placed]
      .sort((a, b) => a.startMinute - b.startMinute || a.finishMinute - b.finishMinute)
      .flatMap(({ taskId }) => (own.has(taskId) ? [] : [taskId]));
  }

  #explained(base: PlanningProblem, judge: PlaceJudge, always: readonly Condition[]): SmallestReason | null {
    const causes: Cause[] = [];
    let problem = base;
    let isLifted = false;
    while (causes.length < MOST_CAUSES && !judge.isSpent) {
      const all = conditionsOf(problem, this.#route);
      const kept = leastOf(all, (conditions) => judge.planWithPlace(without(problem, rest(all, conditions))) === null);
      if (kept.length === 0 || judge.isSpent) break;
      const conditions = [...always, ...kept];
      // What lifts this cause where there is no other, and then what of it lifts everything.
      const restricted = without(problem, rest(all, kept));
      const found = findLifts(problem, restricted, conditions, this.#route, judge);
      causes.push({ conditions, lifts: found.lifts });
      const [first] = found.lifts;
      if (found.isWhole || first === undefined) {
        isLifted = found.isWhole;
        break;
      }
      problem = lifted(problem, first);
      // What lifts one cause may make place for the task and take it from a pin that was let go.
      if (judge.planWithPlace(problem) !== null) break;
    }
    if (causes.length === 0) return null;
    const isCertain = causes.some((cause) => this.#isCertain(cause));
    return { taskId: this.taskId, causes, isLifted, isOnlyAlone: false, isCertain };
  }

  /**
   * A task by itself among what is fixed is tried at every minute and with everybody, so that finding no place proves
   * that there is none. With windows, other work or the hours of earlier steps it is only found.
   */
  #isCertain({ conditions }: Cause): boolean {
    return conditions.every((condition) => {
      switch (condition.kind) {
        case 'other-work':
        case 'window':
          return false;
        case 'cure':
          // A set-up that an earlier step pays alone might be shared.
          return this.#route.every(({ id, setUp }) => id === this.taskId || setUp === null);
        case 'fixed':
        case 'batch-release':
          return true;
        default:
          return condition.taskId === this.taskId;
      }
    });
  }
}

function rest(all: readonly Condition[], kept: readonly Condition[]): readonly Condition[] {
  const keys = new Set(kept.map(conditionKey));
  return all.filter((condition) => !keys.has(conditionKey(condition)));
}

/**
 * A least set of conditions that is impossible by itself: whole kinds are dropped first, then one after the other, and
 * again until dropping any one makes it possible. Empty where even none of them is impossible.
 */
function leastOf(
  all: readonly Condition[],
  isImpossible: (conditions: readonly Condition[]) => boolean,
): readonly Condition[] {
  let kept = all;
  const tryWithout = (dropped: readonly Condition[]) => {
    const left = rest(kept, dropped);
    if (left.length === kept.length || !isImpossible(left)) return;
    kept = left;
  };
  for (const kind of new Set(all.map((condition) => condition.kind))) {
    tryWithout(all.filter((condition) => condition.kind === kind));
  }
  for (let before = -1; before !== kept.length; ) {
    before = kept.length;
    for (const condition of kept) tryWithout([condition]);
  }
  return kept;
}
