import { type CompiledProblem, compileProblem } from '@/lib/schedule/compiled-problem';
import { OrderMoves } from '@/lib/schedule/order-moves';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { planOfStarts, projectSearchFor } from '@/lib/schedule/project-plan';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { ruleOrders } from '@/lib/schedule/task-order';
import { compareValues } from '@/lib/schedule/value-order';
import { WindowedProjectSearch } from '@/lib/schedule/windowed-project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** Where in a value the weighted minutes late stand. */
const LATE_LEVEL = 1;
/** A worse plan is gone on from when it is late by no more than this over the best, in weighted minutes. Chosen: half a day. */
const MOST_WORSE = 720;
/**
 * What moving one task against the plan that holds may cost at the most, in weighted minutes late: an hour is not
 * worth another evening of everybody. Chosen.
 */
const MOVE_PRICE = 60;
/** Moves of less are none: the evening begins as it was planned. Chosen. */
const SAME_MINUTES = 5;

/**
 * Looks for a better plan, a step at a time, and always has one that holds: orders of the tasks are changed by moving
 * one task or a whole batch, and each order is decoded into a plan. The same problem, seed and number of steps give
 * the same plan. With a plan that holds, the search begins from it and leaves it only for gains that are worth the moves.
 */
export class PlanImprover {
  readonly #decoder: PlanDecoder;
  readonly #compiled: CompiledProblem;
  readonly #random: () => number;
  readonly #heldStart: Int32Array | null;
  /** What plans in place of the orders where nobody is needed and nothing is held. */
  readonly #project: ReturnType<typeof projectSearchFor>;
  #order: number[] = [];
  #cost: number[] = [];
  #bestOrder: number[] = [];
  #bestDelays: Uint8Array;
  #bestCost: number[] = [];
  #plansMade = 0;
  readonly #moves: OrderMoves;

  constructor(problem: PlanningProblem, held: ShopPlan | null, seed: number) {
    this.#compiled = compileProblem(problem);
    this.#decoder = new PlanDecoder(this.#compiled);
    this.#random = seededRandom(seed);
    this.#moves = new OrderMoves(this.#compiled.batchOf, this.#random);
    this.#heldStart = held === null ? null : startsOf(problem, held);
    this.#bestDelays = this.#decoder.delays.slice();
    this.#project = held === null ? projectSearchFor(this.#compiled, seed) : null;
    if (this.#project !== null) {
      this.#bestOrder = [...(ruleOrders(this.#compiled)[0] ?? [])];
      return;
    }
    const orders = [...ruleOrders(this.#compiled)];
    if (held !== null) orders.push(heldOrder(problem, this.#compiled, held));
    for (const order of orders) this.#consider([...order]);
    this.#order = [...this.#bestOrder];
    this.#cost = this.#bestCost;
  }

  /** Plans made so far. */
  get plansMade(): number {
    return this.#plansMade + (this.#project?.schedules ?? 0);
  }

  /** Whether there is anything to put in another order. */
  get canImprove(): boolean {
    return this.#compiled.open.length > 1 && this.#project?.isDone !== true;
  }

  /** The best plan so far. */
  best(): ShopPlan {
    const starts = this.#project?.best ?? null;
    const plan = starts === null ? null : planOfStarts(this.#compiled, starts);
    if (plan !== null) return plan;
    this.#decoder.delays.set(this.#bestDelays);
    this.#decoder.decode(this.#bestOrder);
    return this.#decoder.plan();
  }

  /** The makespan that no plan without people can go below, in minutes from now; null for a shop with people. */
  get leastMakespan(): number | null {
    return this.#project?.lowerBound ?? null;
  }

  /** Whether it is proved that no plan keeps all lags: asked of problems without people alone. */
  get isProvedImpossible(): boolean {
    return this.#project instanceof WindowedProjectSearch && this.#project.answer === 'infeasible';
  }

  /** Makes `count` more plans; true when the best of them is better than what was there. */
  improve(count: number): boolean {
    const { open } = this.#compiled;
    if (!this.canImprove) return false;
    if (this.#project !== null) {
      const before = this.#project.bestEnd;
      this.#project.step(count);
      return this.#project.bestEnd < before;
    }
    let isBetter = false;
    this.#decoder.delays.set(this.#bestDelays);
    for (let i = 0; i < count; i++) {
      const order = this.#moves.moved(this.#order);
      const toggled = this.#random() < 0.1 ? (open[Math.floor(this.#random() * open.length)] ?? -1) : -1;
      if (toggled >= 0) this.#toggle(toggled);
      const cost = this.#costOf(order);
      if (compareCosts(cost, this.#bestCost) < 0) {
        this.#keep(order, cost);
        isBetter = true;
      }
      if (this.#isNearEnough(cost)) {
        this.#order = order;
        this.#cost = cost;
      } else if (toggled >= 0) this.#toggle(toggled);
    }
    return isBetter;
  }

  #consider(order: number[]): void {
    const cost = this.#costOf(order);
    if (this.#bestCost.length === 0 || compareCosts(cost, this.#bestCost) < 0) this.#keep(order, cost);
  }

  #keep(order: number[], cost: number[]): void {
    this.#bestOrder = [...order];
    this.#bestCost = cost;
    this.#bestDelays = this.#decoder.delays.slice();
  }

  #toggle(task: number): void {
    this.#decoder.delays[task] = this.#decoder.delays[task] === 1 ? 0 : 1;
  }

  /** The levels of the value, the second raised by what the moves cost. */
  #costOf(order: readonly number[]): number[] {
    this.#decoder.decode(order);
    this.#plansMade++;
    const cost = [...this.#decoder.value];
    const held = this.#heldStart;
    if (held === null) return cost;
    let moved = 0;
    for (const task of this.#compiled.open) {
      const was = held[task] ?? -1;
      if (was >= 0 && Math.abs((this.#decoder.start[task] ?? 0) - was) >= SAME_MINUTES) moved++;
    }
    cost[LATE_LEVEL] = (cost[LATE_LEVEL] ?? 0) + MOVE_PRICE * moved;
    return cost;
  }

  /** Record-to-record travel: whatever is not much worse than the best is gone on from. */
  #isNearEnough(cost: readonly number[]): boolean {
    if (compareCosts(cost, this.#cost) <= 0) return true;
    if ((cost[0] ?? 0) > (this.#bestCost[0] ?? 0)) return false;
    return (cost[LATE_LEVEL] ?? 0) <= (this.#bestCost[LATE_LEVEL] ?? 0) + MOST_WORSE * this.#random();
  }
}

function compareCosts(a: readonly number[], b: readonly number[]): number {
  return compareValues(Float64Array.from(a), Float64Array.from(b));
}

function startsOf(problem: PlanningProblem, held: ShopPlan): Int32Array {
  const starts = new Map(held.placed.map(({ taskId, startMinute }) => [taskId, startMinute]));
  return Int32Array.from(problem.tasks, (task) => starts.get(task.id) ?? -1);
}

/** The open tasks as the plan that holds has them; what is new comes last. */
function heldOrder(problem: PlanningProblem, compiled: CompiledProblem, held: ShopPlan): readonly number[] {
  const starts = startsOf(problem, held);
  const at = (task: number) => ((starts[task] ?? -1) < 0 ? Number.MAX_SAFE_INTEGER : (starts[task] ?? 0));
  return [...compiled.open].sort((a, b) => at(a) - at(b) || a - b);
}
