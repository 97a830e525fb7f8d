import { z } from 'zod';
import { VERDICTS } from '@/lib/spec/finding';
import type { TakenFindings } from '@/lib/spec/taken-findings';
import { QUANTITY_UNITS } from '@/lib/units/quantity';

const quantity = z.strictObject({ value: z.number(), unit: z.enum(QUANTITY_UNITS) });

/** The findings that a batch took along, as they are stored with it. */
export const takenFindingsSchema: z.ZodType<TakenFindings> = z.strictObject({
  judgedAt: z.int(),
  findings: z.array(
    z.strictObject({
      ruleId: z.string(),
      subject: z.strictObject({ key: z.string(), name: z.string() }),
      verdict: z.enum(VERDICTS),
      words: z.array(z.union([z.string(), quantity])),
      figures: z.array(z.strictObject({ name: z.string(), quantity })),
      waiver: z.strictObject({ reason: z.string(), personName: z.string(), grantedAt: z.int() }).nullable(),
    }),
  ),
});
