import { z } from 'zod';
import { MAX_QUANTITY } from './batch-event';
import { clientKeySchema, idSchema, plainText } from './plain-text';

const needQuantity = `Write how many pieces: a whole number from 1 to ${MAX_QUANTITY}.`;

/** Whether a text is a day of the calendar, YYYY-MM-DD. */
function isCalendarDay(text: string): boolean {
  const date = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** The form of a new batch, as a browser sends it: every field is text. */
export const openBatchFormSchema = z.strictObject({
  /** The id of the batch to be, made with the form: sending the form twice opens one batch. */
  batchId: clientKeySchema,
  revisionId: z.string().min(1, 'Choose a model.').pipe(idSchema),
  quantity: z
    .string()
    .trim()
    .regex(/^\d{1,3}$/, needQuantity)
    .transform(Number)
    .pipe(z.int().min(1, needQuantity).max(MAX_QUANTITY, needQuantity)),
  dueOn: z
    .string()
    .trim()
    .refine((text) => text === '' || isCalendarDay(text), 'Write the day as year-month-day, for example 2026-05-31.')
    .transform((text) => (text === '' ? null : text)),
  orderNote: plainText(0, 500),
});

export type OpenBatchInput = z.infer<typeof openBatchFormSchema>;
export type OpenBatchField = keyof OpenBatchInput;
