import { z } from 'zod';
import type { BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import { adhesiveSheetSchema } from './adhesive-sheet';
import { idSchema, plainText } from './plain-text';
import type { BothWays } from './same-type';

/** Largest number of pieces in one batch. */
export const MAX_QUANTITY = 500;

const noDoubles = (numbers: readonly number[]) => new Set(numbers).size === numbers.length;
const pieceNumber = z.int().min(1).max(MAX_QUANTITY);

/** Piece numbers, each once. */
export const piecesSchema = z
  .array(pieceNumber)
  .min(1, 'choose at least one piece')
  .max(MAX_QUANTITY)
  .refine(noDoubles, 'a piece is named twice')
  .readonly();

const jointsSchema = z
  .array(z.strictObject({ piece: pieceNumber, anchorId: idSchema }))
  .min(1, 'choose at least one joint')
  .max(MAX_QUANTITY * 20)
  .refine(
    (joints) => new Set(joints.map((joint) => `${joint.piece} ${joint.anchorId}`)).size === joints.length,
    'a joint is named twice',
  )
  .readonly();

const reason = plainText(1, 500);
const massG = z.number().positive('a mix weighs more than nothing').max(100_000);
const cupTemperatureC = z.number().min(-20).max(60);
const seq = z.int().min(1).max(2_000_000_000);

/** An instant as JSON carries it: UTC milliseconds, between 2000 and 2100. */
export const instantSchema = z.int().min(946_684_800_000).max(4_102_444_800_000);

/** What a maker says and the store keeps in the same words. */
export const plainActionSchemas = [
  z.strictObject({ kind: z.literal('work-done'), operationId: idSchema, pieces: piecesSchema }),
  z.strictObject({ kind: z.literal('joints-set'), mixId: idSchema, joints: jointsSchema }),
  z.strictObject({ kind: z.literal('mix-closed'), mixId: idSchema }),
  z.strictObject({
    kind: z.literal('coat-applied'),
    mixId: idSchema,
    pieces: piecesSchema,
    airC: z.number().min(-40).max(60).exactOptional(),
    humidityPct: z.number().min(0).max(100).exactOptional(),
    surfaceC: z.number().min(-40).max(80).exactOptional(),
  }),
  z.strictObject({ kind: z.literal('window-remedied'), operationId: idSchema, pieces: piecesSchema }),
  z.strictObject({ kind: z.literal('pieces-scrapped'), pieces: piecesSchema, reason }),
  z.strictObject({ kind: z.literal('mix-quarantined'), mixId: idSchema, reason }),
  z.strictObject({
    kind: z.literal('pieces-cleared'),
    mixId: idSchema,
    pieces: piecesSchema,
    how: z.enum(['tested', 'redone']),
    note: plainText(0, 500),
  }),
  z.strictObject({
    kind: z.literal('noted'),
    text: plainText(1, 2_000),
    pieces: z.array(pieceNumber).max(MAX_QUANTITY).refine(noDoubles, 'a piece is named twice').readonly(),
  }),
  z.strictObject({ kind: z.literal('batch-finished') }),
  z.strictObject({ kind: z.literal('batch-reopened') }),
] as const;

/** What a maker says of a new mix; its number, the sheet and the material's name are added by the server. */
export const mixStartedActionSchema = z.strictObject({
  kind: z.literal('mix-started'),
  mixId: idSchema,
  operationId: idSchema,
  materialId: idSchema,
  massG,
  temperatureC: cupTemperatureC,
  lotIds: z.array(idSchema).max(20).readonly(),
});

const mixStartedSchema = z.strictObject({
  ...mixStartedActionSchema.shape,
  number: z.int().min(1),
  materialName: plainText(1, 200),
  sheet: adhesiveSheetSchema,
});

const correctableBodySchema = z.discriminatedUnion('kind', [...plainActionSchemas, mixStartedSchema]);

/** The fields of a correction but its replacement. */
export const correctionShape = { kind: z.literal('corrected'), seq, reason };

/** A body as the store keeps it, checked whenever it is read. */
export const storedBodySchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('batch-opened'), quantity: z.int().min(1).max(MAX_QUANTITY) }),
  ...plainActionSchemas,
  mixStartedSchema,
  z.strictObject({
    ...correctionShape,
    replacement: z.strictObject({ at: instantSchema, body: correctableBodySchema }).nullable(),
  }),
]);

/** Fails to compile when the schema and the type in lib/batch drift apart. @lintignore */
export type StoredBodyAgrees = BothWays<z.infer<typeof storedBodySchema>, BatchEventBody>;
/** As above, for what a correction may put in place. @lintignore */
export type CorrectableBodyAgrees = BothWays<z.infer<typeof correctableBodySchema>, CorrectableBody>;
