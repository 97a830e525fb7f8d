import { z } from 'zod';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import { POT_LIFE_CRITERIA } from '@/lib/cure/adhesive-sheet';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { numberText, optionalNumberText } from './number-text';
import { plainText } from './plain-text';
import { massNeed, temperatureNeed } from './quantity-need';
import type { QuantityNeed } from './quantity-text';
import { optionalQuantityText, quantityText } from './quantity-text';
import { optionalDaySchema } from './wall-time';

const SOURCE_KINDS = ['data-sheet', 'published', 'common-practice', 'from-memory', 'own'] as const;

const duration = (bareUnit: 'h' | 'min'): QuantityNeed => ({
  quantity: 'duration',
  bareUnit,
  least: 0.05,
  most: 525_600,
  range: 'above nothing and at most a year',
});

const box = (least: number, most: number) =>
  z.strictObject({
    low: numberText(least, most),
    central: numberText(least, most),
    high: numberText(least, most),
  });

/** The form of a data sheet: text in the shop's units. */
export function sheetTextSchema(units: UnitChoice) {
  const temperature = quantityText(temperatureNeed(units, -30, 80));
  const mass = massNeed(units, 0.1, 100_000);
  const ownSource = z
    .strictObject({ kind: z.union([z.literal(''), z.enum(SOURCE_KINDS)]), text: plainText(0, 1_000) })
    .refine(({ kind, text }) => (kind === '') === (text === ''), {
      path: ['text'],
      message: 'Choose the kind of source and write where it stands, or leave both empty.',
    });
  const rate = z.discriminatedUnion(
    'kind',
    [
      z.strictObject({
        kind: z.literal('two-temperatures'),
        firstC: temperature,
        firstTime: quantityText(duration('h')),
        secondC: temperature,
        secondTime: quantityText(duration('h')),
      }),
      z.strictObject({ kind: z.literal('common') }),
      z.strictObject({ kind: z.literal('own'), ...box(10, 120).shape }),
      z.strictObject({ kind: z.literal('doubling'), ...box(2, 120).shape }),
      z.strictObject({ kind: z.literal('plain-hours') }),
    ],
    { error: 'Choose how the hours follow the temperature.' },
  );
  const hours = optionalQuantityText(duration('h'));
  const milestones: { readonly [M in Milestone]: typeof hours } = {
    handle: hours,
    sand: hours,
    'recoat-from': hours,
    'recoat-by': hours,
    paint: hours,
    'pull-test': hours,
    ship: hours,
  };
  return z.strictObject({
    seenVersion: z
      .string()
      .regex(/^\d{1,9}$/)
      .transform(Number),
    sheetRevision: plainText(0, 120),
    sheetOn: optionalDaySchema,
    source: z.strictObject({
      kind: z.enum(SOURCE_KINDS, { error: 'Say where the figures come from.' }),
      text: plainText(1, 1_000),
    }),
    referenceC: temperature,
    minCureC: temperature,
    rate,
    potLife: z
      .array(
        z.strictObject({
          minutes: quantityText(duration('min')),
          massG: quantityText(mass),
          temperatureC: temperature,
          criterion: z.enum(POT_LIFE_CRITERIA, { error: 'Say what ends it in the test.' }),
        }),
      )
      .max(20, 'Keep it to 20 pot lives.')
      .default([]),
    massExponent: z.strictObject({
      low: optionalNumberText(0, 1),
      central: optionalNumberText(0, 1),
      high: optionalNumberText(0, 1),
    }),
    milestoneHours: z.strictObject(milestones),
    recoatCapHours: hours,
    recoatRemedy: plainText(0, 500),
    maxMassG: optionalQuantityText(mass),
    densityA: optionalNumberText(0.5, 5),
    densityB: optionalNumberText(0.5, 5),
    ratio: z.strictObject({
      partsA: optionalNumberText(0.001, 1_000),
      partsB: optionalNumberText(0.001, 1_000),
      basis: z.enum(['mass', 'volume']),
    }),
    sources: z.partialRecord(z.string(), ownSource).default({}),
  });
}

/** A data sheet as it was typed, read into the inside units, before it is known to be one. */
export type SheetText = z.infer<ReturnType<typeof sheetTextSchema>>;
