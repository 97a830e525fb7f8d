import fc from 'fast-check';
import { expect, test } from 'vitest';
import { minorDigits, moneyInput, moneyText, readMoney } from '@/lib/units/money';

test('a currency has as many digits as ISO 4217 gives it', () => {
  expect(['USD', 'EUR', 'JPY', 'KWD', '??'].map(minorDigits)).toEqual([2, 2, 0, 3, 2]);
});

test.each([
  ['12', 'USD', 1200],
  ['12.5', 'USD', 1250],
  ['$12.50', 'USD', 1250],
  ['12,50 EUR', 'EUR', 1250],
  ['€ 1,250.00', 'EUR', 125_000],
  ['1,250', 'USD', 125_000],
  ['.99', 'USD', 99],
  ['0', 'USD', 0],
  ['800', 'JPY', 800],
])('%s in %s is %i of its smallest coin', (text, currency, minor) => {
  expect(readMoney(text, currency)).toEqual({ ok: true, minor });
});

test.each([
  ['12.345', 'USD', 'too-fine'],
  ['12.5', 'JPY', 'too-fine'],
  ['twelve', 'USD', 'not-money'],
  ['-3', 'USD', 'not-money'],
  ['1.2.3', 'USD', 'not-money'],
  ['.', 'USD', 'not-money'],
  ['99999999', 'USD', 'too-much'],
])('%s in %s is refused: %s', (text, currency, code) => {
  expect(readMoney(text, currency)).toMatchObject({ ok: false, code });
});

test('a sum is written with its code, thousands grouped, and a true minus sign', () => {
  expect(moneyText(123_456_789, 'USD')).toBe('1,234,567.89 USD');
  expect(moneyText(-5, 'USD')).toBe('\u22120.05 USD');
  expect(moneyText(1250, 'JPY')).toBe('1,250 JPY');
});

test('what a field shows is read back as the same sum', () => {
  fc.assert(
    fc.property(fc.nat(2_000_000_000), fc.constantFrom('USD', 'JPY', 'KWD'), (minor, currency) => {
      expect(readMoney(moneyInput(minor, currency), currency)).toEqual({ ok: true, minor });
    }),
  );
});
