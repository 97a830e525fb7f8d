import { type CompiledProblem, compileProblem } from '@/lib/schedule/compiled-problem';
import { enterHeld, keepingOrder } from '@/lib/schedule/kept-places';
import { OrderMoves } from '@/lib/schedule/order-moves';
import { NO_FLOOR, PlanDecoder } from '@/lib/schedule/plan-decoder';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { planOfStarts, projectSearchFor } from '@/lib/schedule/project-plan';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { ruleOrders } from '@/lib/schedule/task-order';
import { compareValues } from '@/lib/schedule/value-order';
import { WindowedProjectSearch } from '@/lib/schedule/windowed-project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** Where in a value the weighted minutes late stand. */
const LATE_LEVEL = 1;
/** A worse plan is gone on from when it is late by no more than this over the best, in weighted minutes. Chosen. */
const MOST_WORSE = 1_000;
/** After so many plans without a better one by moving whole batches, tasks are moved too. Chosen on invented shops. */
const IDLE_BY_BATCHES = 700;
/** Rules of priority whose orders are gone on from in turn before the best plan is, each for this long. Chosen. */
const FIRST_ROUNDS = 4;
const IDLE_AT_FIRST = 300;
/** After so many plans without a better one the search is shaken. Chosen on invented shops. */
const IDLE_PLANS = 1_700;
/** How often a task is made to pass over its earliest session, or no longer, instead of being moved. Chosen. */
const DELAY_SHARE = 0.03;
/** Changes made at once by a shake. Chosen. */
const SHAKES = 4;
/**
 * What moving one task against the plan that holds may cost at the most, in weighted minutes late: an hour is not
 * worth another evening of everybody. Chosen.
 */
const MOVE_PRICE = 60;
/**
 * Where the plan that holds is broken, the share of the tasks that may move at that price; each one more costs ten
 * weighted days, so that a slip does not turn the shop upside down. Chosen: a tenth, what has to move included.
 */
const MOST_MOVED = 0.1;
const OVER_PRICE = 14_400;
/** Moves of less are none: the evening begins as it was planned. Chosen. */
const SAME_MINUTES = 5;

/**
 * Looks for a better plan, a step at a time, and always has one that holds: orders of the tasks are changed, first by
 * moving whole batches and then by single tasks too, and each order is decoded into a plan. A few rules of priority are
 * gone on from in turn before the best of all is. The same problem, seed and number of steps give the same plan. With
 * a plan that holds, the search begins from it and leaves it only for gains that are worth the moves.
 */
export class PlanImprover {
  readonly #decoder: PlanDecoder;
  readonly #compiled: CompiledProblem;
  readonly #random: () => number;
  readonly #heldStart: Int32Array | null;
  /** What plans in place of the orders where nobody is needed and nothing is held. */
  readonly #project: ReturnType<typeof projectSearchFor>;
  #order: Int32Array = new Int32Array(0);
  #cost: Float64Array = new Float64Array(0);
  #bestOrder: Int32Array = new Int32Array(0);
  #bestDelays: Uint8Array;
  #bestCost: Float64Array = new Float64Array(0);
  /** What each batch is late in the plan that is gone on from. */
  readonly #late: Float64Array;
  /** The best of the round: what is not much worse than it is gone on from. */
  #roundCost: Float64Array = new Float64Array(0);
  /** Orders that the first rounds begin with, best first. */
  #starts: readonly Int32Array[] = [];
  /** Rounds begun, the one that runs included. */
  #rounds = 0;
  /** Plans made since the round got better. */
  #idle = 0;
  #bestFloor: Int32Array;
  /** Moves beyond it cost days each: infinite where the plan that holds may be left for gains. */
  #mostMoved = Number.POSITIVE_INFINITY;
  #plansMade = 0;
  readonly #moves: OrderMoves;

  constructor(problem: PlanningProblem, held: ShopPlan | null, seed: number) {
    this.#compiled = compileProblem(problem);
    this.#decoder = new PlanDecoder(this.#compiled);
    this.#random = seededRandom(seed);
    this.#late = new Float64Array(problem.batches.length);
    this.#moves = new OrderMoves(this.#compiled.batchOf, this.#late, this.#random);
    this.#heldStart = held === null ? null : startsOf(problem, held);
    this.#bestDelays = this.#decoder.delays.slice();
    this.#bestFloor = this.#decoder.floor.slice();
    this.#project = held === null ? projectSearchFor(this.#compiled, seed) : null;
    if (this.#project !== null) {
      this.#bestOrder = Int32Array.from(ruleOrders(this.#compiled)[0] ?? []);
      return;
    }
    const orders = [...ruleOrders(this.#compiled)];
    if (held !== null) {
      enterHeld(this.#decoder, held);
      const order = heldOrder(problem, this.#compiled, held);
      const keeping = keepingOrder(this.#decoder, held, startsOf(problem, held), order);
      if (keeping.isBroken) this.#mostMoved = MOST_MOVED * this.#compiled.open.length;
      this.#consider(keeping.order);
      this.#decoder.floor.fill(NO_FLOOR);
      orders.push(order);
    }
    const costs = new Map(orders.map((order) => [order, this.#consider(order)]));
    const costOf = (order: readonly number[]) => costs.get(order) ?? this.#bestCost;
    if (held === null) {
      const sorted = [...orders].sort((a, b) => compareValues(costOf(a), costOf(b)));
      this.#starts = sorted.slice(0, FIRST_ROUNDS).map((order) => Int32Array.from(order));
    }
    this.#beginRound();
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
    this.#decoder.floor.set(this.#bestFloor);
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
    if (!this.canImprove) return false;
    if (this.#project !== null) {
      const before = this.#project.bestEnd;
      this.#project.step(count);
      return this.#project.bestEnd < before;
    }
    let isBetter = false;
    for (let i = 0; i < count; i++) isBetter = this.#tryAnother() || isBetter;
    return isBetter;
  }

  /** Makes one more plan, and goes on from it where it is not much worse; true when it is the best so far. */
  #tryAnother(): boolean {
    const mostIdle = this.#rounds <= this.#starts.length ? IDLE_AT_FIRST : IDLE_PLANS;
    if (this.#idle >= mostIdle) this.#beginRound();
    const isByBatches = this.#heldStart === null && this.#idle < IDLE_BY_BATCHES;
    const toggled = !isByBatches && this.#random() < DELAY_SHARE ? this.#anyTask() : -1;
    const order = toggled >= 0 ? this.#order : this.#another(isByBatches);
    if (toggled >= 0) this.#toggle(toggled);
    const freed = this.#freed();
    this.#idle++;
    const mostLate = this.#mostLate();
    const cost = this.#costOf(order, mostLate);
    const isBest = cost !== null && compareValues(cost, this.#bestCost) < 0;
    if (cost !== null && isBest) this.#keep(order, cost);
    if (cost !== null && this.#isNearEnough(cost, mostLate)) {
      this.#goOnFrom(order, cost);
      if (compareValues(cost, this.#roundCost) < 0) {
        this.#roundCost = cost;
        this.#idle = 0;
      }
    } else {
      if (toggled >= 0) this.#toggle(toggled);
      if (freed !== null) this.#decoder.floor[freed.task] = freed.floor;
    }
    return isBest;
  }

  #another(isByBatches: boolean): Int32Array {
    return isByBatches ? this.#moves.byBatches(this.#order) : this.#moves.byTasks(this.#order);
  }

  #anyTask(): number {
    const { open } = this.#compiled;
    return open[Math.floor(this.#random() * open.length)] ?? 0;
  }

  #goOnFrom(order: Int32Array, cost: Float64Array): void {
    this.#order = order;
    this.#cost = cost;
    this.#late.set(this.#decoder.batchLate);
    this.#decoder.settleOn(order);
  }

  /** The orders of the best rules in turn, then the best order as it is, then shaken again and again. */
  #beginRound(): void {
    const start = this.#starts[this.#rounds];
    let order: Int32Array = start ?? this.#bestOrder;
    for (let i = 0; i < SHAKES && this.#rounds > this.#starts.length; i++) order = this.#moves.byTasks(order);
    this.#rounds++;
    if (start === undefined) this.#decoder.delays.set(this.#bestDelays);
    else this.#decoder.delays.fill(0);
    this.#decoder.floor.set(this.#bestFloor);
    const cost = this.#costOf(order, Number.POSITIVE_INFINITY) ?? this.#bestCost;
    this.#goOnFrom(order, cost);
    this.#roundCost = cost;
    this.#idle = 0;
  }

  #consider(listed: readonly number[]): Float64Array | null {
    const order = Int32Array.from(listed);
    const cost = this.#costOf(order, Number.POSITIVE_INFINITY);
    if (cost !== null && (this.#bestCost.length === 0 || compareValues(cost, this.#bestCost) < 0))
      this.#keep(order, cost);
    return cost;
  }

  #keep(order: Int32Array, cost: Float64Array): void {
    this.#bestOrder = order;
    this.#bestCost = cost;
    this.#bestDelays = this.#decoder.delays.slice();
    this.#bestFloor = this.#decoder.floor.slice();
  }

  /** Now and then a task is let go of its place, or given it back: what to undo, null where nothing was done. */
  #freed(): { readonly task: number; readonly floor: number } | null {
    if (this.#heldStart === null || this.#random() < 0.7) return null;
    const task = this.#anyTask();
    const floor = this.#decoder.floor[task] ?? NO_FLOOR;
    const start = this.#heldStart[task] ?? -1;
    this.#decoder.floor[task] = floor === NO_FLOOR && start >= 0 ? start : NO_FLOOR;
    return { task, floor };
  }

  #toggle(task: number): void {
    this.#decoder.delays[task] = this.#decoder.delays[task] === 1 ? 0 : 1;
  }

  /** The levels of the value, the second raised by what the moves cost; null: later than `mostLate`. */
  #costOf(order: Int32Array, mostLate: number): Float64Array | null {
    this.#plansMade++;
    // With conflicts a later plan may still be the better one.
    const isLateSure = this.#bestCost[0] === 0;
    if (!this.#decoder.weigh(order, isLateSure ? mostLate : Number.POSITIVE_INFINITY)) return null;
    const cost = this.#decoder.value.slice();
    const held = this.#heldStart;
    if (held === null) return cost;
    let moved = 0;
    for (const task of this.#compiled.open) {
      const was = held[task] ?? -1;
      if (was >= 0 && Math.abs((this.#decoder.start[task] ?? 0) - was) >= SAME_MINUTES) moved++;
    }
    const over = Math.max(0, moved - this.#mostMoved);
    cost[LATE_LEVEL] = (cost[LATE_LEVEL] ?? 0) + MOVE_PRICE * moved + (over > 0 ? OVER_PRICE * over : 0);
    return cost;
  }

  /** Record-to-record travel: whatever is not much worse than the best, or than what it came from, is gone on from. */
  #mostLate(): number {
    const worse = (this.#roundCost[LATE_LEVEL] ?? 0) + MOST_WORSE * this.#random();
    return Math.max(this.#cost[LATE_LEVEL] ?? 0, worse);
  }

  #isNearEnough(cost: Float64Array, mostLate: number): boolean {
    if (compareValues(cost, this.#cost) <= 0) return true;
    if ((cost[0] ?? 0) > (this.#roundCost[0] ?? 0)) return false;
    return (cost[LATE_LEVEL] ?? 0) < mostLate;
  }
}

function startsOf(problem: PlanningProblem, held: ShopPlan): Int32Array {
  const starts = new Map(held.placed.map(({ taskId, startMinute }) => [taskId, startMinute]));
  return Int32Array.from(problem.tasks, (task) => starts.get(task.id) ?? -1);
}

/**
 * The open tasks as the plan that holds has them, by their finishes, so that what is put down and taken up again finds
 * the minutes between the others; what is new comes last.
 */
function heldOrder(problem: PlanningProblem, compiled: CompiledProblem, held: ShopPlan): readonly number[] {
  const finishes = new Map(held.placed.map(({ taskId, finishMinute }) => [taskId, finishMinute]));
  const at = (task: number) => finishes.get(problem.tasks[task]?.id ?? '') ?? Number.MAX_SAFE_INTEGER;
  return [...compiled.open].sort((a, b) => at(a) - at(b) || a - b);
}
