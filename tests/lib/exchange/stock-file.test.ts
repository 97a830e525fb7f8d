import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readStockFile } from '@/lib/exchange/stock-file';

const read = (text: string, dayOrder: 'day-first' | 'month-first' | null = null) =>
  readStockFile(new TextEncoder().encode(text), 'USD', dayOrder);

describe('a list of stock', () => {
  test('is read under headings in any order and wording, with quantities as makers write them', () => {
    const file = [
      'Stock of our shop',
      'Lot;Item description;Qty on hand;Best before;Paid',
      'A-1;Slow epoxy - resin;1,2 kg;2027-01-31;$31.50',
      'A-2;Slow epoxy - hardener;480 g;;',
      ';Stainless wire 1.0 mm;22 m;;14,30',
      'B4;Treble hook 4;100;;9.8',
      '',
    ].join('\n');
    const result = read(file);
    expect(result).toMatchObject({ state: 'read', refused: [], blankLines: 0 });
    expect(result.state === 'read' && result.rows.map((row) => [row.line, row.part, row.quantity, row.unit])).toEqual([
      [3, 'resin', 1200, 'g'],
      [4, 'hardener', 480, 'g'],
      [5, 'whole', 22_000, 'mm'],
      [6, 'whole', 100, 'pieces'],
    ]);
    expect(result.state === 'read' && result.rows[0]).toMatchObject({
      kind: 'adhesive',
      materialName: 'Slow epoxy',
      code: 'A-1',
      priceMinor: 3150,
      expiresOn: '2027-01-31',
    });
    expect(result.state === 'read' && result.rows[2]).toMatchObject({ code: 'As listed', priceMinor: 1430 });
  });

  test.each([
    ['Epoxy,,500,', 'no-unit'],
    ['Epoxy,,five g,', 'no-quantity'],
    ['Epoxy,,0 g,', 'nothing-left'],
    [',X,5 g,', 'no-material'],
    ['Hooks,X,2.5 pcs,', 'part-pieces'],
    ['Epoxy,X,5 g,soon', 'bad-day'],
    ['"Epoxy,X,5 g,', 'open-quote'],
    ['Epoxy,X,5 furlongs,', 'no-unit'],
  ])('the line %s is refused: %s', (line, reason) => {
    const result = read(`Material,Lot,Quantity,Expires\n${line}\nPine,P,3 ft,\n`);
    expect(result).toMatchObject({ state: 'read', refused: [{ line: 2, reason }], rows: [{ line: 3, unit: 'mm' }] });
  });

  test('asks which is the day where a date could be read two ways, and only then', () => {
    const file = 'material,quantity,received\nPine,3 ft,3/4/2026\n';
    expect(read(file)).toEqual({ state: 'asks-day-order', example: '3/4/2026' });
    expect(read(file, 'month-first')).toMatchObject({ rows: [{ receivedOn: '2026-03-04' }] });
    expect(read(file, 'day-first')).toMatchObject({ rows: [{ receivedOn: '2026-04-03' }] });
    expect(read('material,quantity,received\nPine,3 ft,3/14/2026\n', 'month-first')).toMatchObject({
      rows: [{ receivedOn: '2026-03-14' }],
    });
  });

  test('the unit may stand in a column of its own or in the heading', () => {
    expect(read('name,unit,amount\nPine,in,12\n')).toMatchObject({ rows: [{ quantity: 304.8, unit: 'mm' }] });
    expect(read('name,quantity (g)\nTin,12\n')).toMatchObject({ rows: [{ quantity: 12, unit: 'g' }] });
  });

  test('what is no list is said to be none', () => {
    expect(read('')).toEqual({ state: 'unreadable', code: 'empty' });
    expect(read('a,b\n1,2\n')).toEqual({ state: 'unreadable', code: 'no-headings' });
    expect(readStockFile(new Uint8Array(1_000_000), 'USD', null)).toEqual({ state: 'unreadable', code: 'too-long' });
  });

  test('any bytes are answered, and every line under the headings is counted once', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 40 }), { maxLength: 20 }), (lines) => {
        const body = lines.map((line) => line.replace(/[\r\n]/g, ' '));
        const result = read(['material,lot,quantity', ...body].join('\n'), 'day-first');
        if (result.state !== 'read') return;
        const counted = result.rows.length + result.refused.length + result.blankLines;
        expect(counted).toBeLessThanOrEqual(body.length);
        expect(counted).toBeGreaterThanOrEqual(body.filter((line) => line.trim() !== '').length);
      }),
      { numRuns: process.env.SOAK === '1' ? 20_000 : 300 },
    );
  });
});
