import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutSettings, cutList, type StockLength, type WantedPiece } from '@/lib/bom/cut-list';

const SETTINGS: CutSettings = { kerfMm: 1, endTrimMm: 5, reuseMm: 150, buyMm: 1000 };
const RUNS = process.env.SOAK === '1' ? 5000 : 150;

const stockOf = fc.array(
  fc.record({ lengthMm: fc.integer({ min: 100, max: 1200 }), count: fc.integer({ min: 0, max: 4 }) }),
  { maxLength: 5 },
);
const wantedOf = fc.array(
  fc.record({ lengthMm: fc.integer({ min: 200, max: 1900 }), count: fc.integer({ min: 0, max: 25 }) }),
  { minLength: 1, maxLength: 4 },
);
const named = <T>(rows: readonly T[]) => rows.map((row, i) => ({ ...row, id: String(i) }));
const halved = (rows: readonly { lengthMm: number; count: number }[]): WantedPiece[] =>
  named(rows.map(({ lengthMm, count }) => ({ lengthMm: lengthMm / 2, count })));

describe('a cut list', () => {
  it('uses only what is in stock, cuts every piece once, and loses nothing but kerf, trim and offcuts', () => {
    let proven = 0;
    fc.assert(
      fc.property(stockOf, wantedOf, fc.constantFrom(0, 0.5, 1, 2.3), (rows, sizes, kerfMm) => {
        const stock: StockLength[] = named(rows);
        const pieces = halved(sizes);
        const list = cutList(stock, pieces, { ...SETTINGS, kerfMm });
        if (!list.ok) throw new Error(list.code);
        if (list.isProven) proven++;
        for (const { id, lengthMm, count } of pieces) {
          const own = list.bars.flatMap((bar) => bar.pieces).filter((piece) => piece.id === id);
          expect(own).toHaveLength(count);
          for (const piece of own) expect(piece.lengthMm).toBe(lengthMm);
        }
        for (const { id, lengthMm, count } of stock) {
          const taken = list.bars.filter((bar) => bar.stockId === id);
          expect(taken.length).toBeLessThanOrEqual(count);
          for (const bar of taken) expect(bar.lengthMm).toBe(lengthMm);
        }
        for (const bar of list.bars) {
          const cut = bar.pieces.reduce((sum, piece) => sum + piece.lengthMm, 0);
          expect(cut + bar.kerfMm + bar.trimMm + bar.offcutMm).toBeCloseTo(bar.lengthMm, 6);
          expect(bar.kerfMm).toBeLessThanOrEqual(bar.pieces.length * kerfMm + 1e-9);
          expect(bar.offcutMm).toBeGreaterThanOrEqual(0);
          expect(bar.isKept).toBe(bar.offcutMm >= 150);
        }
        expect(list.takenMm).toBeGreaterThanOrEqual(list.leastMm - 1e-6);
      }),
      { numRuns: RUNS },
    );
    console.info(`cut list: ${proven} of ${RUNS} plans from mixed stock proven best`);
  });

  it('takes no more than trying everything does', () => {
    const few = fc.array(fc.integer({ min: 80, max: 700 }), { minLength: 1, maxLength: 5 });
    const bars = fc.array(fc.integer({ min: 100, max: 1000 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(few, bars, (lengths, own) => {
        const stock = own.map((lengthMm, i) => ({ id: String(i), lengthMm, count: 1 }));
        const pieces = lengths.map((lengthMm, i) => ({ id: String(i), lengthMm, count: 1 }));
        const list = cutList(stock, pieces, { ...SETTINGS, buyMm: null });
        const least = leastByTrying(lengths, own);
        if (least === null) expect(list.ok).toBe(false);
        else expect(list).toMatchObject({ ok: true, isProven: true, takenMm: least, leastMm: least });
      }),
      { numRuns: RUNS },
    );
  });

  it('uses up what is there before anything is bought', () => {
    const stock = [{ id: 'rod', lengthMm: 900, count: 2 }];
    const list = cutList(stock, [{ id: 'eye', lengthMm: 94, count: 30 }], SETTINGS);
    expect(list).toMatchObject({ ok: true, buyCount: 2, isProven: true });
    if (list.ok) expect(list.bars.filter((bar) => bar.stockId === 'rod')).toHaveLength(2);
  });

  it('cuts a coil like one long length and keeps what is left of it', () => {
    const coil = [{ id: 'coil', lengthMm: 22_478, count: 1 }];
    const pieces = [
      { id: 'tie', lengthMm: 94.5, count: 100 },
      { id: 'belly', lengthMm: 81, count: 100 },
    ];
    const list = cutList(coil, pieces, { ...SETTINGS, kerfMm: 0 });
    if (!list.ok) throw new Error(list.code);
    expect(list.bars).toHaveLength(1);
    expect(list.bars[0]).toMatchObject({ stockId: 'coil', offcutMm: 22_478 - 5 - 17_550, isKept: true });
  });

  it('gathers what is left over into one offcut that can be used', () => {
    const rods = [{ id: 'rod', lengthMm: 1000, count: 9 }];
    const list = cutList(rods, [{ id: 'a', lengthMm: 150, count: 13 }], { ...SETTINGS, kerfMm: 0, endTrimMm: 0 });
    if (!list.ok) throw new Error(list.code);
    expect(list.bars.map((bar) => bar.offcutMm).toSorted((a, b) => a - b)).toEqual([100, 100, 850]);
  });

  it('refuses what no length is long enough for, and what there is too little of', () => {
    const stock = [{ id: 'rod', lengthMm: 300, count: 2 }];
    const none = { ...SETTINGS, buyMm: null };
    expect(cutList(stock, [{ id: 'long', lengthMm: 296, count: 1 }], none)).toEqual({
      ok: false,
      code: 'too-long',
      ids: ['long'],
      longestMm: 300,
    });
    expect(cutList(stock, [{ id: 'eye', lengthMm: 99, count: 7 }], none)).toMatchObject({
      ok: false,
      code: 'not-enough',
      missingMm: 108,
    });
    expect(cutList(stock, [{ id: 'eye', lengthMm: 200, count: 3 }], none)).toMatchObject({ ok: false, missingMm: 11 });
    expect(cutList([], [], none)).toMatchObject({ ok: true, bars: [], takenMm: 0, isProven: true });
  });

  it('gives the same answer twice and refuses figures that are none', () => {
    const stock = [{ id: 'rod', lengthMm: 914, count: 40 }];
    const pieces = halved([
      { lengthMm: 187, count: 60 },
      { lengthMm: 233, count: 47 },
      { lengthMm: 301, count: 31 },
    ]);
    expect(cutList(stock, pieces, SETTINGS)).toEqual(cutList(stock, pieces, SETTINGS));
    expect(() => cutList([{ id: 'x', lengthMm: 0, count: 1 }], pieces, SETTINGS)).toThrow(RangeError);
    expect(() => cutList(stock, pieces, { ...SETTINGS, kerfMm: -1 })).toThrow(RangeError);
  });
});

/** Every way to put pieces into bars; the least length of the bars used, or null where none works. */
function leastByTrying(pieces: readonly number[], bars: readonly number[]): number | null {
  let least: number | null = null;
  const free = bars.map((lengthMm) => lengthMm - SETTINGS.endTrimMm + SETTINGS.kerfMm);
  const isUsed = bars.map(() => 0);
  const place = (index: number) => {
    const piece = pieces[index];
    if (piece === undefined) {
      const taken = bars.reduce((sum, lengthMm, bar) => sum + ((isUsed[bar] ?? 0) > 0 ? lengthMm : 0), 0);
      least = Math.min(least ?? taken, taken);
      return;
    }
    for (let bar = 0; bar < bars.length; bar++) {
      const before = free[bar] ?? 0;
      if (before < piece + SETTINGS.kerfMm) continue;
      free[bar] = before - piece - SETTINGS.kerfMm;
      isUsed[bar] = (isUsed[bar] ?? 0) + 1;
      place(index + 1);
      free[bar] = before;
      isUsed[bar] = (isUsed[bar] ?? 0) - 1;
    }
  };
  place(0);
  return least;
}
