/**
 * Packs to buy so that what is to hand suffices. Throws RangeError for a pack of nothing or a need below 0.
 */
export function packsToBuy(need: number, onHand: number, packSize: number): number {
  if (!(need >= 0 && onHand >= 0 && packSize > 0)) {
    throw new RangeError(`packsToBuy needs a need, a stock and a pack, got ${need}, ${onHand}, ${packSize}`);
  }
  return Math.max(0, Math.ceil((need - onHand) / packSize - 1e-9));
}

/** How a material is used up and delivered. Any one unit of quantity, any one unit of time. */
export interface UsagePattern {
  readonly perPeriod: number;
  /** Standard deviation of the use in one period. */
  readonly perPeriodSd: number;
  readonly leadPeriods: number;
  readonly leadPeriodsSd: number;
}

export interface ReorderPoint {
  /** Kept against bad luck. */
  readonly safetyStock: number;
  /** Order when no more than this is left. */
  readonly reorderAt: number;
}

/**
 * When to order again. `z`: normal quantile of the share of deliveries that shall come before the stock runs out (1.645 for
 * 95 %).
 *
 * Throws RangeError for figures below 0.
 * Source: textbook of operations management: ROP = d L + z sqrt(L s_d^2 + d^2 s_L^2).
 */
export function reorderPoint(usage: UsagePattern, z: number): ReorderPoint {
  const { perPeriod, perPeriodSd, leadPeriods, leadPeriodsSd } = usage;
  if (![perPeriod, perPeriodSd, leadPeriods, leadPeriodsSd, z].every((figure) => figure >= 0)) {
    throw new RangeError('reorderPoint needs figures of 0 or more');
  }
  const safetyStock = z * Math.sqrt(leadPeriods * perPeriodSd ** 2 + (perPeriod * leadPeriodsSd) ** 2);
  return { safetyStock, reorderAt: perPeriod * leadPeriods + safetyStock };
}

/**
 * The order that costs least over a year, from what an order costs and what a unit costs to keep. Throws RangeError
 * unless all are positive. Source: sqrt(2 D S / H).
 */
export function economicOrderQuantity(perYear: number, perOrder: number, keepingPerUnit: number): number {
  if (!(perYear > 0 && perOrder > 0 && keepingPerUnit > 0)) {
    throw new RangeError(
      `economicOrderQuantity needs positive figures, got ${perYear}, ${perOrder}, ${keepingPerUnit}`,
    );
  }
  return Math.sqrt((2 * perYear * perOrder) / keepingPerUnit);
}
