/**
 * A basis of the revised simplex method, with its inverse, for: least cost of columns, `wanted` rows at least met,
 * `limited` rows at most. It starts from leaving everything out, at `leftOutCost` a unit.
 */
export class SimplexBasis<Entry> {
  readonly #wantedRows: number;
  readonly #size: number;
  readonly #right: Float64Array;
  /** Right sides with a small graded addition, so that no two rows tie and the method cannot go in circles. */
  readonly #graded: Float64Array;
  readonly #inverse: Float64Array;
  readonly #costs: Float64Array;
  readonly #entries: (Entry | null)[];

  constructor(wanted: readonly number[], limited: readonly number[], leftOutCost: number) {
    this.#wantedRows = wanted.length;
    this.#size = wanted.length + limited.length;
    this.#right = Float64Array.from([...wanted, ...limited]);
    this.#graded = this.#right.map((value, row) => value + (1e-7 * (row + 1)) / this.#size);
    this.#inverse = new Float64Array(this.#size * this.#size);
    this.#costs = new Float64Array(this.#size);
    this.#entries = Array.from({ length: this.#size }, () => null);
    for (let row = 0; row < this.#size; row++) {
      this.#inverse[row * this.#size + row] = 1;
      if (row < wanted.length) this.#costs[row] = leftOutCost;
    }
  }

  /** The price of each row. */
  prices(): Float64Array {
    const prices = new Float64Array(this.#size);
    for (let row = 0; row < this.#size; row++) {
      const cost = this.#costs[row] ?? 0;
      if (cost === 0) continue;
      const offset = row * this.#size;
      for (let at = 0; at < this.#size; at++) prices[at] = (prices[at] ?? 0) + cost * (this.#inverse[offset + at] ?? 0);
    }
    return prices;
  }

  /** Lets in the slack of a row whose price has the wrong sign; false when there is none. */
  enterOwn(prices: Float64Array, epsilon: number): boolean {
    let worst = epsilon;
    let entering = -1;
    for (let row = 0; row < this.#size; row++) {
      const wrong = row < this.#wantedRows ? -(prices[row] ?? 0) : (prices[row] ?? 0);
      if (wrong > worst) {
        worst = wrong;
        entering = row;
      }
    }
    if (entering < 0) return false;
    const column = new Float64Array(this.#size);
    column[entering] = entering < this.#wantedRows ? -1 : 1;
    this.enter(column, 0, null);
    return true;
  }

  /** Lets a column in; which one goes out follows from staying feasible. */
  enter(column: Float64Array, cost: number, entry: Entry | null): void {
    const size = this.#size;
    const direction = this.#times(column);
    const values = this.#times(this.#graded);
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < size; row++) {
      const step = direction[row] ?? 0;
      if (step <= 1e-9) continue;
      const ratio = Math.max(0, values[row] ?? 0) / step;
      if (ratio < least) {
        least = ratio;
        leaving = row;
      }
    }
    if (leaving < 0) throw new RangeError('SimplexBasis.enter needs a column that is bounded by a row');
    const pivot = direction[leaving] ?? 1;
    const offset = leaving * size;
    for (let at = 0; at < size; at++) this.#inverse[offset + at] = (this.#inverse[offset + at] ?? 0) / pivot;
    for (let row = 0; row < size; row++) {
      const factor = direction[row] ?? 0;
      if (row === leaving || factor === 0) continue;
      for (let at = 0; at < size; at++) {
        const index = row * size + at;
        this.#inverse[index] = (this.#inverse[index] ?? 0) - factor * (this.#inverse[offset + at] ?? 0);
      }
    }
    this.#costs[leaving] = cost;
    this.#entries[leaving] = entry;
  }

  /** What these prices prove: no solution costs less, once no column gains by them. */
  bound(prices: Float64Array): number {
    return prices.reduce((sum, price, row) => sum + price * (this.#right[row] ?? 0), 0);
  }

  /** The entries in use, and how much of each. */
  solution(): { readonly entry: Entry; readonly times: number }[] {
    const values = this.#times(this.#right);
    return this.#entries.flatMap((entry, row) => (entry === null ? [] : [{ entry, times: values[row] ?? 0 }]));
  }

  #times(column: Float64Array): Float64Array {
    const result = new Float64Array(this.#size);
    for (let row = 0; row < this.#size; row++) {
      const offset = row * this.#size;
      let sum = 0;
      for (let at = 0; at < this.#size; at++) sum += (this.#inverse[offset + at] ?? 0) * (column[at] ?? 0);
      result[row] = sum;
    }
    return result;
  }
}
