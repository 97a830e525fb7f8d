import { afterPattern, type CutProblem, isDone, type Pattern, type Remainder } from '@/lib/bom/cut-problem';
import type { PatternKnapsack } from '@/lib/bom/pattern-knapsack';

/** How one length is filled: largest pieces first, or the largest and then with the least left over. */
type Filler = (capacity: number, left: Remainder) => number[];

/**
 * A plan made at once, without proof: one length after the other, always the one that is filled best for what it costs.
 * Null when the stock runs out. `isFine`: each length is filled as full as can be, which takes a knapsack a length.
 */
export function quickCuts(
  problem: CutProblem,
  start: Remainder,
  knapsack: PatternKnapsack,
  isFine: boolean,
): Pattern[] | null {
  const filler: Filler = isFine
    ? (capacity, left) => fullest(problem, capacity, left, knapsack)
    : (capacity, left) => largestFirst(problem, capacity, left);
  const plan: Pattern[] = [];
  for (let left = start; !isDone(left); ) {
    const pattern = bestFilled(problem, left, filler);
    if (pattern === null) return null;
    plan.push(pattern);
    left = afterPattern(left, pattern);
  }
  return plan;
}

function bestFilled({ sizes, stocks }: CutProblem, left: Remainder, filler: Filler): Pattern | null {
  const total = left.demand.reduce((sum, wanted, size) => sum + wanted * (sizes[size] ?? 0), 0);
  const largest = sizes[left.demand.findIndex((wanted) => wanted > 0)] ?? 0;
  let best: Pattern | null = null;
  let least = Number.POSITIVE_INFINITY;
  let leastCapacity = Number.POSITIVE_INFINITY;
  for (const [stock, { capacity, cost }] of stocks.entries()) {
    if ((left.counts[stock] ?? 0) <= 0 || capacity < largest) continue;
    const counts = filler(capacity, left);
    const filled = counts.reduce((sum, count, size) => sum + count * (sizes[size] ?? 0), 0);
    // The last length is worth its whole price, however little is left to cut.
    const price = filled >= total ? cost / Math.max(filled, 1) : (cost + (capacity - filled) * 1e-9) / filled;
    if (price < least || (price === least && capacity < leastCapacity)) {
      least = price;
      leastCapacity = capacity;
      best = { stock, counts };
    }
  }
  return best;
}

function largestFirst({ sizes }: CutProblem, capacity: number, left: Remainder): number[] {
  let free = capacity;
  return sizes.map((size, index) => {
    const count = Math.min(left.demand[index] ?? 0, Math.floor(free / size));
    free -= count * size;
    return count;
  });
}

function fullest({ sizes }: CutProblem, capacity: number, left: Remainder, knapsack: PatternKnapsack): number[] {
  const first = left.demand.findIndex((wanted) => wanted > 0);
  const limits = left.demand.map((wanted, size) => (size === first ? wanted - 1 : wanted));
  const [filling] = knapsack.fill(sizes, limits, [capacity - (sizes[first] ?? 0)]);
  return sizes.map((_, size) => (filling?.counts[size] ?? 0) + (size === first ? 1 : 0));
}
