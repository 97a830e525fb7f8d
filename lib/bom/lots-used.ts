/** Less than this is rounding, not material. */
const NOTHING = 1e-9;

/** What a lot still holds, and what a unit of it cost. */
export interface LotLayer {
  readonly lotId: string;
  readonly quantity: number;
  readonly unitCost: number;
}

export interface LotsUsed {
  readonly uses: readonly { readonly lotId: string; readonly quantity: number }[];
  readonly cost: number;
  /** What no lot was left for. */
  readonly missing: number;
}

/**
 * Takes a quantity from lots in the order they are given (the oldest first for first in, first out; the soonest to expire
 * for a glue). Cost in the unit of the prices, not rounded. Throws RangeError for a quantity below 0.
 */
export function takeFromLots(lots: readonly LotLayer[], quantity: number): LotsUsed {
  if (!(quantity >= 0)) throw new RangeError(`takeFromLots needs a quantity of 0 or more, got ${quantity}`);
  let missing = quantity;
  let cost = 0;
  const uses: { lotId: string; quantity: number }[] = [];
  for (const lot of lots) {
    const own = Math.min(missing, Math.max(0, lot.quantity));
    if (own <= NOTHING) continue;
    uses.push({ lotId: lot.lotId, quantity: own });
    cost += own * lot.unitCost;
    missing -= own;
  }
  return { uses, cost, missing: missing <= NOTHING ? 0 : missing };
}
