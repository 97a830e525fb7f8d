import { z } from 'zod';
import type { StockUnit } from '@/lib/stock/ledger';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { optionalMoneyText } from './money-text';
import { clientKeySchema, idSchema, plainText } from './plain-text';
import { optionalStockQuantityText, stockQuantityText } from './stock-quantity';
import { calendarDaySchema } from './wall-time';

/*
 * The forms that move stock. Quantities become thousandths of the lot's unit. The key is made with the form, so that
 * a form sent twice moves the stock once.
 */

const needReason = plainText(1, 200);

/** More of a lot came in. */
export function receiveFormSchema(unit: StockUnit, units: UnitChoice, currency: string) {
  return z.strictObject({
    key: clientKeySchema,
    milli: stockQuantityText(unit, units, false),
    priceMinor: optionalMoneyText(currency),
    reason: plainText(0, 200),
  });
}
export type ReceiveInput = z.infer<ReturnType<typeof receiveFormSchema>>;

/** Something was taken from a lot, for a batch or for something else. */
export function issueFormSchema(unit: StockUnit, units: UnitChoice) {
  return z
    .strictObject({
      key: clientKeySchema,
      milli: stockQuantityText(unit, units, false),
      /** What really lies there after the taking, where the book was wrong. */
      foundLeftMilli: optionalStockQuantityText(unit, units).optional().default(null),
      batchId: z.union([z.literal(''), idSchema]).transform((id) => (id === '' ? null : id)),
      reason: plainText(0, 200),
    })
    .superRefine(({ batchId, reason }, context) => {
      if (batchId !== null || reason !== '') return;
      context.addIssue({ code: 'custom', path: ['reason'], message: 'Say what for, or choose a batch.' });
    });
}
export type IssueInput = z.infer<ReturnType<typeof issueFormSchema>>;

/** A lot was counted, measured or weighed. */
export function countFormSchema(unit: StockUnit, units: UnitChoice) {
  return z.strictObject({
    key: clientKeySchema,
    countedMilli: stockQuantityText(unit, units, true),
    reason: needReason,
  });
}
export type CountInput = z.infer<ReturnType<typeof countFormSchema>>;

/** A receipt or an issue was written wrong. */
export function correctMovementFormSchema(unit: StockUnit, units: UnitChoice) {
  return z.strictObject({
    key: clientKeySchema,
    insteadMilli: stockQuantityText(unit, units, true),
    reason: needReason,
  });
}
export type CorrectMovementInput = z.infer<ReturnType<typeof correctMovementFormSchema>>;

/** Something was ordered: how much, in the unit the material is counted in, and when it is expected. */
export function stockOrderFormSchema(unit: StockUnit, units: UnitChoice) {
  return z.strictObject({
    milli: stockQuantityText(unit, units, false),
    expectedOn: calendarDaySchema,
    note: plainText(0, 120),
  });
}
export type StockOrderInput = z.infer<ReturnType<typeof stockOrderFormSchema>>;

/** How a material is bought. */
export function buyingFormSchema(units: UnitChoice, currency: string) {
  const days = z
    .string()
    .trim()
    .regex(/^\d{0,3}$/, 'Write a whole number of days, up to 999.')
    .transform((text) => (text === '' ? null : Number(text)));
  const shared = { packPriceMinor: optionalMoneyText(currency), leadTimeDays: days };
  const counted = <U extends StockUnit>(unit: U) =>
    z.strictObject({
      ...shared,
      stockUnit: z.literal(unit),
      packQuantity: optionalStockQuantityText(unit, units).transform((milli) => (milli === null ? null : milli / 1000)),
      reorderPoint: optionalStockQuantityText(unit, units).transform((milli) => (milli === null ? null : milli / 1000)),
    });
  return z
    .discriminatedUnion('stockUnit', [counted('g'), counted('mm'), counted('pieces')])
    .superRefine(({ packQuantity, packPriceMinor }, context) => {
      const message = 'Write what one pack holds.';
      const isMissing = packQuantity === 0 || (packQuantity === null && packPriceMinor !== null);
      if (isMissing) context.addIssue({ code: 'custom', path: ['packQuantity'], message });
    });
}
export type BuyingInput = z.infer<ReturnType<typeof buyingFormSchema>>;
