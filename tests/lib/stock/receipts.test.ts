import { describe, expect, it } from 'vitest';
import { suppliesOf } from '@/lib/stock/receipts';

const TODAY = '2026-03-10';
const lot = (leftMilli: number, expiresOn: string | null = null) => ({ leftMilli, expiresOn });
const order = (milli: number, expectedOn: string) => ({ milli, expectedOn });

describe('what is there and what is ordered go to the steps in their order', () => {
  it('first what is there, then the order that comes first', () => {
    const orders = [order(50, '2026-03-20'), order(20, '2026-03-15')];
    const needs = [
      { key: 'a', milli: 60 },
      { key: 'b', milli: 50 },
      { key: 'c', milli: 60 },
    ];
    expect(suppliesOf(TODAY, [lot(100)], orders, needs)).toEqual([
      { key: 'a', neededMilli: 60, thereMilli: 60, waitsOn: null, shortMilli: 0 },
      { key: 'b', neededMilli: 50, thereMilli: 40, waitsOn: '2026-03-15', shortMilli: 0 },
      { key: 'c', neededMilli: 60, thereMilli: 0, waitsOn: '2026-03-20', shortMilli: 0 },
    ]);
  });

  it('what has expired is not there, and on its last day it still is', () => {
    const needs = [{ key: 'a', milli: 10 }];
    expect(suppliesOf(TODAY, [lot(10, '2026-03-09')], [], needs)[0]).toMatchObject({ thereMilli: 0, shortMilli: 10 });
    expect(suppliesOf(TODAY, [lot(10, TODAY)], [], needs)[0]).toMatchObject({ thereMilli: 10, shortMilli: 0 });
  });

  it('an order that should have come is not counted on, one expected today is', () => {
    const needs = [{ key: 'a', milli: 10 }];
    const late = suppliesOf(TODAY, [], [order(10, '2026-03-09')], needs)[0];
    expect(late).toMatchObject({ waitsOn: null, shortMilli: 10 });
    expect(suppliesOf(TODAY, [], [order(10, TODAY)], needs)[0]).toMatchObject({ waitsOn: TODAY, shortMilli: 0 });
  });

  it('a book below nothing gives nothing, and takes nothing away', () => {
    const needs = [{ key: 'a', milli: 10 }];
    expect(suppliesOf(TODAY, [lot(-40), lot(10)], [], needs)[0]).toMatchObject({ thereMilli: 10 });
  });

  it('too little ordered: waits for all of it and is short of the rest', () => {
    const orders = [order(3, '2026-03-12'), order(4, '2026-03-14')];
    expect(suppliesOf(TODAY, [lot(2)], orders, [{ key: 'a', milli: 10 }])).toEqual([
      { key: 'a', neededMilli: 10, thereMilli: 2, waitsOn: '2026-03-14', shortMilli: 1 },
    ]);
  });
});
