import { greatestCommonDivisor, type StockSize } from '@/lib/bom/cut-problem';

/** Above this many cells only multiples of the common divisor are looked at. */
const MOST_CELLS = 4_000_000;

/** The totals that lengths of stock can add up to: a plan costs one of them and nothing between. */
export class ReachableCosts {
  readonly #divisor: number;
  /** Whether a multiple of the divisor can be reached; null: all of them, as far as is known. */
  readonly #isReached: Uint8Array | null;

  /** `most`: the highest total of interest. */
  constructor(stocks: readonly StockSize[], most: number) {
    const costs = stocks.filter(({ cost, count }) => cost > 0 && count > 0);
    this.#divisor = greatestCommonDivisor(costs.map(({ cost }) => cost));
    const cells = Math.floor(most / this.#divisor) + 1;
    if (cells > MOST_CELLS) {
      this.#isReached = null;
      return;
    }
    const isReached = new Uint8Array(cells);
    isReached[0] = 1;
    for (const { cost, count } of costs) take(isReached, cost / this.#divisor, count);
    this.#isReached = isReached;
  }

  /** The least total at or above a bound, which may be off by rounding; Infinity where none is at most `most`. */
  atLeast(bound: number): number {
    const slack = 1e-6 * Math.max(1, Math.abs(bound) * 1e-3);
    let cell = Math.max(0, Math.ceil((bound - slack) / this.#divisor));
    const isReached = this.#isReached;
    if (isReached === null) return cell * this.#divisor;
    while (cell < isReached.length && isReached[cell] !== 1) cell++;
    return cell < isReached.length ? cell * this.#divisor : Number.POSITIVE_INFINITY;
  }

  /** The greatest total below one that is known. */
  below(total: number): number {
    let cell = Math.ceil(total / this.#divisor) - 1;
    const isReached = this.#isReached;
    if (isReached !== null) while (cell >= 0 && isReached[cell] !== 1) cell--;
    return cell * this.#divisor;
  }
}

/** Adds up to `count` times `cost` to all that is reached: how many are used up is counted cell by cell. */
function take(isReached: Uint8Array, cost: number, count: number): void {
  const spent = new Int32Array(isReached.length);
  for (let cell = cost; cell < isReached.length; cell++) {
    const before = cell - cost;
    if (isReached[cell] !== 1 && isReached[before] === 1 && (spent[before] ?? 0) < count) {
      isReached[cell] = 1;
      spent[cell] = (spent[before] ?? 0) + 1;
    }
  }
}
