import { z } from 'zod';
import { readNumber } from '@/lib/units/read-number';

/** A number without a unit, typed as makers write it, between two ends. */
export function numberText(least: number, most: number) {
  return z
    .string()
    .max(20, 'This is too long for a number.')
    .transform((text, context): number => {
      const number = readNumber(text);
      if (number.ok && number.value >= least && number.value <= most) return number.value;
      context.addIssue({ code: 'custom', message: `Write a number from ${least} to ${most}.` });
      return z.NEVER;
    });
}

/** The same where nothing may be written; null then. */
export function optionalNumberText(least: number, most: number) {
  return z.union([z.literal('').transform(() => null), numberText(least, most)], {
    error: `Write a number from ${least} to ${most}, or nothing.`,
  });
}
