import { z } from 'zod';
import { optionalMoneyText } from './money-text';
import { optionalNumberText } from './number-text';
import { plainText } from './plain-text';

/** The shop's hourly rate and wanted margin; the margin is typed in per cent. */
export function costRatesFormSchema(currency: string) {
  return z.strictObject({
    labourPerHourMinor: optionalMoneyText(currency),
    marginShare: optionalNumberText(0, 95).transform((percent) => (percent === null ? null : percent / 100)),
  });
}
export type CostRatesInput = z.infer<ReturnType<typeof costRatesFormSchema>>;

const PIECES = /^(\d{1,4})\s*(?:[-\u2013]\s*(\d{1,4}))?\s+(\S.{0,59})$/;
const NEED_LINE = 'Write a line for each: the pieces, a space, the number, such as "7-12 4711".';

/** Buyers' order numbers of a batch: one for all of it, and lines for pieces that belong to another. */
export const orderNumbersFormSchema = z.strictObject({
  orderNumber: plainText(0, 60),
  pieces: plainText(0, 4_000).transform((text, context) => {
    const lines = text.split('\n').filter((line) => line.trim() !== '');
    return lines.flatMap((line) => {
      const [, from = '', to = from, orderNumber = ''] = PIECES.exec(line.trim()) ?? [];
      const range = { from: Number(from), to: Number(to === '' ? from : to), orderNumber: orderNumber.trim() };
      if (orderNumber !== '' && range.from >= 1 && range.to >= range.from) return [range];
      context.addIssue({ code: 'custom', message: `"${line.trim().slice(0, 40)}" cannot be read. ${NEED_LINE}` });
      return [];
    });
  }),
});
export type OrderNumbersInput = z.infer<typeof orderNumbersFormSchema>;
