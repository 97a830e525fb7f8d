import type { CutProblem } from '@/lib/bom/cut-problem';

/** The worthiest filling of one length. */
export interface Filling {
  readonly value: number;
  readonly counts: readonly number[];
}

/**
 * Finds what to cut from a length so that the pieces are worth the most: a bounded knapsack, solved exactly by filling
 * a table over capacity once for all lengths. The table is kept between calls.
 */
export class PatternKnapsack {
  readonly #sizes: readonly number[];
  readonly #capacity: number;
  readonly #best: Float64Array;
  #taken = new Uint8Array(0);

  constructor(problem: CutProblem) {
    this.#sizes = problem.sizes;
    this.#capacity = Math.max(0, ...problem.stocks.map((stock) => stock.capacity));
    this.#best = new Float64Array(this.#capacity + 1);
  }

  /** For each capacity, the filling of most value with at most `limits` pieces of a size; sizes worth nothing stay out. */
  fill(values: ArrayLike<number>, limits: ArrayLike<number>, capacities: readonly number[]): Filling[] {
    const chunks = this.#chunks(values, limits);
    const width = this.#capacity + 1;
    if (this.#taken.length < chunks.length * width) this.#taken = new Uint8Array(chunks.length * width);
    this.#best.fill(0);
    for (const [row, chunk] of chunks.entries()) this.#offer(row * width, chunk);
    return capacities.map((capacity) => this.#read(chunks, capacity));
  }

  /** Each size in lots of 1, 2, 4, ... so that every number up to its limit can be put together. */
  #chunks(values: ArrayLike<number>, limits: ArrayLike<number>): Chunk[] {
    const chunks: Chunk[] = [];
    for (const [size, length] of this.#sizes.entries()) {
      const value = values[size] ?? 0;
      let left = Math.min(limits[size] ?? 0, Math.floor(this.#capacity / length));
      for (let pieces = 1; left > 0 && value > 0; pieces *= 2) {
        const count = Math.min(pieces, left);
        chunks.push({ size, count, weight: count * length, value: count * value });
        left -= count;
      }
    }
    return chunks;
  }

  #offer(offset: number, { weight, value }: Chunk): void {
    const best = this.#best;
    const taken = this.#taken;
    taken.fill(0, offset, offset + Math.min(weight, this.#capacity + 1));
    for (let capacity = this.#capacity; capacity >= weight; capacity--) {
      const withIt = (best[capacity - weight] ?? 0) + value;
      const isBetter = withIt > (best[capacity] ?? 0);
      if (isBetter) best[capacity] = withIt;
      taken[offset + capacity] = isBetter ? 1 : 0;
    }
  }

  #read(chunks: readonly Chunk[], capacity: number): Filling {
    const counts = this.#sizes.map(() => 0);
    let left = capacity;
    for (let row = chunks.length - 1; row >= 0; row--) {
      const chunk = chunks[row];
      if (chunk === undefined || this.#taken[row * (this.#capacity + 1) + left] !== 1) continue;
      counts[chunk.size] = (counts[chunk.size] ?? 0) + chunk.count;
      left -= chunk.weight;
    }
    return { value: this.#best[capacity] ?? 0, counts };
  }
}

interface Chunk {
  readonly size: number;
  readonly count: number;
  readonly weight: number;
  readonly value: number;
}
