import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diameterInput, lengthInput, massInput, plainDecimals, temperatureInput } from '@/lib/units/quantity-input';
import { readQuantity } from '@/lib/units/read-quantity';

describe('quantities as they stand in a field', () => {
  test.each([
    [lengthInput(63.5, 'inch'), '2 1/2'],
    [lengthInput(75, 'inch'), '75 mm'],
    [lengthInput(75.5, 'mm'), '75.5'],
    [diameterInput(0.041 * 25.4, 'inch'), '.041'],
    [diameterInput(1, 'inch'), '1 mm'],
    [massInput(12.5, 'g'), '12.5'],
    [temperatureInput(21.5, 'F'), '70.7'],
    [temperatureInput((70 - 32) / 1.8, 'F'), '70'],
  ])('%s', (text, wanted) => {
    expect(text).toBe(wanted);
  });

  test('reading them gives the same quantity again, so that saving an untouched form changes nothing', () => {
    const units = [
      ['length', 'in', (value: number) => lengthInput(value, 'inch')],
      ['length', 'mm', (value: number) => lengthInput(value, 'mm')],
      ['length', 'in', (value: number) => diameterInput(value, 'inch')],
      ['mass', 'oz', (value: number) => massInput(value, 'oz')],
      ['temperature', 'F', (value: number) => temperatureInput(value, 'F')],
    ] as const;
    const hundredths = fc.integer({ min: 1, max: 100_000 }).map((value) => value / 100);
    fc.assert(
      fc.property(hundredths, fc.constantFrom(...units), (value, [quantity, bareUnit, input]) => {
        const reading = readQuantity(quantity, input(value), bareUnit);
        expect(reading.ok && Math.abs(reading.value - value)).toBeLessThan(2e-5);
      }),
    );
  });

  test('no number stands in a field that is none', () => {
    expect(() => plainDecimals(Number.NaN)).toThrow(RangeError);
  });
});
