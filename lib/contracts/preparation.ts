import { z } from 'zod';
import { ARRANGEMENTS } from '@/lib/mixing/arrangement';
import type { Preparation } from '@/lib/prepare/preparation';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { numberText } from './number-text';
import { clientKeySchema, idSchema } from './plain-text';
import { lengthNeed, temperatureNeed } from './quantity-need';
import { optionalQuantityText, quantityText } from './quantity-text';

const figure = z.number().finite();
const use = z.strictObject({ piece: z.int(), anchorId: z.string().nullable() });

const choicesSchema = z.strictObject({
  arrangement: z.enum(ARRANGEMENTS),
  secondsPerJoint: figure,
  secondsPerCoat: figure,
  people: z.int(),
  stirSeconds: figure,
  temperatureC: figure,
  scaleStepG: figure,
  filmMm: figure,
  kerfMm: figure,
  reuseMm: figure,
  rodMm: figure.nullable(),
  // Older preparations were made with these.
  loopDeg: figure.default(360),
  gripMm: figure.default(20),
  wrapTurns: figure.default(3),
});

const wasteKind = z.enum(['joint', 'coat']);

const weighedSchema = z
  .array(z.strictObject({ operationId: z.string(), kind: wasteKind, mixedG: figure, leftG: figure, netG: figure }))
  .readonly()
  .default([]);

/** Of a stored preparation, what was weighed back alone. */
export const weighedOnlySchema = z.object({ weighed: weighedSchema });

const cardSchema = z.strictObject({
  operationId: z.string(),
  materialId: z.string().nullable(),
  aPerB: figure.nullable(),
  tolerance: figure.nullable(),
  waste: figure,
  // Older preparations say neither; nothing can be weighed back of them.
  wasteKind: wasteKind.nullable().default(null),
  wasteCount: z.int().default(0),
  netG: figure.default(0),
  mixes: z
    .array(
      z.strictObject({
        number: z.int(),
        partAG: figure,
        partBG: figure,
        massG: figure,
        ratioError: figure,
        potLifeMinutes: figure.nullable(),
        busyMinutes: figure,
        uses: z.array(use).readonly(),
      }),
    )
    .readonly(),
  obstacle: z
    .enum([
      'no-material',
      'no-sheet',
      'no-ratio',
      'volume-ratio-without-densities',
      'no-pot-life',
      'points-contradict',
      'cannot-weigh',
      'cup-too-heavy',
      'too-slow',
      'piece-too-slow',
      'anchor-figures',
      'no-body',
      'no-bill-line',
    ])
    .nullable(),
  anchorIds: z.array(z.string()).readonly(),
});

const cutSchema = z.strictObject({
  materialId: z.string(),
  wires: z.array(z.strictObject({ anchorId: z.string(), cutMm: figure, count: z.int() })).readonly(),
  bars: z
    .array(
      z.strictObject({
        stockId: z.string().nullable(),
        lengthMm: figure,
        pieces: z.array(z.strictObject({ id: z.string(), lengthMm: figure })).readonly(),
        kerfMm: figure,
        trimMm: figure,
        offcutMm: figure,
        isKept: z.boolean(),
      }),
    )
    .readonly(),
  isProven: z.boolean(),
  leastMm: figure,
  obstacle: z.enum(['too-long', 'not-enough']).nullable(),
  missingMm: figure,
});

/** What "Prepare" made, as it is stored. */
export const preparationSchema: z.ZodType<Preparation> = z.strictObject({
  choices: choicesSchema,
  cards: z.array(cardSchema).readonly(),
  cuts: z.array(cutSchema).readonly(),
  wireUnknown: z.array(z.string()).readonly(),
  weighed: weighedSchema,
});

/** The form before a glue-up. */
export function prepareFormSchema(units: UnitChoice) {
  return z.strictObject({
    arrangement: z.enum(ARRANGEMENTS, { error: 'Choose how the joints are shared among the mixes.' }),
    secondsPerJoint: numberText(1, 3600),
    secondsPerCoat: numberText(1, 7200),
    people: numberText(1, 9).pipe(z.int('Write a whole number of people.')),
    stirSeconds: numberText(0, 1800),
    temperatureC: quantityText(temperatureNeed(units, 0, 45)),
    scaleStepG: z.enum(['0.01', '0.1', '0.5', '1'], { error: 'Choose what the scale shows.' }).transform(Number),
    filmMm: numberText(0.02, 2),
    kerfMm: numberText(0, 5),
    reuseMm: quantityText(lengthNeed(units, 10, 2000)),
    rodMm: optionalQuantityText(lengthNeed(units, 50, 5000)),
    loopDeg: numberText(180, 720),
    gripMm: numberText(0, 100),
    wrapTurns: numberText(0, 20),
  });
}

/** A dose or a length ticked off, or the tick taken back. */
export const tickFormSchema = z.strictObject({
  preparationId: idSchema,
  item: z.string().regex(/^[A-Za-z0-9:_-]{1,120}$/, 'not a line of the card'),
  isDone: z.enum(['yes', 'no']).transform((word) => word === 'yes'),
  key: clientKeySchema,
});

/** The cups of one card weighed, mixed and afterwards. */
export const weighBackFormSchema = z.strictObject({
  preparationId: idSchema,
  operationId: idSchema,
  mixedG: numberText(0.01, 5000),
  leftG: numberText(0, 5000),
});
