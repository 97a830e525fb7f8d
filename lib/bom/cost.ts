import { type WholeAmounts, wholeAmounts } from '@/lib/bom/money';

/** A quantity at a price a unit; the price in minor units of money, as finely as it is known. */
export interface CostedLine {
  readonly id: string;
  readonly quantity: number;
  readonly unitCostMinor: number;
}

export interface CostInput {
  readonly materials: readonly CostedLine[];
  /** Somebody's time at the bench. */
  readonly labour: readonly { readonly id: string; readonly attendedMinutes: number }[];
  readonly labourPerHourMinor: number;
  readonly overheadMinor: number;
  readonly goodPieces: number;
}

export interface Cost {
  readonly lines: readonly {
    readonly id: string;
    readonly part: 'material' | 'labour' | 'overhead';
    readonly minor: number;
  }[];
  readonly materialsMinor: number;
  readonly labourMinor: number;
  readonly overheadMinor: number;
  /** Exactly the sum of the lines. */
  readonly totalMinor: number;
  /** What each good piece has to carry, scrap included, rounded half up; null where none is good. */
  readonly perGoodPieceMinor: number | null;
}

/**
 * What a batch costs, line by line in whole minor units. Materials come with their scrap (the whole mix that was poured,
 * not only what stayed in the joint), so a spoilt piece is paid by the good ones.
 *
 * Throws RangeError for a figure below 0 or not finite.
 */
export function costOf({ materials, labour, labourPerHourMinor, overheadMinor, goodPieces }: CostInput): Cost {
  const exact = [
    ...materials.map(({ id, quantity, unitCostMinor }) => ({
      id,
      part: 'material' as const,
      exact: quantity * unitCostMinor,
    })),
    ...labour.map(({ id, attendedMinutes }) => ({
      id,
      part: 'labour' as const,
      exact: (attendedMinutes * labourPerHourMinor) / 60,
    })),
    ...(overheadMinor === 0 ? [] : [{ id: 'overhead', part: 'overhead' as const, exact: overheadMinor }]),
  ];
  if (!exact.every((line) => line.exact >= 0) || !(goodPieces >= 0)) {
    throw new RangeError('costOf needs quantities, prices and pieces of 0 or more');
  }
  const whole: WholeAmounts = wholeAmounts(exact.map((line) => line.exact));
  const lines = exact.map(({ id, part }, index) => ({ id, part, minor: whole.lines[index] ?? 0 }));
  const of = (part: (typeof lines)[number]['part']) =>
    lines.reduce((sum, line) => (line.part === part ? sum + line.minor : sum), 0);
  return {
    lines,
    materialsMinor: of('material'),
    labourMinor: of('labour'),
    overheadMinor: of('overhead'),
    totalMinor: whole.total,
    perGoodPieceMinor: goodPieces > 0 ? Math.floor(whole.total / goodPieces + 0.5) : null,
  };
}

/**
 * The price that leaves `marginShare` of itself (0 to below 1) after the cost, rounded up to a minor unit.
 * Throws RangeError outside. A cost of 600 at a margin of 0.4 is sold at 1000.
 */
export function priceAtMargin(costMinor: number, marginShare: number): number {
  if (!(costMinor >= 0 && marginShare >= 0 && marginShare < 1)) {
    throw new RangeError(`priceAtMargin needs a cost and a margin from 0 to 1, got ${costMinor}, ${marginShare}`);
  }
  return Math.ceil(costMinor / (1 - marginShare) - 1e-6);
}

/** How an actual cost came to differ from the standard: by the price paid and by the quantity used. */
export interface Variance {
  /** (actual price - standard price) x actual quantity. */
  readonly price: number;
  /** (actual quantity - standard quantity) x standard price. */
  readonly usage: number;
}

/** Splits a difference in cost; the two parts add up to it. In the unit of the prices, not rounded. */
export function variance(
  standard: { readonly price: number; readonly quantity: number },
  actual: { readonly price: number; readonly quantity: number },
): Variance {
  return {
    price: (actual.price - standard.price) * actual.quantity,
    usage: (actual.quantity - standard.quantity) * standard.price,
  };
}
