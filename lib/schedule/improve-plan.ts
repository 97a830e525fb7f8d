import { addWithFollowers, affectedTasks } from '@/lib/schedule/affected-tasks';
import { checkPlan, isGivenViolation } from '@/lib/schedule/check-plan';
import { type CompiledProblem, compileProblem, NEVER } from '@/lib/schedule/compiled-problem';
import { OrderMoves } from '@/lib/schedule/order-moves';
import { PlanDecoder } from '@/lib/schedule/plan-decoder';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import { planOfStarts, projectSearchFor } from '@/lib/schedule/project-plan';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';
import { ruleOrders } from '@/lib/schedule/task-order';
import { compareValues } from '@/lib/schedule/value-order';
import { WindowedProjectSearch } from '@/lib/schedule/windowed-project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** The start of a task that the plan which holds does not place. */
const NOWHERE = -NEVER;
/** Where in a value the weighted minutes late stand. */
const LATE_LEVEL = 1;
/** A worse plan is gone on from when it is late by no more than this over the best, in weighted minutes. Chosen: half a day. */
const MOST_WORSE = 720;
/**
 * What moving one task against the plan that holds may cost at the most, in weighted minutes late: four hours
 * are not worth another evening for somebody. Chosen.
 */
const MOVE_PRICE = 240;
/** How often a plan is mended round what was pushed from its place. Chosen. */
const MOST_ROUNDS = 12;
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
  #bestFloors: Int32Array;
  #bestCost: number[] = [];
  #plansMade = 0;
  /** The plan that holds, mended round what is affected: the best until the search finds one worth more moves. */
  #mended: { readonly plan: ShopPlan; readonly cost: readonly number[] } | null = null;
  readonly #moves: OrderMoves;

  constructor(problem: PlanningProblem, held: ShopPlan | null, seed: number) {
    this.#compiled = compileProblem(problem);
    this.#decoder = new PlanDecoder(this.#compiled);
    this.#random = seededRandom(seed);
    this.#moves = new OrderMoves(this.#compiled.batchOf, this.#random);
    this.#heldStart = held === null ? null : startsOf(problem, held);
    this.#bestDelays = this.#decoder.delays.slice();
    this.#bestFloors = this.#decoder.floors.slice();
    this.#project = held === null ? projectSearchFor(this.#compiled, seed) : null;
    if (this.#project !== null) {
      this.#bestOrder = [...(ruleOrders(this.#compiled)[0] ?? [])];
      return;
    }
    const orders = [...ruleOrders(this.#compiled)];
    for (const order of orders) this.#consider([...order]);
    if (held !== null) this.#considerHeld(problem, held);
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
    if (this.#mended !== null && compareCosts(this.#mended.cost, this.#bestCost) <= 0) return this.#mended.plan;
    this.#decoder.delays.set(this.#bestDelays);
    this.#decoder.floors.set(this.#bestFloors);
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
    this.#decoder.floors.set(this.#bestFloors);
    for (let i = 0; i < count; i++) {
      const order = this.#moves.moved(this.#order);
      const toggled = this.#random() < 0.1 ? (open[Math.floor(this.#random() * open.length)] ?? -1) : -1;
      if (toggled >= 0) this.#toggle(toggled);
      const floors = this.#heldStart !== null && this.#random() < 0.3 ? this.#decoder.floors.slice() : null;
      if (floors !== null) this.#loosen();
      const cost = this.#costOf(order);
      if (compareCosts(cost, this.#bestCost) < 0) {
        this.#keep(order, cost);
        isBetter = true;
      }
      if (this.#isNearEnough(cost)) {
        this.#order = order;
        this.#cost = cost;
      } else {
        if (toggled >= 0) this.#toggle(toggled);
        if (floors !== null) this.#decoder.floors.set(floors);
      }
    }
    return isBetter;
  }

  /** What can stay stays where it is, and the rest finds its place round it. */
  #considerHeld(problem: PlanningProblem, held: ShopPlan): void {
    const affected = affectedTasks(this.#compiled, held);
    const order = heldOrder(problem, this.#compiled, held);
    const people = new Map(held.placed.map(({ taskId, personId }) => [taskId, personId]));
    for (const task of order) {
      const personId = people.get(problem.tasks[task]?.id ?? '');
      const mayStill = this.#compiled.people[task] ?? [];
      this.#decoder.heldBy[task] = mayStill.find((person) => problem.people[person]?.id === personId) ?? -1;
    }
    const places = new Map(held.placed.map((place) => [place.taskId, place]));
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const kept = new Map<number, PlannedTask>();
      for (const task of order) {
        const place = places.get(problem.tasks[task]?.id ?? '');
        if (place !== undefined && !affected.has(task)) kept.set(task, place);
      }
      this.#decoder.kept = kept;
      const cost = this.#costOf(order.filter((task) => affected.has(task)));
      const plan = this.#decoder.plan();
      this.#decoder.kept = new Map();
      const wrong = checkPlan(problem, plan).filter((violation) => !isGivenViolation(problem, violation));
      const lost = plan.unplaced.filter(({ taskId }) => places.has(taskId));
      if (wrong.length === 0 && lost.length === 0) {
        this.#mended = { plan, cost };
        return;
      }
      const index = (id: string | undefined) => problem.tasks.findIndex((task) => task.id === id);
      // A set-up that was shared with what moved: the task may find a place before what follows it.
      for (const { kind, taskIds } of wrong) {
        if (kind === 'set-up-missing') affected.add(index(taskIds[0]));
        else addWithFollowers(this.#compiled, affected, index(taskIds.at(-1)));
      }
      for (const { taskId } of lost) {
        affected.delete(index(taskId));
        addWithFollowers(this.#compiled, affected, index(taskId));
      }
    }
  }

  #setFloor(task: number, isHeld: boolean): void {
    const start = this.#heldStart?.[task] ?? NOWHERE;
    this.#decoder.floors[task] = isHeld && start !== NOWHERE ? start : -NEVER;
  }

  /** A batch is let go from where it was, or held there again. */
  #loosen(): void {
    const { batchOf, open } = this.#compiled;
    const batch = batchOf[open[Math.floor(this.#random() * open.length)] ?? 0];
    const isHeld = this.#random() < 0.5;
    for (const task of open) if (batchOf[task] === batch) this.#setFloor(task, isHeld);
  }

  #consider(order: number[]): void {
    const cost = this.#costOf(order);
    if (this.#bestCost.length === 0 || compareCosts(cost, this.#bestCost) < 0) this.#keep(order, cost);
  }

  #keep(order: number[], cost: number[]): void {
    this.#bestOrder = [...order];
    this.#bestCost = cost;
    this.#bestDelays = this.#decoder.delays.slice();
    this.#bestFloors = this.#decoder.floors.slice();
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
      const was = held[task] ?? NOWHERE;
      if (was !== NOWHERE && Math.abs((this.#decoder.start[task] ?? 0) - was) >= SAME_MINUTES) moved++;
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
  return Int32Array.from(problem.tasks, (task) => starts.get(task.id) ?? NOWHERE);
}

/** The open tasks as the plan that holds has them; what is new comes last. */
function heldOrder(problem: PlanningProblem, compiled: CompiledProblem, held: ShopPlan): readonly number[] {
  const starts = startsOf(problem, held);
  const at = (task: number) => (starts[task] === NOWHERE ? NEVER : (starts[task] ?? NEVER));
  return [...compiled.open].sort((a, b) => at(a) - at(b) || a - b);
}
