import { z } from 'zod';
import { BALLAST_METALS } from '@/lib/geometry/ballast';
import { LINE_TYPES } from '@/lib/strength/fishing-line';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { MAX_BALLAST, MAX_BALLAST_G } from './ballast';
import { MAX_BODY_MM, MAX_STATIONS } from './body-profile';
import { optionalNumberText } from './number-text';
import { idSchema, plainText } from './plain-text';
import { forceNeed, lengthNeed, massNeed } from './quantity-need';
import { optionalQuantityText, optionalSignedLengthText, quantityText } from './quantity-text';

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

/** A share typed in percent; null where nothing was written. */
const optionalPercent = optionalNumberText(1, 100).transform((percent) => (percent === null ? null : percent / 100));

/** A weight in the body or on it, as the form sends it. */
function ballastText(units: UnitChoice) {
  return z
    .strictObject({
      name: plainText(0, 60),
      metal: z.enum(BALLAST_METALS, { error: 'Say what it is made of.' }),
      massG: quantityText(massNeed(units, 0.01, MAX_BALLAST_G)),
      xMm: quantityText(lengthNeed(units, 0, MAX_BODY_MM)),
      zMm: optionalSignedLengthText(lengthNeed(units, 0, MAX_BODY_MM / 2)),
      place: z.enum(['inside', 'outside'], { error: 'Say where it sits.' }),
    })
    .superRefine(({ zMm }, context) => {
      const message = 'Write how far above the middle line it sits: 0 on it, with a minus below it.';
      if (zMm === null) context.addIssue({ code: 'custom', path: ['zMm'], message });
    })
    .transform(({ place, zMm, ...item }) => ({ ...item, zMm: zMm ?? 0, isInside: place === 'inside' }));
}

/** The body of a revision. Heights and widths are typed whole, as calipers read them. */
export function bodyFormSchema(units: UnitChoice) {
  const size = quantityText(lengthNeed(units, 0, MAX_BODY_MM / 2));
  return z
    .strictObject({
      seenAt: seenAtSchema,
      woodMaterialId: optionalIdSchema,
      length: quantityText(lengthNeed(units, 12.7, MAX_BODY_MM)),
      weighedDensity: optionalNumberText(50, 1_300),
      moisture: optionalNumberText(0, 30),
      lineLabel: optionalQuantityText(forceNeed(units, 1, 2_000)),
      lineType: z.union([z.literal('').transform(() => null), z.enum(LINE_TYPES)], {
        error: 'Choose one of the list.',
      }),
      knotShare: optionalPercent,
      dragShare: optionalPercent,
      fishMass: optionalQuantityText(massNeed(units, 1, 200_000)),
      hasNoBallast: z.enum(['on']).optional(),
      ballast: z.array(ballastText(units)).max(MAX_BALLAST, `Keep it to ${MAX_BALLAST} weights.`).default([]),
      note: plainText(0, 1_000),
      stations: z
        .array(z.strictObject({ x: quantityText(lengthNeed(units, 0, MAX_BODY_MM)), height: size, width: size }))
        .max(MAX_STATIONS, `Keep it to ${MAX_STATIONS} stations.`)
        .default([]),
    })
    .superRefine(({ ballast, hasNoBallast, length }, context) => {
      const say = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
      if (hasNoBallast !== undefined && ballast.length > 0) {
        say(['hasNoBallast'], 'There are weights below: take them away, or take back this tick.');
      }
      for (const [index, { xMm }] of ballast.entries()) {
        if (xMm > length + END_TOLERANCE_MM) {
          say(['ballast', index, 'xMm'], 'This is behind the tail: the body is shorter.');
        }
      }
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
