import { afterPattern, type CutProblem, isDone, type Pattern, type Remainder } from '@/lib/bom/cut-problem';
import { nextPatterns } from '@/lib/bom/next-patterns';
import { PatternKnapsack } from '@/lib/bom/pattern-knapsack';
import { type Relaxation, relax } from '@/lib/bom/pattern-relaxation';
import { quickCuts } from '@/lib/bom/quick-cuts';
import { ReachableCosts } from '@/lib/bom/reachable-costs';

export interface CutSearch {
  /** The cheapest plan found; null: the stock does not suffice, or no plan was found. */
  readonly plan: readonly Pattern[] | null;
  readonly cost: number;
  /** No plan costs less; as `cost` where the plan is proven best. Infinity: proven that the stock does not suffice. */
  readonly bound: number;
  readonly isProven: boolean;
}

/** How much is tried before the search gives up on a proof. Chosen: a second or two. */
const MOST_NODES = 4000;
const MOST_PATTERNS = 20_000;

/**
 * The cheapest way to cut all that is wanted, and a proof that it is. Exact: a bound from the relaxation over all
 * patterns, good plans by rounding it step by step, and where the two do not meet a search through all maximal patterns
 * that hold the largest piece still wanted. Gives up after a fixed number of steps, never after a time, so that the same
 * problem always has the same answer.
 */
export function searchCuts(problem: CutProblem): CutSearch {
  return new Search(problem).run();
}

class Search {
  readonly #problem: CutProblem;
  readonly #knapsack: PatternKnapsack;
  readonly #pool: Pattern[] = [];
  #best: readonly Pattern[] | null = null;
  #bestCost = Number.POSITIVE_INFINITY;
  #bound = 0;
  /** Remainders already searched: the same lengths cut in another order leave the same. */
  readonly #seen = new Set<string>();
  #nodes = 0;
  #isComplete = true;
  #reachable: ReachableCosts;

  constructor(problem: CutProblem) {
    this.#problem = problem;
    this.#knapsack = new PatternKnapsack(problem);
    this.#reachable = new ReachableCosts([], 0);
  }

  run(): CutSearch {
    const { demand, stocks } = this.#problem;
    const start: Remainder = { demand, counts: stocks.map(({ count }) => count) };
    for (const isFine of [false, true]) this.#finish(start, [], isFine);
    // Without a plan so far: anything up to one length a piece.
    const pieces = demand.reduce((sum, wanted) => sum + wanted, 0);
    const dearest = Math.max(0, ...stocks.map(({ cost }) => cost));
    this.#reachable = new ReachableCosts(stocks, Math.min(this.#bestCost, pieces * dearest));
    this.#bound = this.#reachable.atLeast(this.#byLength());
    if (this.#bestCost > this.#bound) {
      const relaxation = relax(this.#problem, start, this.#pool, this.#knapsack);
      if (relaxation !== null) this.#bound = Math.max(this.#bound, this.#reachable.atLeast(relaxation.bound));
      if (this.#bestCost > this.#bound && relaxation !== null) this.#dive(start, relaxation);
      if (this.#bestCost > this.#bound) {
        this.#explore(start, 0, []);
        if (this.#isComplete) this.#bound = this.#bestCost;
      }
    }
    const isProven = this.#bestCost <= this.#bound;
    return { plan: this.#best, cost: this.#bestCost, bound: this.#bound, isProven };
  }

  /** The least cost by length alone: the cheapest length for length, all of it used. */
  #byLength(): number {
    const { sizes, demand, stocks } = this.#problem;
    const total = demand.reduce((sum, wanted, size) => sum + wanted * (sizes[size] ?? 0), 0);
    const rates = stocks.filter(({ count }) => count > 0).map(({ cost, capacity }) => cost / Math.max(capacity, 1));
    return total * Math.min(...rates, Number.MAX_SAFE_INTEGER);
  }

  /** Finishes a plan at once and keeps it where it is the best so far. */
  #finish(left: Remainder, done: readonly Pattern[], isFine: boolean): void {
    const rest = quickCuts(this.#problem, left, this.#knapsack, isFine);
    if (rest === null) return;
    const plan = [...done, ...rest];
    const cost = this.#costOf(plan);
    if (cost >= this.#bestCost) return;
    this.#best = plan;
    this.#bestCost = cost;
  }

  /** Rounds the relaxation down, fixes what is whole, else the most used pattern, and relaxes what is left. */
  #dive(start: Remainder, first: Relaxation): void {
    let left = start;
    let relaxation: Relaxation | null = first;
    const done: Pattern[] = [];
    while (relaxation !== null && !isDone(left)) {
      const whole = relaxation.used.flatMap(({ pattern, times }) =>
        Array.from({ length: Math.floor(times + 1e-6) }, () => pattern),
      );
      const fixed = whole.length > 0 ? whole : relaxation.used.slice(0, 1).map(({ pattern }) => pattern);
      if (fixed.length === 0) return;
      for (const pattern of fixed) {
        if ((left.counts[pattern.stock] ?? 0) <= 0) continue;
        done.push(pattern);
        left = afterPattern(left, pattern);
      }
      for (const isFine of [false, true]) this.#finish(left, done, isFine);
      if (this.#bestCost <= this.#bound) return;
      relaxation = relax(this.#problem, left, this.#pool, this.#knapsack);
      if (relaxation !== null && this.#reachable.atLeast(this.#costOf(done) + relaxation.bound) >= this.#bestCost)
        return;
    }
  }

  #explore(left: Remainder, spent: number, done: readonly Pattern[]): void {
    const key = `${left.demand.join()}/${left.counts.join()}`;
    if (this.#seen.has(key)) return;
    this.#seen.add(key);
    if (++this.#nodes > MOST_NODES) {
      this.#isComplete = false;
      return;
    }
    const relaxation = relax(this.#problem, left, this.#pool, this.#knapsack);
    if (relaxation === null) {
      this.#isComplete = false;
      return;
    }
    if (this.#reachable.atLeast(spent + relaxation.bound) >= this.#bestCost) return;
    this.#finish(left, done, false);
    if (this.#bestCost <= this.#bound) return;
    const { patterns, isAll } = nextPatterns(
      this.#problem,
      left,
      relaxation,
      this.#mostLoss(spent + relaxation.bound),
      MOST_PATTERNS,
    );
    if (!isAll) this.#isComplete = false;
    for (const { pattern, loss } of patterns) {
      if (loss > this.#mostLoss(spent + relaxation.bound)) continue;
      const cost = this.#problem.stocks[pattern.stock]?.cost ?? 0;
      const next = [...done, pattern];
      const rest = afterPattern(left, pattern);
      if (isDone(rest)) this.#finish(rest, next, false);
      else this.#explore(rest, spent + cost, next);
      if (this.#bestCost <= this.#bound || this.#nodes > MOST_NODES) return;
    }
  }

  /** How much a pattern may lose by the relaxation's prices and still lead to a better plan. */
  #mostLoss(bound: number): number {
    if (this.#best === null) return Number.POSITIVE_INFINITY;
    return this.#reachable.below(this.#bestCost) - bound + 1e-6 * Math.max(1, Math.abs(bound) * 1e-3);
  }

  #costOf(plan: readonly Pattern[]): number {
    return plan.reduce((sum, { stock }) => sum + (this.#problem.stocks[stock]?.cost ?? 0), 0);
  }
}
