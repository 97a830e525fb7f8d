import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDecimal } from '@/lib/exchange/decimal';

const parsed = (text: string) => parseDecimal(text, 0, text.length);

describe('numbers as loggers write them', () => {
  it.each([
    ['21.5', 21.5],
    ['21,5', 21.5],
    ['  -0,25 ', -0.25],
    ['+.5', 0.5],
    ['\u22123', -3],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1.234.567', 1_234_567],
    ['21.5 °C', 21.5],
    ['70.7F', 70.7],
    ['45 %', 45],
    ['2.15e1', 21.5],
    ['20.1234567890123456', Number('20.1234567890123456')],
  ])('%s', (text, value) => {
    expect(parsed(text)).toBe(value);
  });

  it.each(['', ' ', '-', '--', '.', ',', 'NaN', 'Infinity', '1-2', '1.2.3', '12:30', '0x10', '1e', 'C', '21.5 m'])(
    'is not a number: %j',
    (text) => {
      expect(parsed(text)).toBeNaN();
    },
  );

  it('gives the double nearest to what is written', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999, max: 99_999_999 }),
        fc.integer({ min: 0, max: 7 }),
        (digits, decimals) => {
          const text = (digits / 10 ** decimals).toFixed(decimals);
          expect(parsed(text)).toBe(Number(text));
          expect(parsed(text.replace('.', ','))).toBe(Number(text));
        },
      ),
    );
  });
});
