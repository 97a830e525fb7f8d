import { exactDifference } from '@/lib/statistics/exact-sum';

/** Amounts as they are written down: whole minor units (cents), whose sum is the total. */
export interface WholeAmounts {
  readonly lines: readonly number[];
  readonly total: number;
}

/** Above this an amount is no longer exact to a minor unit. */
const MOST_MINOR = Number.MAX_SAFE_INTEGER / 4;

/**
 * Rounds amounts in minor units so that the lines always add up to the total: the total is the exact sum rounded half up,
 * each line is rounded down, and what is missing goes, one minor unit each, to the lines that lost most (the first of
 * equals).
 *
 * Throws RangeError for an amount that is not finite or beyond exact whole numbers.
 * Source: method of largest remainders.
 */
export function wholeAmounts(amounts: readonly number[]): WholeAmounts {
  const sum = exactSum(amounts);
  for (const amount of [...amounts, sum]) {
    if (!(Math.abs(amount) <= MOST_MINOR))
      throw new RangeError(`wholeAmounts needs amounts it can hold, got ${amount}`);
  }
  const lines = amounts.map((amount) => Math.floor(amount));
  const total = Math.floor(sum + 0.5) + 0;
  const missing = total - lines.reduce((all, line) => all + line, 0);
  const byLoss = amounts
    .map((amount, index) => ({ index, loss: amount - Math.floor(amount) }))
    .toSorted((a, b) => b.loss - a.loss || a.index - b.index);
  for (const { index } of byLoss.slice(0, missing)) lines[index] = (lines[index] ?? 0) + 1;
  return { lines, total };
}

/**
 * Shares a whole amount out by weights, so that the shares add up to it. All weights 0: to equal parts.
 * Throws RangeError for an amount that is not whole, no weights, or a weight below 0.
 */
export function sharedOut(amountMinor: number, weights: readonly number[]): readonly number[] {
  const sum = exactSum(weights);
  if (!Number.isSafeInteger(amountMinor) || weights.length === 0 || !weights.every((weight) => weight >= 0)) {
    throw new RangeError(`sharedOut needs a whole amount and weights, got ${amountMinor}, ${weights.join(', ')}`);
  }
  const parts = weights.map((weight) => (sum > 0 ? amountMinor * (weight / sum) : amountMinor / weights.length));
  return wholeAmounts(parts).lines;
}

/**
 * What a use of a lot costs, so that all uses of a lot add up to its price however they were cut: the price of all that
 * is used up afterwards, less that of all that was before, each rounded half up.
 *
 * `usedBefore` and `used` in the lot's unit; use beyond the lot goes on at the same price.
 * Throws RangeError for a price that is not whole, a lot of nothing, or a quantity below 0.
 */
export function lotUseCost(lotPriceMinor: number, lotQuantity: number, usedBefore: number, used: number): number {
  if (!(Number.isSafeInteger(lotPriceMinor) && lotQuantity > 0 && usedBefore >= 0 && used >= 0)) {
    throw new RangeError(
      `lotUseCost needs a lot and a use, got ${lotPriceMinor}, ${lotQuantity}, ${usedBefore}, ${used}`,
    );
  }
  const costOf = (quantity: number) => Math.floor(lotPriceMinor * (quantity / lotQuantity) + 0.5);
  return costOf(usedBefore + used) - costOf(usedBefore);
}

/** The sum rounded once, as the exact sum of what was written. */
function exactSum(amounts: readonly number[]): number {
  return exactDifference(
    0,
    amounts,
    amounts.map(() => -1),
  );
}
