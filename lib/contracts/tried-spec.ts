import { z } from 'zod';
import { ANCHOR_KINDS } from '@/lib/geometry/anchor';
import { GREATEST_SLANT_DEG } from '@/lib/geometry/shank-path';
import { LINE_TYPES } from '@/lib/strength/fishing-line';
import { MAX_ANCHORS } from './anchor-forms';
import { MAX_BILL_LINES } from './bill-forms';
import { MAX_BODY_MM } from './body-profile';
import { idSchema } from './plain-text';

const within = (low: number, high: number, what: string) =>
  z.number(`${what} must be a number.`).min(low, `${what}: at least ${low}.`).max(high, `${what}: at most ${high}.`);
const size = (what: string) => within(0, MAX_BODY_MM, what).nullable();

/** What of an anchor may be tried out and saved: figures in mm and degrees, as the drawing has them. */
const triedAnchorSchema = z.strictObject({
  anchorId: idSchema,
  set: z
    .strictObject({
      kind: z.enum(ANCHOR_KINDS),
      xMm: size('The place from the nose'),
      zMm: within(-MAX_BODY_MM / 2, MAX_BODY_MM / 2, 'The height above the middle line').nullable(),
      slantDeg: within(-GREATEST_SLANT_DEG, GREATEST_SLANT_DEG, 'The lean').nullable(),
      loadAngleDeg: within(0, 90, "The load's angle").nullable(),
      wireMaterialId: idSchema.nullable(),
      wireDiameterMm: within(0.1, 12, "The wire's diameter").nullable(),
      twistPitchMm: within(0.5, 60, 'The twist').nullable(),
      isEyeClosed: z.boolean().nullable(),
      bitDiameterMm: within(0.1, 12, 'The bit').nullable(),
      drillDepthMm: size('The depth drilled'),
      embedmentMm: size('The embedment'),
      adhesiveMaterialId: idSchema.nullable(),
    })
    .partial(),
});

/** What was tried out on a draft, to be saved: only what differs from it. */
export const triedSpecSchema = z.strictObject({
  /** When the draft was last changed as the sender saw it. */
  seenAt: z.int().min(0),
  anchors: z.array(triedAnchorSchema).max(MAX_ANCHORS),
  woodMaterialId: idSchema.optional(),
  line: z.strictObject({ labelN: within(1, 2_000, 'The line'), type: z.enum(LINE_TYPES) }).optional(),
  bill: z
    .array(
      z.strictObject({
        materialId: idSchema,
        quantity: within(0.001, 10_000, 'A quantity of the bill'),
        quantityUnit: z.enum(['g', 'mm', 'pieces']),
      }),
    )
    .max(MAX_BILL_LINES),
});
export type TriedSpecInput = z.infer<typeof triedSpecSchema>;
