import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lotCosts } from '@/lib/stock/lot-costs';
import { unitPrice } from '@/lib/stock/unit-price';

describe('what uses of a lot cost', () => {
  test('thirds of a lot for 1.00 cost 33, 34 and 33 cents, and together its price', () => {
    const lines = ['a', 'b', 'c'].map((batchId) => ({ batchId, takenMilli: 1000 }));
    expect([...lotCosts(100, 3000, lines)]).toEqual([
      ['a', 33],
      ['b', 34],
      ['c', 33],
    ]);
  });

  test('what is given back takes its cost along; what a count misses is carried by no batch', () => {
    const lines = [
      { batchId: 'a', takenMilli: 2000 },
      { batchId: 'a', takenMilli: -500 },
      { batchId: null, takenMilli: 500 },
    ];
    expect([...lotCosts(400, 4000, lines)]).toEqual([
      ['a', 150],
      [null, 50],
    ]);
  });

  test('a lot that ends at nothing has cost its price to the cent, whatever was taken, given back or found', () => {
    const line = fc.record({
      batchId: fc.constantFrom('a', 'b', null),
      takenMilli: fc.integer({ min: -40_000, max: 90_000 }),
    });
    fc.assert(
      fc.property(
        fc.nat(1_000_000),
        fc.integer({ min: 1, max: 500_000 }),
        fc.array(line, { maxLength: 30 }),
        (price, received, lines) => {
          const gone = lines.reduce((sum, one) => sum + one.takenMilli, 0);
          const costs = lotCosts(price, received, [...lines, { batchId: 'last', takenMilli: received - gone }]);
          expect([...costs.values()].reduce((sum, cost) => sum + cost, 0)).toBe(price);
        },
      ),
      { numRuns: process.env.SOAK === '1' ? 50_000 : 1000 },
    );
  });
});

describe('the standard price of a material', () => {
  const lot = (part: 'whole' | 'resin' | 'hardener', priceMinor: number, received: number, receivedOn: string) => ({
    part,
    priceMinor,
    received,
    receivedOn,
  });

  test('is that of the pack, else of the newest lot with a price, else not known', () => {
    const lots = [lot('whole', 900, 3000, '2026-01-01'), lot('whole', 1200, 3000, '2026-02-01')];
    expect(unitPrice({ quantity: 1000, priceMinor: 250 }, null, lots)).toEqual({ ok: true, minor: 0.25, from: 'pack' });
    expect(unitPrice({ quantity: null, priceMinor: null }, null, lots)).toEqual({
      ok: true,
      minor: 0.4,
      from: 'newest-lots',
    });
    expect(unitPrice({ quantity: null, priceMinor: null }, null, [])).toEqual({ ok: false, code: 'no-price' });
  });

  test('of a two-part glue is that of its parts in their ratio', () => {
    // 2 g resin at 3 cents and 1 g hardener at 6 cents: 12 cents for 3 g.
    const lots = [lot('resin', 3000, 1000, '2026-01-01'), lot('hardener', 3000, 500, '2026-01-01')];
    const sheet = { ratio: { partsA: 2, partsB: 1, basis: 'mass' } } as const;
    const none = { quantity: null, priceMinor: null };
    expect(unitPrice(none, sheet, lots)).toMatchObject({ ok: true, minor: 4 });
    expect(unitPrice(none, sheet, lots.slice(1))).toEqual({ ok: false, code: 'no-price' });
    expect(unitPrice(none, {}, lots)).toEqual({ ok: false, code: 'no-price' });
  });
});
