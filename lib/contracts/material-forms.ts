import { z } from 'zod';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { optionalMoneyText } from './money-text';
import { plainText } from './plain-text';
import { lengthNeed, massNeed } from './quantity-need';
import { quantityText } from './quantity-text';
import { calendarDaySchema, optionalDaySchema } from './wall-time';

/** What is bought. */
export const MATERIAL_KINDS = [
  'wood',
  'wire',
  'adhesive',
  'coating',
  'hook',
  'split-ring',
  'screw-eye',
  'ballast',
  'other',
] as const;
export type MaterialKind = (typeof MATERIAL_KINDS)[number];

/** Which part of a two-part product is in the container; everything else comes whole. */
export const LOT_PARTS = ['whole', 'resin', 'hardener'] as const;
export type LotPart = (typeof LOT_PARTS)[number];

/** A new material. */
export const newMaterialFormSchema = z.strictObject({
  name: plainText(1, 100),
  kind: z.enum(MATERIAL_KINDS, { error: 'Choose what it is.' }),
  note: plainText(0, 1_000),
});
export type NewMaterialInput = z.infer<typeof newMaterialFormSchema>;

/** Name and note of a material. Its kind stays: routes and anchors were made with it. */
export const materialFormSchema = z.strictObject({ name: plainText(1, 100), note: plainText(0, 1_000) });
export type MaterialInput = z.infer<typeof materialFormSchema>;

const NEED_COUNT = 'Write how many there are, from 1 to 1,000,000.';

/** A lot: one container or bundle. */
export function lotFormSchema(units: UnitChoice, currency: string) {
  const shared = {
    code: plainText(1, 60),
    part: z.enum(LOT_PARTS, { error: 'Say which part is in it.' }),
    receivedOn: calendarDaySchema,
    openedOn: optionalDaySchema,
    expiresOn: optionalDaySchema,
    supplierNote: plainText(0, 500),
    priceMinor: optionalMoneyText(currency),
  };
  const count = z
    .string()
    .trim()
    .regex(/^\d{1,7}$/, NEED_COUNT)
    .transform(Number)
    .refine((pieces) => pieces >= 1 && pieces <= 1_000_000, NEED_COUNT);
  return z
    .discriminatedUnion('unit', [
      z.strictObject({ ...shared, unit: z.literal('g'), quantity: quantityText(massNeed(units, 0.1, 1_000_000)) }),
      z.strictObject({ ...shared, unit: z.literal('mm'), quantity: quantityText(lengthNeed(units, 1, 10_000_000)) }),
      z.strictObject({ ...shared, unit: z.literal('pieces'), quantity: count }),
    ])
    .superRefine(({ receivedOn, openedOn, expiresOn }, context) => {
      const message = 'It cannot be opened before it came.';
      if (openedOn !== null && openedOn < receivedOn) context.addIssue({ code: 'custom', path: ['openedOn'], message });
      if (expiresOn !== null && expiresOn < '2000-01-01') {
        context.addIssue({ code: 'custom', path: ['expiresOn'], message: 'Look at the year again.' });
      }
    });
}
export type LotInput = z.infer<ReturnType<typeof lotFormSchema>>;
