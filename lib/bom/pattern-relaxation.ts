import type { CutProblem, Pattern, Remainder } from '@/lib/bom/cut-problem';
import type { PatternKnapsack } from '@/lib/bom/pattern-knapsack';
import { SimplexBasis } from '@/lib/bom/simplex-basis';

/** The best plan in parts of patterns: no whole plan can cost less than `bound`. */
export interface Relaxation {
  readonly bound: number;
  /** What one more piece of a size would cost. */
  readonly sizePrices: readonly number[];
  /** What one more length of a stock would save, 0 or less. */
  readonly stockPrices: readonly number[];
  /** Patterns with how often each is used, the most used first. */
  readonly used: readonly { readonly pattern: Pattern; readonly times: number }[];
}

/** Relative to the dearest stock. */
const PRICE_EPSILON = 1e-9;
/** Cost of leaving a piece out, in dearest stocks. */
const LEFT_OUT = 1e5;

/**
 * The linear relaxation over all patterns, by column generation: patterns that would pay are found by the knapsack and
 * taken into `pool`, which later calls start from. Null when it did not settle within its steps (no bound is known then).
 * Source: the classical pattern formulation of the cutting-stock problem; demands at least met, patterns never with more
 * of a size than is wanted.
 */
export function relax(
  { sizes, stocks }: CutProblem,
  left: Remainder,
  pool: Pattern[],
  knapsack: PatternKnapsack,
): Relaxation | null {
  const rows = sizes.map((_, size) => size).filter((size) => (left.demand[size] ?? 0) > 0);
  const pieces = left.demand.reduce((sum, wanted) => sum + wanted, 0);
  const limited = stocks.map((_, stock) => stock).filter((stock) => (left.counts[stock] ?? 0) < pieces);
  const dearest = Math.max(1, ...stocks.map((stock) => stock.cost));
  const epsilon = dearest * PRICE_EPSILON;
  const basis = new SimplexBasis<Pattern>(
    rows.map((size) => left.demand[size] ?? 0),
    limited.map((stock) => left.counts[stock] ?? 0),
    dearest * LEFT_OUT,
  );
  const usable = pool.filter(
    ({ stock, counts }) =>
      (left.counts[stock] ?? 0) > 0 && counts.every((count, size) => count <= (left.demand[size] ?? 0)),
  );
  const cost = (stock: number) => stocks[stock]?.cost ?? 0;
  const columnOf = ({ stock, counts }: Pattern) => {
    const column = new Float64Array(rows.length + limited.length);
    for (const [row, size] of rows.entries()) column[row] = counts[size] ?? 0;
    const limit = limited.indexOf(stock);
    if (limit >= 0) column[rows.length + limit] = 1;
    return column;
  };
  for (let step = 0; step < 60 * (rows.length + limited.length) + 500; step++) {
    const prices = basis.prices();
    if (basis.enterOwn(prices, epsilon)) continue;
    const sizePrices = sizes.map(() => 0);
    for (const [row, size] of rows.entries()) sizePrices[size] = Math.max(0, prices[row] ?? 0);
    const stockPrices = stocks.map(() => 0);
    for (const [row, stock] of limited.entries()) stockPrices[stock] = Math.min(0, prices[rows.length + row] ?? 0);
    const gain = ({ stock, counts }: Pattern) =>
      counts.reduce((sum, count, size) => sum + count * (sizePrices[size] ?? 0), 0) +
      (stockPrices[stock] ?? 0) -
      cost(stock);
    let entering = mostGaining(usable, gain, epsilon);
    if (entering === null) {
      const open = stocks.map((_, stock) => stock).filter((stock) => (left.counts[stock] ?? 0) > 0);
      const capacities = open.map((stock) => stocks[stock]?.capacity ?? 0);
      const fillings = knapsack.fill(sizePrices, left.demand, capacities);
      const found = fillings.map(({ counts }, index) => ({ stock: open[index] ?? 0, counts }));
      entering = mostGaining(found, gain, epsilon);
      if (entering === null) {
        const used = basis
          .solution()
          .filter(({ times }) => times > 1e-6)
          .map(({ entry, times }) => ({ pattern: entry, times }))
          .toSorted((a, b) => b.times - a.times);
        return { bound: basis.bound(prices), sizePrices, stockPrices, used };
      }
      pool.push(entering);
      usable.push(entering);
    }
    basis.enter(columnOf(entering), cost(entering.stock), entering);
  }
  return null;
}

function mostGaining(
  patterns: readonly Pattern[],
  gain: (pattern: Pattern) => number,
  epsilon: number,
): Pattern | null {
  let most = epsilon;
  let best: Pattern | null = null;
  for (const pattern of patterns) {
    const own = gain(pattern);
    if (own > most) {
      most = own;
      best = pattern;
    }
  }
  return best;
}
