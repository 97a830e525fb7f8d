import { checkPlan } from '@/lib/schedule/check-plan';
import { type CompiledProblem, compileProblem } from '@/lib/schedule/compiled-problem';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import type { PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { routeOrder, ruleOrders } from '@/lib/schedule/task-order';

/** Passes of the decoder that may be made still; shared by all that is asked about one plan. */
export interface PassBudget {
  left: number;
}

/**
 * Says whether one task gets a place in a problem, by making plans of it: found, not proved, where several tasks and
 * windows play together. A pinned task has a place where nothing is wrong with it there.
 */
export class PlaceJudge {
  constructor(
    private readonly taskId: string,
    private readonly budget: PassBudget,
    /** Tasks that get their places first, in this order: the others of the shop. */
    private readonly first: readonly string[] = [],
  ) {}

  get isSpent(): boolean {
    return this.budget.left <= 0;
  }

  /** The plan in which the task, and after it those of `also`, have a place; null where none was found. */
  planWithPlace(problem: PlanningProblem, also: readonly string[] = []): ShopPlan | null {
    if (this.isSpent) return null;
    const compiled = compileProblem(problem);
    const decoder = new PlanDecoder(compiled);
    const index = new Map(problem.tasks.map(({ id }, i) => [id, i]));
    const ahead = this.first.flatMap((id) => {
      const i = index.get(id);
      return i === undefined || compiled.fixed[i] === 1 || also.includes(id) ? [] : [i];
    });
    const isAhead = new Set(ahead);
    const tried = new Set<string>();
    const hasPins = problem.tasks.some(({ state }) => state.kind === 'pinned');
    const last = new Set(also.map((id) => index.get(id) ?? -1));
    for (const rule of ordersOf(compiled, ahead.length === 0)) {
      const own = rule.filter((task) => !isAhead.has(task) && !last.has(task));
      const order = [...ahead, ...own, ...rule.filter((task) => last.has(task))];
      const key = order.join();
      if (tried.has(key)) continue;
      tried.add(key);
      decoder.passes = 0;
      decoder.decode(order);
      this.budget.left -= decoder.passes;
      // Alone and without pins, what is in conflict is a step of the route, and the last one with it.
      const isLeftOut = ahead.length === 0 && !hasPins && decoder.value[0] !== 0;
      const plan = isLeftOut ? null : decoder.plan();
      if (plan !== null && this.hasPlace(problem, plan, also)) return plan;
      if (this.isSpent) break;
    }
    return null;
  }

  private hasPlace(problem: PlanningProblem, plan: ShopPlan, also: readonly string[]): boolean {
    if (plan.unplaced.some(({ taskId }) => taskId === this.taskId || also.includes(taskId))) return false;
    const task = problem.tasks.find(({ id }) => id === this.taskId);
    if (task?.state.kind !== 'pinned') return true;
    return !checkPlan(problem, plan).some(({ taskIds }) => taskIds.includes(this.taskId));
  }
}

/** The route as it goes, and then, where it is alone, by every rule. */
function* ordersOf(compiled: CompiledProblem, isAlone: boolean): Generator<readonly number[]> {
  yield routeOrder(compiled).filter((task) => compiled.fixed[task] === 0);
  if (isAlone) yield* ruleOrders(compiled);
}

/** A task with all that has to be done before it, the task itself last: open tasks, and the fixed ones they follow. */
export function routeTo(problem: PlanningProblem, taskId: string): readonly Task[] {
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const before = new Map<string, string[]>();
  for (const { kind, lag, fromTaskId, toTaskId } of problem.links) {
    if (kind === 'least' && lag.kind === 'fixed' && lag.minutes < 0) continue;
    before.set(toTaskId, [...(before.get(toTaskId) ?? []), fromTaskId]);
  }
  const route: Task[] = [];
  const seen = new Set<string>();
  const visit = (id: string) => {
    const task = tasks.get(id);
    if (task === undefined || seen.has(id)) return;
    seen.add(id);
    if (task.state.kind === 'open' || id === taskId) for (const from of before.get(id) ?? []) visit(from);
    route.push(task);
  };
  visit(taskId);
  return route;
}

/** The shop with nothing to do but one route, and what is fixed. */
export function aloneProblem(problem: PlanningProblem, route: readonly Task[]): PlanningProblem {
  const ids = new Set(route.map(({ id }) => id));
  const tasks = problem.tasks.filter(({ id, state }) => ids.has(id) || state.kind !== 'open');
  const links = problem.links.filter(({ fromTaskId, toTaskId }) => ids.has(fromTaskId) && ids.has(toTaskId));
  const lags = [
    ...links.map(({ lag }) => lag),
    ...tasks.flatMap((one) => [one.readyAfter, ...one.holds.map(({ until }) => until)]),
  ];
  const named = new Set(lags.flatMap((lag) => (lag.kind === 'table' ? [lag.tableId] : [])));
  return { ...problem, tasks, links, lagTables: problem.lagTables.filter(({ id }) => named.has(id)) };
}
