/**
 * A cutting problem in whole numbers: the kerf is already part of every size and capacity, lengths are in any one unit.
 */
export interface CutProblem {
  /** Falling, all different, each above 0. */
  readonly sizes: readonly number[];
  /** Pieces wanted of each size, above 0. */
  readonly demand: readonly number[];
  readonly stocks: readonly StockSize[];
}

/** Lengths of one kind to cut from. */
export interface StockSize {
  readonly capacity: number;
  /** What taking one costs; the sum is what is made least. 0 and more, whole. */
  readonly cost: number;
  /** How many there are; Infinity where it does not run out. */
  readonly count: number;
}

/** What one length is cut into. */
export interface Pattern {
  readonly stock: number;
  /** Pieces of each size. */
  readonly counts: readonly number[];
}

/** What is still to be cut, and from what. */
export interface Remainder {
  readonly demand: readonly number[];
  readonly counts: readonly number[];
}

/** Remainder after one length was cut so; a pattern may hold more of a size than is still wanted. */
export function afterPattern(left: Remainder, { stock, counts }: Pattern): Remainder {
  return {
    demand: left.demand.map((wanted, size) => Math.max(0, wanted - (counts[size] ?? 0))),
    counts: left.counts.map((count, index) => (index === stock ? count - 1 : count)),
  };
}

/** Whether nothing is left to cut. */
export function isDone(left: Remainder): boolean {
  return left.demand.every((wanted) => wanted === 0);
}

export function greatestCommonDivisor(numbers: readonly number[]): number {
  let divisor = 0;
  for (const number of numbers) {
    let [a, b] = [divisor, number];
    while (b > 0) [a, b] = [b, a % b];
    divisor = a;
  }
  return Math.max(1, divisor);
}
