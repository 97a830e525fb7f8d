import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthText, massText, temperatureText, wireDiameterText } from '@/lib/units/format-quantity';
import type { Quantity } from '@/lib/units/read-quantity';
import { readQuantity } from '@/lib/units/read-quantity';

describe('quantities as makers write them', () => {
  it.each<[Quantity, string, string, number]>([
    ['length', '1 1/4', 'inch', 31.75],
    ['length', '1-1/4"', 'mm', 31.75],
    ['length', '1¼ in', 'mm', 31.75],
    ['length', '1 1⁄4 in.', 'mm', 31.75],
    ['length', '5/64"', 'mm', 1.984375],
    ['length', '5/64”', 'mm', 1.984375],
    ['length', '.041', 'inch', 1.0414],
    ['length', ',041', 'inch', 1.0414],
    ['length', '0,041', 'inch', 1.0414],
    ['length', '32 mm', 'inch', 32],
    ['length', '32', 'mm', 32],
    ['length', '3.2CM', 'mm', 32],
    ['length', "1'", 'mm', 304.8],
    ['length', '1,234.5', 'mm', 1234.5],
    ['length', '1.234,5', 'mm', 1234.5],
    ['length', '0', 'mm', 0],
    ['temperature', '70F', 'C', 21.11111111111111],
    ['temperature', '70 °F', 'C', 21.11111111111111],
    ['temperature', '21,5 °C', 'F', 21.5],
    ['temperature', '−5', 'C', -5],
    ['temperature', '- 5', 'C', -5],
    ['temperature', '-40F', 'C', -40],
    ['temperature', '300 K', 'C', 26.85],
    ['force', '12 lb', 'N', 53.378659],
    ['force', '12', 'lbf', 53.378659],
    ['force', '5 kg', 'N', 49.03325],
    ['mass', '1.5 oz', 'g', 42.524285],
    ['mass', '1/4 lb', 'g', 113.398093],
    ['mass', '12,5', 'g', 12.5],
    ['volume', '12 mL', 'ml', 12],
    ['volume', '2 cm3', 'ml', 2],
    ['volume', '1 fl oz', 'ml', 29.57353],
    ['duration', '45', 'min', 45],
    ['duration', '2 h 05', 'min', 125],
    ['duration', '2h05', 'min', 125],
    ['duration', '2 h 5 min', 'min', 125],
    ['duration', '1:30', 'min', 90],
    ['duration', '1.5 h', 'min', 90],
    ['duration', '1 1/2 hours', 'min', 90],
    ['duration', '7 d', 'h', 10_080],
    ['duration', '24', 'h', 1440],
    ['duration', '90 s', 'min', 1.5],
  ])('%s "%s", bare numbers in %s, is %d', (quantity, text, bareUnit, value) => {
    const result = readQuantity(quantity, text, bareUnit);
    if (!result.ok) throw new Error(result.code);
    expect(result.value).toBeCloseTo(value, 6);
  });

  it.each<[Quantity, string, string]>([
    ['length', '', 'empty'],
    ['length', '   ', 'empty'],
    ['length', 'long', 'not-a-number'],
    ['length', '"', 'not-a-number'],
    ['length', '1 2 3', 'not-a-number'],
    ['length', '1..2', 'not-a-number'],
    ['length', '1 1/4 1/2', 'not-a-number'],
    ['length', '.', 'not-a-number'],
    ['length', '1,234', 'ambiguous-comma'],
    ['length', '1,234 mm', 'ambiguous-comma'],
    ['length', '5/0', 'zero-denominator'],
    ['length', '12 lb', 'unknown-unit'],
    ['length', '32 mm mm', 'unknown-unit'],
    ['length', '-1', 'below-zero'],
    ['mass', '-0.5 g', 'below-zero'],
    ['temperature', '-300 C', 'below-zero'],
    ['duration', '1:75', 'unknown-unit'],
    ['length', '1e3', 'unknown-unit'],
    ['length', '9'.repeat(400), 'not-a-number'],
  ])('%s "%s" is refused as %s', (quantity, text, code) => {
    expect(
      readQuantity(
        quantity,
        text,
        quantity === 'temperature' ? 'C' : quantity === 'mass' ? 'g' : quantity === 'duration' ? 'min' : 'mm',
      ),
    ).toMatchObject({ ok: false, code });
  });

  it('names the units that can be written', () => {
    expect(readQuantity('force', '12 furlongs', 'N')).toEqual({
      ok: false,
      code: 'unknown-unit',
      unit: 'furlongs',
      accepted: ['n', 'kn', 'lbf', 'ozf', 'kgf'],
    });
  });

  it('takes no unit of another quantity for bare numbers', () => {
    expect(() => readQuantity('length', '1', 'lbf')).toThrow(RangeError);
  });

  it('never throws and never gives NaN, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary' }),
        fc.constantFrom('length', 'temperature', 'duration'),
        (text, quantity) => {
          const result = readQuantity(quantity, text, { length: 'mm', temperature: 'C', duration: 'min' }[quantity]);
          if (result.ok) expect(Number.isFinite(result.value)).toBe(true);
        },
      ),
    );
  });
});

describe('printed and read again', () => {
  it('every 64th of an inch up to 40 inches prints as itself', () => {
    for (let count = 0; count <= 40 * 64; count++) {
      const text = lengthText((count * 25.4) / 64, 'inch');
      const back = readQuantity('length', text, 'mm');
      if (!back.ok) throw new Error(`${text}: ${back.code}`);
      expect(lengthText(back.value, 'inch')).toBe(text);
      expect(back.value).toBeCloseTo((count * 25.4) / 64, 10);
    }
  });

  it('every wire from .001 to .250 inch prints as itself', () => {
    for (let thousandths = 1; thousandths <= 250; thousandths++) {
      const text = `.${String(thousandths).padStart(3, '0')}"`;
      const read = readQuantity('length', text, 'mm');
      if (!read.ok) throw new Error(read.code);
      expect(wireDiameterText(read.value, 'inch')).toBe(text);
    }
  });

  it('every tenth of a degree prints as itself in either unit', () => {
    for (let tenths = -400; tenths <= 1300; tenths++) {
      for (const unit of ['C', 'F'] as const) {
        const text = `${(Math.abs(tenths) / 10).toFixed(1)} °${unit}`;
        const signed = tenths < 0 ? `−${text}` : text;
        const read = readQuantity('temperature', signed, unit);
        if (!read.ok) throw new Error(`${signed}: ${read.code}`);
        expect(temperatureText(read.value, unit)).toBe(signed);
      }
    }
  });

  it('every hundredth of an ounce prints as itself', () => {
    for (let hundredths = 0; hundredths <= 2_000; hundredths++) {
      const text = `${(hundredths / 100).toFixed(2)} oz`;
      const read = readQuantity('mass', text, 'g');
      if (!read.ok) throw new Error(read.code);
      expect(massText(read.value, 'oz')).toBe(text);
    }
  });
});
