import { z } from 'zod';
import { correctionShape, instantSchema, mixStartedActionSchema, plainActionSchemas } from './batch-event';
import { clientKeySchema, idSchema } from './plain-text';

const correctableActionSchema = z.discriminatedUnion('kind', [...plainActionSchemas, mixStartedActionSchema]);

/** Something a maker says happened at the bench. A batch is opened by its own command, so that is not among them. */
export const batchActionSchema = z.discriminatedUnion('kind', [
  ...plainActionSchemas,
  mixStartedActionSchema,
  z.strictObject({
    ...correctionShape,
    replacement: z.strictObject({ at: instantSchema, action: correctableActionSchema }).nullable(),
  }),
]);

export type CorrectableAction = z.infer<typeof correctableActionSchema>;
export type BatchAction = z.infer<typeof batchActionSchema>;

/** The body of POST /api/v1/batches/:id/events. */
export const recordEventSchema = z.strictObject({
  /** Made by the client before sending; sent again with the same action it counts once. */
  key: clientKeySchema,
  /** The newest seq the sender's screen showed. */
  seenSeq: z.int().min(0),
  /** When it happened, UTC milliseconds. Absent: now. */
  at: instantSchema.exactOptional(),
  personId: idSchema.exactOptional(),
  action: batchActionSchema,
});

export type RecordEventInput = z.infer<typeof recordEventSchema>;
