import { z } from 'zod';
import { EXCLUSION_REASONS } from '@/lib/pulltest/exclusion';
import { PULL_MODES, PULL_QUESTIONS } from '@/lib/pulltest/pull-mode';
import { PULL_FACTORS } from '@/lib/pulltest/pull-plan';
import { readQuantity } from '@/lib/units/read-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { numberText } from './number-text';
import { clientKeySchema, idSchema, plainText } from './plain-text';
import { diameterNeed, forceNeed, lengthNeed } from './quantity-need';
import { optionalQuantityText, quantityText } from './quantity-text';
import { calendarDaySchema, optionalDaySchema } from './wall-time';

const MOST_DEPTHS = 12;
const ticked = z
  .enum(['on'])
  .optional()
  .transform((word) => word === 'on');
const optionalId = z.union([z.literal('').transform(() => null), idSchema], { error: 'Choose one of the list.' });

/** Several depths in one box, `3/8, 1/2 and 16 mm`; a semicolon, a comma, a line or "and" stands between them. */
function depthsText({ lengthUnit }: UnitChoice) {
  const bareUnit = lengthUnit === 'inch' ? 'in' : 'mm';
  return z
    .string()
    .max(300, 'This is too long for a list of depths.')
    .transform((text, context): number[] => {
      const parts = text.split(/[,;\n]|\band\b/).map((part) => part.trim());
      const written = parts.filter((part) => part !== '');
      const depths = written.map((part) => ({ part, read: readQuantity('length', part, bareUnit) }));
      const wrong = depths.find(({ read }) => !read.ok || read.value < 1 || read.value > 200);
      const fault = (message: string) => {
        context.addIssue({ code: 'custom', message });
        return z.NEVER;
      };
      if (written.length === 0) return fault('Write at least one depth, for example 3/8, 1/2, 5/8.');
      if (written.length > MOST_DEPTHS) return fault(`At most ${MOST_DEPTHS} depths.`);
      if (wrong !== undefined) return fault(`"${wrong.part}" is no depth between 1 mm and 200 mm.`);
      const values = depths.flatMap(({ read }) => (read.ok ? [read.value] : [])).sort((a, b) => a - b);
      if (values.some((value, i) => i > 0 && value - (values[i - 1] ?? 0) < 0.05))
        return fault('A depth stands twice.');
      return values;
    });
}

/** The form of a new series. */
export function newPullSeriesSchema(units: UnitChoice) {
  const length = (least: number, most: number) => quantityText(lengthNeed(units, least, most));
  return z.strictObject({
    seriesId: clientKeySchema,
    name: plainText(1, 100),
    depths: depthsText(units),
    mixes: numberText(1, 60).refine(Number.isInteger, 'Write a whole number of mixes.'),
    woodMaterialId: optionalId,
    adhesiveMaterialId: optionalId,
    wireMaterialId: optionalId,
    factor: z.enum(PULL_FACTORS, { error: 'Say what is compared beside depth.' }),
    others: z.array(idSchema).max(7, 'At most seven others.').default([]),
    wireDiameter: quantityText(diameterNeed(units, 0.1, 12)),
    bitDiameter: quantityText(diameterNeed(units, 0.1, 25)),
    order: z.enum(['all', 'mix-by-mix'], { error: 'Say in which order they are pulled.' }),
    question: z.enum(PULL_QUESTIONS, { error: 'Say what the series is asked.' }),
    demand: optionalQuantityText(forceNeed(units, 0.5, 50_000)),
    seed: plainText(1, 80),
    hasBoard: ticked,
    boardLength: length(10, 5_000),
    boardWidth: length(10, 2_000),
    boardThickness: length(2, 500),
    boardEdge: length(1, 500),
    boardSpacing: length(1, 500),
    note: plainText(0, 1_000),
  });
}
export type NewPullSeriesInput = z.infer<ReturnType<typeof newPullSeriesSchema>>;

const WALL_TIME = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})(?::\d{2})?$/;

/** A wall time as a browser sends it; null where nothing was written. */
const optionalWallTime = z
  .string()
  .trim()
  .refine((text) => text === '' || WALL_TIME.test(text), 'Write a day and a time, for example 2026-05-31 18:30.')
  .transform((text) => {
    const [, day, clock] = WALL_TIME.exec(text) ?? [];
    if (day === undefined || clock === undefined) return null;
    const [hours = 0, minutes = 0] = clock.split(':').map(Number);
    return { day, minuteOfDay: hours * 60 + minutes };
  })
  .refine((wall) => wall === null || calendarDaySchema.safeParse(wall.day).success, 'There is no such day.');
export type WallMoment = NonNullable<z.infer<typeof optionalWallTime>>;

/** One pull, as it is written down at the scale. */
export function pullFormSchema(units: UnitChoice) {
  return z.strictObject({
    key: clientKeySchema,
    load: optionalQuantityText(forceNeed(units, 0, 50_000)),
    isLowerBound: ticked,
    mode: z.enum(PULL_MODES, { error: 'Say how it ended.' }),
    leftDamage: ticked,
    angleDeg: numberText(0, 90),
    scaleId: optionalId,
    pulledAt: optionalWallTime,
    note: plainText(0, 1_000),
    acceptsEarly: ticked,
    acceptsAgain: ticked,
  });
}
export type PullInput = z.infer<ReturnType<typeof pullFormSchema>>;

/** A correction of a pull that was written down wrongly. */
export function pullCorrectionSchema(units: UnitChoice) {
  return pullFormSchema(units)
    .omit({ key: true, acceptsEarly: true, acceptsAgain: true })
    .extend({
      reason: plainText(1, 500),
    });
}
export type PullCorrectionInput = z.infer<ReturnType<typeof pullCorrectionSchema>>;

/** Leaving a pull out: only for a physical reason. */
export const exclusionFormSchema = z.strictObject({
  reason: z.enum(EXCLUSION_REASONS, { error: 'Choose what happened. That it looks low is no reason.' }),
  note: plainText(0, 500),
});
export type ExclusionInput = z.infer<typeof exclusionFormSchema>;

/** When a mix of a series was mixed and set. */
export const pullMixFormSchema = z.strictObject({
  batchMixId: optionalId,
  mixedAt: optionalWallTime,
  setAt: optionalWallTime,
  adhesiveLotCode: plainText(0, 60),
  note: plainText(0, 500),
});

/** A scale. */
export function scaleFormSchema(units: UnitChoice) {
  return z.strictObject({
    name: plainText(1, 60),
    greatest: quantityText(forceNeed(units, 1, 50_000)),
    checkedOn: optionalDaySchema,
    note: plainText(0, 500),
  });
}
export type ScaleInput = z.infer<ReturnType<typeof scaleFormSchema>>;

/** Accepting an analysis as the shop's calibration. */
export const acceptFormSchema = z.strictObject({
  /** Version of the series as the list of what changes was made from. */
  seenVersion: z
    .string()
    .regex(/^\d{1,9}$/, 'Reload the page.')
    .transform(Number),
  note: plainText(0, 500),
});

/** Ending a calibration without another in its place. */
export const retireFormSchema = z.strictObject({ reason: plainText(1, 500) });

/** Answers about a file of pulls, as they stand in the address it is sent to. */
export const pullImportQuerySchema = z.strictObject({
  fileName: plainText(1, 200),
  loadUnit: z.enum(['lbf', 'N', 'kgf']).exactOptional(),
  depthUnit: z.enum(['in', 'mm']).exactOptional(),
  dayOrder: z.enum(['day-first', 'month-first']).exactOptional(),
  confirm: z.enum(['yes']).exactOptional(),
});

/** A sample of a batch, to accept or hold its mixes. */
export function acceptanceFormSchema(units: UnitChoice) {
  return z.strictObject({
    seriesId: clientKeySchema,
    batchId: idSchema,
    anchorId: z.string().min(1, 'Choose an anchor.').pipe(idSchema),
    perMix: numberText(1, 50).refine(Number.isInteger, 'Write a whole number of pieces.'),
    demand: quantityText(forceNeed(units, 0.5, 50_000)),
    seed: plainText(1, 80),
  });
}
export type AcceptanceInput = z.infer<ReturnType<typeof acceptanceFormSchema>>;
