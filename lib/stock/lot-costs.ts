import { lotUseCost } from '@/lib/bom/money';

/** A line of a lot's book that is no receipt, in the order of the book. */
export interface UseLine {
  /** Null: used for nothing that is accounted for, such as what a count did not find. */
  readonly batchId: string | null;
  /** Thousandths taken; below 0 what was given back or found. */
  readonly takenMilli: number;
}

/**
 * What each batch's uses of a lot cost, in minor units. Every line costs the price of all that is gone after it less
 * that of all that was gone before, each rounded, so the lines of a lot that is used up add up to its price exactly, in
 * whatever pieces it was taken. Beyond what was received the price goes on.
 *
 * `receivedMilli`: all that ever came of the lot, above 0. RangeError otherwise.
 */
export function lotCosts(
  priceMinor: number,
  receivedMilli: number,
  lines: readonly UseLine[],
): ReadonlyMap<string | null, number> {
  const costs = new Map<string | null, number>();
  let gone = 0;
  for (const { batchId, takenMilli } of lines) {
    const after = gone + takenMilli;
    // What a count finds beyond all that came is worth nothing, and taking it costs nothing.
    const [from, to] = [Math.max(0, gone), Math.max(0, after)];
    const cost =
      to >= from
        ? lotUseCost(priceMinor, receivedMilli, from, to - from)
        : -lotUseCost(priceMinor, receivedMilli, to, from - to);
    costs.set(batchId, (costs.get(batchId) ?? 0) + cost);
    gone = after;
  }
  return costs;
}
