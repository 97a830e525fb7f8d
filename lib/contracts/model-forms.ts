import { z } from 'zod';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { MAX_BODY_MM, MAX_STATIONS } from './body-profile';
import { idSchema, plainText } from './plain-text';
import { forceNeed, lengthNeed } from './quantity-need';
import { optionalQuantityText, quantityText } from './quantity-text';

/** The id of a chosen thing; null where nothing was chosen. */
export const optionalIdSchema = z.union([z.literal('').transform(() => null), idSchema], {
  error: 'Choose one of the list.',
});

/** When the form's revision was last changed as the sender saw it, UTC ms: tells whether somebody else changed it. */
export const seenAtSchema = z
  .string()
  .regex(/^\d{1,15}$/, 'Reload the page.')
  .transform(Number);

/** A new model. */
export function newModelFormSchema(units: UnitChoice) {
  return z.strictObject({
    name: plainText(1, 80),
    woodMaterialId: optionalIdSchema,
    length: quantityText(lengthNeed(units, 12.7, MAX_BODY_MM)),
    note: plainText(0, 1_000),
  });
}
export type NewModelInput = z.infer<ReturnType<typeof newModelFormSchema>>;

/** Name and note of a model. */
export const modelFormSchema = z.strictObject({ name: plainText(1, 80), note: plainText(0, 1_000) });
export type ModelInput = z.infer<typeof modelFormSchema>;

/** How far a station may lie from the end it stands for, mm: the rounding of what is typed. */
const END_TOLERANCE_MM = 0.05;

/** The body of a revision. Heights and widths are typed whole, as calipers read them. */
export function bodyFormSchema(units: UnitChoice) {
  const size = quantityText(lengthNeed(units, 0, MAX_BODY_MM / 2));
  return z
    .strictObject({
      seenAt: seenAtSchema,
      woodMaterialId: optionalIdSchema,
      length: quantityText(lengthNeed(units, 12.7, MAX_BODY_MM)),
      lineClass: optionalQuantityText(forceNeed(units, 1, 2_000)),
      note: plainText(0, 1_000),
      stations: z
        .array(z.strictObject({ x: quantityText(lengthNeed(units, 0, MAX_BODY_MM)), height: size, width: size }))
        .max(MAX_STATIONS, `Keep it to ${MAX_STATIONS} stations.`)
        .default([]),
    })
    .superRefine(({ stations, length }, context) => {
      const say = (index: number, message: string) =>
        context.addIssue({ code: 'custom', path: ['stations', index, 'x'], message });
      const last = stations.length - 1;
      if (last === 0) say(0, 'One station is no shape: measure at least the nose and the tail.');
      for (const [index, { x }] of stations.entries()) {
        const before = stations[index - 1];
        if (before !== undefined && x <= before.x)
          say(index, 'Each station must lie further from the nose than the one before.');
        if (index === 0 && x > END_TOLERANCE_MM) say(index, 'The first station is the nose: write 0.');
        if (index === last && index > 0 && Math.abs(x - length) > END_TOLERANCE_MM) {
          say(index, 'The last station is the tail: it must lie at the length of the body.');
        }
      }
    });
}
export type BodyInput = z.infer<ReturnType<typeof bodyFormSchema>>;
