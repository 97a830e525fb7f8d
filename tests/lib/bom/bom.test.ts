import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { billOf } from '@/lib/bom/bill';
import { costOf, priceAtMargin, variance } from '@/lib/bom/cost';
import { throughWireLength, twistedEyeLength } from '@/lib/bom/developed-length';
import { takeFromLots } from '@/lib/bom/lots-used';
import { lotUseCost, sharedOut, wholeAmounts } from '@/lib/bom/money';
import { economicOrderQuantity, packsToBuy, reorderPoint } from '@/lib/bom/purchase';
import { wireDensity } from '@/lib/bom/wire-mass';

const BILLS = 10_000;
const RUNS = process.env.SOAK === '1' ? 20_000 : 1000;
const amount = fc.double({ min: -1e6, max: 1e9, noNaN: true });

describe('money', () => {
  it('lines always add up to the total, and no line is off by a minor unit', () => {
    fc.assert(
      fc.property(fc.array(amount, { maxLength: 40 }), (amounts) => {
        const { lines, total } = wholeAmounts(amounts);
        expect(lines.reduce((sum, line) => sum + line, 0)).toBe(total);
        for (const [i, line] of lines.entries()) {
          expect(Number.isInteger(line)).toBe(true);
          expect(Math.abs(line - (amounts[i] ?? 0))).toBeLessThan(1 + 1e-6);
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('gives what is missing to the line that lost most', () => {
    expect(wholeAmounts([33.4, 33.3, 33.4])).toEqual({ lines: [34, 33, 33], total: 100 });
    expect(wholeAmounts([0.4, 0.2])).toEqual({ lines: [1, 0], total: 1 });
    expect(wholeAmounts([])).toEqual({ lines: [], total: 0 });
  });

  it('shares out without a rest', () => {
    expect(sharedOut(100, [1, 1, 1])).toEqual([34, 33, 33]);
    expect(sharedOut(5, [0, 0])).toEqual([3, 2]);
    expect(sharedOut(-7, [1, 3])).toEqual([-2, -5]);
    expect(() => sharedOut(1.5, [1])).toThrow(RangeError);
  });

  it('the uses of a lot cost what the lot cost, however it is used up', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1_000_000 }),
        fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 60 }),
        (price, uses) => {
          const quantity = uses.reduce((sum, use) => sum + use, 0);
          let before = 0;
          let cost = 0;
          for (const use of uses) {
            cost += lotUseCost(price, quantity, before, use);
            before += use;
          }
          expect(cost).toBe(price);
        },
      ),
      { numRuns: RUNS },
    );
  });
});

describe('costs', () => {
  const line = fc.record({
    id: fc.constant('x'),
    quantity: fc.double({ min: 0, max: 5000, noNaN: true }),
    unitCostMinor: fc.double({ min: 0, max: 900, noNaN: true }),
  });
  const labour = fc.record({ id: fc.constant('y'), attendedMinutes: fc.double({ min: 0, max: 600, noNaN: true }) });

  it(`of ${BILLS} random bills never drift by a minor unit`, () => {
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 12 }),
        fc.array(labour, { maxLength: 6 }),
        fc.integer({ min: 0, max: 9000 }),
        fc.integer({ min: 0, max: 5000 }),
        (materials, work, labourPerHourMinor, overheadMinor) => {
          const cost = costOf({ materials, labour: work, labourPerHourMinor, overheadMinor, goodPieces: 7 });
          const sum = cost.lines.reduce((all, own) => all + own.minor, 0);
          expect(sum).toBe(cost.totalMinor);
          expect(cost.materialsMinor + cost.labourMinor + cost.overheadMinor).toBe(cost.totalMinor);
          const exact =
            materials.reduce((all, own) => all + own.quantity * own.unitCostMinor, overheadMinor) +
            work.reduce((all, own) => all + (own.attendedMinutes * labourPerHourMinor) / 60, 0);
          expect(Math.abs(cost.totalMinor - exact)).toBeLessThanOrEqual(0.5 + 1e-6);
        },
      ),
      { numRuns: BILLS },
    );
  });

  it('fall on the good pieces, and a margin is a share of the price', () => {
    const input = {
      materials: [{ id: 'hook', quantity: 30, unitCostMinor: 12.5 }],
      labour: [{ id: 'glue', attendedMinutes: 90 }],
      labourPerHourMinor: 2400,
      overheadMinor: 200,
    };
    expect(costOf({ ...input, goodPieces: 9 })).toMatchObject({ totalMinor: 4175, perGoodPieceMinor: 464 });
    expect(costOf({ ...input, goodPieces: 0 }).perGoodPieceMinor).toBeNull();
    expect(priceAtMargin(600, 0.4)).toBe(1000);
    expect(priceAtMargin(601, 0.4)).toBe(1002);
    expect(() => priceAtMargin(600, 1)).toThrow(RangeError);
  });

  it('differ from the standard by price and by usage, and by nothing else', () => {
    const figure = fc.double({ min: 0, max: 1000, noNaN: true });
    const side = fc.record({ price: figure, quantity: figure });
    fc.assert(
      fc.property(side, side, (standard, actual) => {
        const { price, usage } = variance(standard, actual);
        const whole = actual.price * actual.quantity - standard.price * standard.quantity;
        expect(price + usage).toBeCloseTo(whole, 6);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('bills', () => {
  it('scrap compounds over the route, and a late spoilt piece has taken all before it', () => {
    const route = [
      { id: 'shape', scrapShare: 0.1 },
      { id: 'glue', scrapShare: 0.05 },
      { id: 'paint', scrapShare: 0 },
    ];
    const need = { materialId: 'm', unit: 'g', perPiece: 2 } as const;
    const bill = billOf(90, route, [
      { ...need, operationId: null },
      { ...need, operationId: 'glue' },
      { ...need, operationId: 'paint' },
      { ...need, unit: 'pieces', operationId: 'glue' },
    ]);
    expect(bill.startPieces).toBe(106);
    expect(bill.lines.map((own) => Number(own.total.toFixed(3)))).toEqual([210.526, 189.474, 180, 190]);
    expect(() => billOf(1, route, [{ ...need, operationId: 'bake' }])).toThrow(RangeError);
    expect(() => billOf(1, [{ id: 'a', scrapShare: 1 }], [])).toThrow(RangeError);
    expect(billOf(0, route, []).startPieces).toBe(0);
  });
});

describe('buying', () => {
  it('buys whole packs for what is short', () => {
    expect([packsToBuy(105.3, 0, 25), packsToBuy(100, 75, 25), packsToBuy(10, 30, 25)]).toEqual([5, 1, 0]);
    expect(() => packsToBuy(1, 1, 0)).toThrow(RangeError);
    expect(() => economicOrderQuantity(0, 1, 1)).toThrow(RangeError);
    expect(() => reorderPoint({ perPeriod: -1, perPeriodSd: 0, leadPeriods: 1, leadPeriodsSd: 0 }, 1)).toThrow(
      RangeError,
    );
  });

  it('takes from lots in order and says what is missing', () => {
    const lots = [
      { lotId: 'a', quantity: 0.1, unitCost: 1 },
      { lotId: 'b', quantity: 0.2, unitCost: 1 },
      { lotId: 'c', quantity: 5, unitCost: 1 },
    ];
    expect(takeFromLots(lots, 0.1 + 0.2).uses.map((use) => use.lotId)).toEqual(['a', 'b']);
    expect(takeFromLots(lots, 6).missing).toBeCloseTo(0.7, 9);
  });
});

describe('developed lengths', () => {
  const eye = { wireDiameterMm: 0.9, pitchMm: 6, shankMm: 30, eyeInsideMm: 3, loopDeg: 360, tailsMm: 0, trimMm: 20 };

  it('refuse a twist that two strands cannot make, and warn near it', () => {
    expect(twistedEyeLength({ ...eye, pitchMm: 2.8 })).toEqual({
      ok: false,
      code: 'twist-too-steep',
      leastPitchMm: Math.PI * 0.9,
    });
    expect(twistedEyeLength({ ...eye, pitchMm: 3 })).toMatchObject({ ok: true, isSteep: true });
    expect(twistedEyeLength(eye)).toMatchObject({ ok: true, isSteep: false });
    expect(() => twistedEyeLength({ ...eye, trimMm: -1 })).toThrow(RangeError);
  });

  it('of a through-wire: run, loops, wraps and ends', () => {
    const wire = {
      wireDiameterMm: 1,
      runMm: 100,
      eyes: [
        { insideMm: 4, loopDeg: 360, wrapTurns: 3 },
        { insideMm: 4, loopDeg: 180, wrapTurns: 0 },
      ],
      tailsMm: 4,
      trimMm: 16,
    };
    const wraps = 3 * Math.hypot(1, 2 * Math.PI);
    expect(throughWireLength(wire).cutMm).toBeCloseTo(100 + 1.5 * Math.PI * 5 + wraps + 20, 9);
  });

  it('know the density of an alloy that was named', () => {
    expect(wireDensity('other')).toBeNull();
    expect(wireDensity('brass')).toBe(8500);
  });
});
