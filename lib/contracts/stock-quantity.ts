import { z } from 'zod';
import { type StockUnit, toMilli } from '@/lib/stock/ledger';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { lengthNeed, massNeed } from './quantity-need';
import { optionalQuantityText, quantityText } from './quantity-text';

/** Most pieces of one lot. */
const MOST_PIECES = 1_000_000;
const NEED_PIECES = 'Write how many there are: a whole number up to 1,000,000.';

function need(unit: 'g' | 'mm', units: UnitChoice, mayBeZero: boolean) {
  return unit === 'g'
    ? massNeed(units, mayBeZero ? 0 : 0.001, 1_000_000)
    : lengthNeed(units, mayBeZero ? 0 : 0.1, 10_000_000);
}

const pieceText = z
  .string()
  .trim()
  .regex(/^\d{1,7}$/, NEED_PIECES)
  .transform(Number)
  .refine((pieces) => pieces <= MOST_PIECES, NEED_PIECES);

/** A quantity of a lot as a maker typed it, in thousandths of its unit. */
export function stockQuantityText(unit: StockUnit, units: UnitChoice, mayBeZero: boolean) {
  const typed =
    unit === 'pieces'
      ? pieceText.refine((pieces) => mayBeZero || pieces > 0, 'Write at least 1.')
      : quantityText(need(unit, units, mayBeZero));
  return typed.transform(toMilli);
}

/** The same where nothing may be written; null then. 0 is a quantity. */
export function optionalStockQuantityText(unit: StockUnit, units: UnitChoice) {
  const typed =
    unit === 'pieces'
      ? z.union([z.literal('').transform(() => null), pieceText])
      : optionalQuantityText(need(unit, units, true));
  return typed.transform((quantity) => (quantity === null ? null : toMilli(quantity)));
}
