import { z } from 'zod';
import { ANCHOR_KINDS, ANCHOR_ROLES } from '@/lib/geometry/anchor';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { MAX_BODY_MM } from './body-profile';
import { optionalIdSchema, seenAtSchema } from './model-forms';
import { plainText } from './plain-text';
import { diameterNeed, lengthNeed } from './quantity-need';
import { optionalQuantityText } from './quantity-text';

/** Most anchors of one model. */
export const MAX_ANCHORS = 20;

const NEED_ANGLE = 'Write degrees from 0 (along the body) to 90 (straight across it).';

/** All anchors of a revision, in their order. */
export function anchorsFormSchema(units: UnitChoice) {
  const length = optionalQuantityText(lengthNeed(units, 0, MAX_BODY_MM));
  const diameter = optionalQuantityText(diameterNeed(units, 0.1, 12));
  const anchor = z
    .strictObject({
      /** Empty for one that is new. */
      id: optionalIdSchema,
      name: plainText(1, 60),
      role: z.enum(ANCHOR_ROLES, { error: 'Say what pulls at it.' }),
      kind: z.enum(ANCHOR_KINDS, { error: 'Say how it holds.' }),
      x: length,
      angle: z
        .string()
        .trim()
        .regex(/^(\d{1,2}([.,]\d{1,2})?)?$/, NEED_ANGLE)
        .transform((text) => (text === '' ? null : Number(text.replace(',', '.'))))
        .refine((degrees) => degrees === null || degrees <= 90, NEED_ANGLE),
      wireMaterialId: optionalIdSchema,
      wireDiameter: diameter,
      bitDiameter: diameter,
      drillDepth: length,
      embedment: length,
      adhesiveMaterialId: optionalIdSchema,
      hookMaterialId: optionalIdSchema,
      splitRingMaterialId: optionalIdSchema,
    })
    .superRefine((row, context) => {
      if (row.embedment !== null && row.drillDepth !== null && row.embedment > row.drillDepth + 0.05) {
        const message = 'The shank cannot sit deeper than the hole was drilled.';
        context.addIssue({ code: 'custom', path: ['embedment'], message });
      }
      // A screw eye cuts its own way into a narrower pilot hole.
      const isTooNarrow = row.wireDiameter !== null && row.bitDiameter !== null && row.bitDiameter < row.wireDiameter;
      if (isTooNarrow && row.kind !== 'screw-eye') {
        const message = 'The hole is narrower than the wire.';
        context.addIssue({ code: 'custom', path: ['bitDiameter'], message });
      }
    });
  return z
    .strictObject({
      seenAt: seenAtSchema,
      anchors: z.array(anchor).max(MAX_ANCHORS, `Keep it to ${MAX_ANCHORS} anchors.`).default([]),
    })
    .superRefine(({ anchors }, context) => {
      for (const [index, { name }] of anchors.entries()) {
        const isDouble = anchors.findIndex((other) => other.name.toLowerCase() === name.toLowerCase()) < index;
        const message = 'Another anchor has this name. The bench would not know which is meant.';
        if (isDouble) context.addIssue({ code: 'custom', path: ['anchors', index, 'name'], message });
      }
    });
}
export type AnchorsInput = z.infer<ReturnType<typeof anchorsFormSchema>>;
