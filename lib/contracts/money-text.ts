import { z } from 'zod';
import { minorDigits, moneyInput, type ReadMoney, readMoney } from '@/lib/units/money';

/** A sum as a maker typed it, in minor units of the shop's currency; nothing may be written, null then. */
export function optionalMoneyText(currency: string) {
  return z
    .string()
    .max(40, 'This is too long for a sum of money.')
    .transform((text, context) => {
      if (text.trim() === '') return null;
      const read = readMoney(text, currency);
      if (read.ok) return read.minor;
      context.addIssue({ code: 'custom', message: faultText(read, currency) });
      return z.NEVER;
    });
}

function faultText({ code }: Exclude<ReadMoney, { ok: true }>, currency: string): string {
  const example = moneyInput(125 * 10 ** Math.max(0, minorDigits(currency) - 1), currency);
  switch (code) {
    case 'not-money':
      return `This cannot be read as a sum of money. Write it like ${example}.`;
    case 'too-fine':
      return `${currency} has no smaller coin than that. Write it like ${example}.`;
    case 'too-much':
      return 'This is more than can be kept. Look at the sum again.';
  }
}
