import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partNeeds, stillNeeded } from '@/lib/stock/batch-need';
import { type KeptLot, type Need, outlook } from '@/lib/stock/shortages';

const TODAY = '2026-03-10';
const need = (batchNumber: number, neededOn: string | null, milli: number): Need => ({
  batchId: `b${batchNumber}`,
  batchNumber,
  neededOn,
  milli,
});

describe('the day a shortage bites', () => {
  test('is the day of the first batch that does not get all of its need', () => {
    const lots = [{ leftMilli: 3000, expiresOn: null }];
    const needs = [need(3, null, 100), need(2, '2026-03-20', 2000), need(1, '2026-03-15', 2000)];
    expect(outlook(TODAY, lots, needs)).toEqual({
      leftMilli: 3000,
      reservedMilli: 4100,
      shortage: {
        bitesOn: '2026-03-20',
        first: { batchId: 'b2', batchNumber: 2, shortMilli: 1000 },
        shortMilli: 1100,
        expiresMilli: 0,
      },
    });
  });

  test('there is none when it is exactly enough', () => {
    expect(outlook(TODAY, [{ leftMilli: 5, expiresOn: null }], [need(1, TODAY, 5)]).shortage).toBeNull();
  });

  test('what expires the day before is not there; what is good to that very day is', () => {
    const good = (expiresOn: string) => outlook(TODAY, [{ leftMilli: 500, expiresOn }], [need(1, '2026-04-01', 500)]);
    expect(good('2026-04-01').shortage).toBeNull();
    expect(good('2026-03-31').shortage).toMatchObject({ bitesOn: '2026-04-01', shortMilli: 500, expiresMilli: 500 });
  });

  test('a day that is past counts as today, and batches without a day come last', () => {
    const needs = [need(1, '2026-01-01', 10), need(2, null, 10)];
    expect(outlook(TODAY, [], needs).shortage).toMatchObject({ bitesOn: TODAY, shortMilli: 20 });
    const bitten = outlook(TODAY, [{ leftMilli: 10, expiresOn: null }], needs).shortage;
    expect(bitten).toMatchObject({ bitesOn: null, first: { batchNumber: 2 } });
  });

  test('no other order of taking leaves less short (all orders of lots tried)', () => {
    const day = fc.constantFrom('2026-03-11', '2026-03-12', '2026-03-13', '2026-03-14');
    const lot = fc.record({ leftMilli: fc.integer({ min: 1, max: 6 }), expiresOn: fc.option(day) });
    const want = fc.record({ neededOn: day, milli: fc.integer({ min: 1, max: 6 }) });
    fc.assert(
      fc.property(fc.array(lot, { maxLength: 4 }), fc.array(want, { maxLength: 4 }), (lots, wants) => {
        const needs = wants.map(({ neededOn, milli }, index) => need(index, neededOn, milli));
        expect(outlook(TODAY, lots, needs).shortage?.shortMilli ?? 0).toBe(leastShort(lots, needs));
      }),
      { numRuns: 300 },
    );
  });
});

/** The least that must be missing, by the theorem of Hall for intervals: the worst set of needs from a day on. */
function leastShort(lots: readonly KeptLot[], needs: readonly Need[]): number {
  // A lot serves every need up to its last day, so the sets that matter are the needs from one day on.
  const days = [...new Set(needs.map(({ neededOn }) => neededOn ?? ''))];
  const over = days.map((day) => {
    const wanted = needs.filter((one) => (one.neededOn ?? '') >= day).reduce((sum, one) => sum + one.milli, 0);
    const there = lots
      .filter((lot) => lot.expiresOn === null || lot.expiresOn >= day)
      .reduce((sum, lot) => sum + lot.leftMilli, 0);
    return wanted - there;
  });
  return Math.max(0, ...over);
}

describe('what a batch still needs', () => {
  test('is its bill less what it took, never below zero', () => {
    expect(stillNeeded(260_000, 12, 1_000_000)).toBe(2_120_000);
    expect(stillNeeded(260_000, 2, 1_000_000)).toBe(0);
  });

  test('a two-part glue is needed in its parts, which sum to the need; without a ratio it is not judged', () => {
    const sheet = { ratio: { partsA: 2, partsB: 1, basis: 'mass' } } as const;
    expect(partNeeds(100, sheet, new Set(['resin', 'hardener']))).toEqual({
      ok: true,
      parts: [
        { part: 'resin', milli: 67 },
        { part: 'hardener', milli: 33 },
      ],
    });
    expect(partNeeds(100, sheet, new Set())).toMatchObject({ parts: [{ part: 'resin' }, { part: 'hardener' }] });
    expect(partNeeds(100, {}, new Set(['resin']))).toEqual({ ok: false, code: 'no-ratio' });
    expect(partNeeds(100, sheet, new Set(['whole']))).toMatchObject({ parts: [{ part: 'whole', milli: 100 }] });
    expect(partNeeds(100, null, new Set())).toMatchObject({ parts: [{ part: 'whole', milli: 100 }] });
  });
});
