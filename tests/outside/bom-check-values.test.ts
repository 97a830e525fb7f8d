import { describe, expect, it } from 'vitest';
import { billOf } from '@/lib/bom/bill';
import { variance } from '@/lib/bom/cost';
import { twistedEyeLength } from '@/lib/bom/developed-length';
import { takeFromLots } from '@/lib/bom/lots-used';
import { economicOrderQuantity, reorderPoint } from '@/lib/bom/purchase';
import { coilLengthM, wireDensity, wireMassPerMetreG } from '@/lib/bom/wire-mass';
import { twistedPair } from '@/lib/geometry/twisted-pair';
import { normalQuantile } from '@/lib/statistics/normal-distribution';
import { inches } from '@/lib/units/force-and-length';

/** Wire, bills, costs and reorder points against printed values and those of the project's reference pack (section 5). */

describe('two strands twisted together', () => {
  it('a helix of radius .020 in and an inch a turn takes 100.79 ft for 100 ft (printed, pack source 65)', () => {
    // That is the centreline of each of two touching strands of .040 in.
    expect(100 * twistedPair(inches(0.04), inches(1)).takeUp).toBeCloseTo(100.79, 2);
  });

  it.each([
    [0.9, 6, 6.632826, 25.23],
    [0.9, 5, 5.744073, 29.49],
    [0.9, 4, 4.898406, 35.25],
    [1, 8, 8.594743, 21.44],
    [0.9, 2.827433, 3.998595, 45],
  ])('%d mm at %d mm a turn: %d mm a strand, %d degrees (pack 5.1)', (d, pitchMm, strandMm, angleDeg) => {
    const pair = twistedPair(d, pitchMm);
    expect(pitchMm * pair.takeUp).toBeCloseTo(strandMm, 5);
    expect(pair.strandAngleDeg).toBeCloseTo(angleDeg, 2);
  });
});

describe('wire of a twisted eye (pack 5.1)', () => {
  it.each([
    [5, 6, 0.9, 3, 360, 16, 66.328259, 12.252211, 94.58047],
    [5, 6, 0.9, 3, 330, 16, 66.328259, 11.231194, 93.559453],
    [8, 4, 1, 4, 360, 20, 81.379474, 15.707963, 117.087437],
  ])(
    '%d turns of %d mm, wire %d',
    (turns, pitchMm, wireDiameterMm, eyeInsideMm, loopDeg, tailsMm, shank, loop, cut) => {
      const shankMm = turns * pitchMm;
      const got = twistedEyeLength({ wireDiameterMm, pitchMm, shankMm, eyeInsideMm, loopDeg, tailsMm, trimMm: 0 });
      if (!got.ok) throw new Error(got.code);
      expect(got.straightMm).toBeCloseTo(shank, 5);
      expect(got.loopsMm).toBeCloseTo(loop, 5);
      expect(got.cutMm).toBeCloseTo(cut, 5);
    },
  );
});

describe('mass of wire', () => {
  it('of 1 mm: 0.006165 kg/m of steel and 0.00623 of 302/304, as steel mass tables print', () => {
    expect(wireMassPerMetreG(1, 7850) / 1000).toBeCloseTo(0.006165, 6);
    expect(wireMassPerMetreG(1, 7930) / 1000).toBeCloseTo(0.00623, 5);
  });

  it.each([
    [0.5, 1.5413, 1.5571, 1.5669],
    [0.635, 2.486, 2.5114, 2.5268],
    [0.889, 4.8726, 4.9223, 4.9533],
    [0.9, 4.994, 5.0448, 5.0767],
    [1.0414, 6.6864, 6.7546, 6.7972],
    [1.2954, 10.3459, 10.4513, 10.5172],
    [1.5748, 15.2901, 15.4459, 15.5433],
    [2, 24.6615, 24.9128, 25.0699],
  ])('of %d mm: %d, %d and %d g/m at 7850, 7930 and 7980 (pack 5.2)', (d, carbon, s304, s316) => {
    expect(wireMassPerMetreG(d, 7850)).toBeCloseTo(carbon, 3);
    expect(wireMassPerMetreG(d, wireDensity('stainless-302-304') ?? 0)).toBeCloseTo(s304, 3);
    expect(wireMassPerMetreG(d, wireDensity('stainless-316') ?? 0)).toBeCloseTo(s316, 3);
  });

  it('tells how long a coil is: a quarter pound of 0.9 mm is 22.478 m (pack 5.2)', () => {
    expect(coilLengthM(113.398, 0.9, 7930)).toBeCloseTo(22.478, 3);
    expect(coilLengthM(453.592, 1, 7850)).toBeCloseTo(73.571, 3);
  });
});

describe('bills with scrap (pack 5.5)', () => {
  const scrap = (share: number) => [{ id: 'all', scrapShare: share }];
  const need = { materialId: 'hook', unit: 'g', perPiece: 1, operationId: 'all' } as const;

  it('100 net at 5 % are 105.263 by yield, 105 as an add-on', () => {
    expect(billOf(100, scrap(0.05), [need]).lines[0]?.total).toBeCloseTo(105.263, 3);
    expect(billOf(100, scrap(0.05), [need], 'add-on').lines[0]?.total).toBeCloseTo(105, 9);
  });

  it('60 good ones at 8 % begin with 66 by yield, 65 as an add-on', () => {
    expect(billOf(60, scrap(0.08), []).startPieces).toBe(66);
    expect(billOf(60, scrap(0.08), [], 'add-on').startPieces).toBe(65);
  });
});

describe('cost (pack 5.5)', () => {
  it('standard .12 for 200, actual .125 for 212: 1.06 by price, 1.44 by usage, 2.50 in all', () => {
    const got = variance({ price: 0.12, quantity: 200 }, { price: 0.125, quantity: 212 });
    expect(got.price).toBeCloseTo(1.06, 9);
    expect(got.usage).toBeCloseTo(1.44, 9);
    expect(got.price + got.usage).toBeCloseTo(26.5 - 24, 9);
  });

  it('150 from 100 at .10 and 100 at .13, first in first out: 16.50', () => {
    const lots = [
      { lotId: 'old', quantity: 100, unitCost: 0.1 },
      { lotId: 'new', quantity: 100, unitCost: 0.13 },
    ];
    expect(takeFromLots(lots, 150)).toEqual({
      uses: [
        { lotId: 'old', quantity: 100 },
        { lotId: 'new', quantity: 50 },
      ],
      cost: expect.closeTo(16.5, 9),
      missing: 0,
    });
  });
});

describe('when to order again', () => {
  it('50 a lead time, sd 5, 3 % risk: 9.40 and 59.40 (W. Stevenson, Operations Management, 14th ed., example 8 of chapter 12)', () => {
    const point = reorderPoint({ perPeriod: 50, perPeriodSd: 5, leadPeriods: 1, leadPeriodsSd: 0 }, 1.88);
    expect(point.safetyStock).toBeCloseTo(9.4, 9);
    expect(point.reorderAt).toBeCloseTo(59.4, 9);
  });

  it('100 a day, sd 20, 7 days, sd 2, z 1.65: printed 342 and 1042, both rounded up on the way', () => {
    const point = reorderPoint({ perPeriod: 100, perPeriodSd: 20, leadPeriods: 7, leadPeriodsSd: 2 }, 1.65);
    expect(point.safetyStock).toBeCloseTo(341.35, 2);
    expect(point.reorderAt).toBeCloseTo(1041.35, 2);
  });

  it('3 m of wire a week, sd 1.2, 2 weeks, sd 0.5, at 95 %: 3.7258 and 9.7258 m (pack 5.6)', () => {
    const usage = { perPeriod: 3, perPeriodSd: 1.2, leadPeriods: 2, leadPeriodsSd: 0.5 };
    const point = reorderPoint(usage, normalQuantile(0.95));
    expect(point.safetyStock).toBeCloseTo(3.7258, 3);
    expect(point.reorderAt).toBeCloseTo(9.7258, 3);
  });

  it('36,500 a year, 50 an order, 2.50 to keep one: 1208 at a time (printed)', () => {
    expect(economicOrderQuantity(36_500, 50, 2.5)).toBeCloseTo(1208.3, 1);
  });
});
