import { z } from 'zod';
import { MAX_QUANTITY } from './batch-event';
import { clientKeySchema, idSchema, plainText } from './plain-text';
import { optionalDaySchema } from './wall-time';

const needQuantity = `Write how many pieces: a whole number from 1 to ${MAX_QUANTITY}.`;

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
  dueOn: optionalDaySchema,
  orderNote: plainText(0, 500),
});

export type OpenBatchInput = z.infer<typeof openBatchFormSchema>;
