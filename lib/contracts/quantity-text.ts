import { z } from 'zod';
import type { Quantity, ReadQuantity } from '@/lib/units/read-quantity';
import { readQuantity } from '@/lib/units/read-quantity';

/** What a field holds and between which values it makes sense, in the inside unit. */
export interface QuantityNeed {
  readonly quantity: Quantity;
  /** The unit of a bare number: what the field says at its end. */
  readonly bareUnit: string;
  readonly least: number;
  readonly most: number;
  /** The two ends as the shop reads them: "between 10 mm and 1 m". */
  readonly range: string;
}

const EXAMPLES: { readonly [Q in Quantity]: string } = {
  length: '1 1/4", .041" or 32 mm',
  mass: '12.5 g or 0.4 oz',
  force: '12 lb or 53 N',
  temperature: '70 F or 21 C',
  volume: '12 mL',
  duration: '45 min, 2 h 05 or 3 d',
};

/** A quantity as a maker typed it, read into the inside unit. The message says what is wrong and what to write. */
export function quantityText(need: QuantityNeed) {
  return typedText.transform((text, context) => read(text, need, context));
}

/** The same where nothing may be written; null then. */
export function optionalQuantityText(need: QuantityNeed) {
  return typedText.transform((text, context) => (text.trim() === '' ? null : read(text, need, context)));
}

const typedText = z.string().max(40, 'This is too long for a quantity.');

function read(text: string, need: QuantityNeed, context: z.RefinementCtx): number {
  const reading = readQuantity(need.quantity, text, need.bareUnit);
  if (reading.ok && reading.value >= need.least && reading.value <= need.most) return reading.value;
  const message = reading.ok ? `This must be ${need.range}.` : refusalText(reading, need);
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
}

function refusalText(reading: Exclude<ReadQuantity, { ok: true }>, { quantity, range }: QuantityNeed): string {
  switch (reading.code) {
    case 'empty':
      return `Write a value ${range}.`;
    case 'not-a-number':
      return `This cannot be read. Write it like ${EXAMPLES[quantity]}.`;
    case 'ambiguous-comma':
      return 'The comma could mean thousands or a decimal. Write a decimal with a point.';
    case 'zero-denominator':
      return 'A fraction over zero has no value.';
    case 'unknown-unit':
      return `The unit "${reading.unit}" does not belong here. Use one of ${reading.accepted.join(', ')}.`;
    case 'below-zero':
      return 'This cannot be below zero.';
  }
}
