import { z } from 'zod';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { seenAtSchema } from './model-forms';
import { idSchema, plainText } from './plain-text';
import { lengthNeed, massNeed } from './quantity-need';
import { quantityText } from './quantity-text';

/** Most lines of one bill. */
export const MAX_BILL_LINES = 100;

const NEED_COUNT = 'Write how many for one piece, from 0.01 to 1,000.';

/** What is measured of a material: its mass, its length, or pieces counted. */
const countText = z
  .string()
  .trim()
  .regex(/^\d{1,4}([.,]\d{1,3})?$/, NEED_COUNT)
  .transform((text) => Number(text.replace(',', '.')))
  .refine((count) => count >= 0.01 && count <= 1_000, NEED_COUNT);

/** The bill of a revision: what goes into one piece. */
export function billFormSchema(units: UnitChoice) {
  const shared = {
    materialId: z.string().min(1, 'Choose the material.').pipe(idSchema),
    note: plainText(0, 200),
  };
  const line = z.discriminatedUnion('unit', [
    z.strictObject({ ...shared, unit: z.literal('g'), quantity: quantityText(massNeed(units, 0.001, 10_000)) }),
    z.strictObject({ ...shared, unit: z.literal('mm'), quantity: quantityText(lengthNeed(units, 0.1, 10_000)) }),
    z.strictObject({ ...shared, unit: z.literal('pieces'), quantity: countText }),
  ]);
  return z.strictObject({
    seenAt: seenAtSchema,
    lines: z.array(line).max(MAX_BILL_LINES, `Keep it to ${MAX_BILL_LINES} lines.`).default([]),
  });
}
export type BillInput = z.infer<ReturnType<typeof billFormSchema>>;
