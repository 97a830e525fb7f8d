import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { followMix } from '@/lib/stock/follow-mix';
import { decideMovement, type MovementDraft, type MovementRequest, toMilli } from '@/lib/stock/ledger';
import { mixUsage } from '@/lib/stock/mix-usage';

const RUNS = process.env.SOAK === '1' ? 20_000 : 500;

describe('the book of a lot', () => {
  test('takes what is there and refuses one thousandth more', () => {
    expect(decideMovement(1000, { kind: 'issue', milli: 1000, foundLeftMilli: null })).toEqual({
      ok: true,
      drafts: [{ kind: 'issue', quantityMilli: -1000, leftMilli: 0 }],
    });
    expect(decideMovement(1000, { kind: 'issue', milli: 1001, foundLeftMilli: null })).toEqual({
      ok: false,
      code: 'not-enough',
      leftMilli: 1000,
      shortMilli: 1,
    });
  });

  test('takes more than it holds when the count was wrong, and says so in a line before', () => {
    expect(decideMovement(1000, { kind: 'issue', milli: 1500, foundLeftMilli: 200 })).toEqual({
      ok: true,
      drafts: [
        { kind: 'correction', quantityMilli: 700, leftMilli: 1700 },
        { kind: 'issue', quantityMilli: -1500, leftMilli: 200 },
      ],
    });
  });

  test('a count is a line also when it finds what the book says', () => {
    expect(decideMovement(700, { kind: 'count', countedMilli: 700 })).toEqual({
      ok: true,
      drafts: [{ kind: 'count', quantityMilli: 0, leftMilli: 700 }],
    });
  });

  test('an issue of 12 instead of 1.2 gives 10.8 back; a receipt that did not happen may have been used up since', () => {
    const issue = { kind: 'issue', standingMilli: -12_000 } as const;
    expect(decideMovement(0, { kind: 'correction', of: issue, insteadMilli: 1200 })).toEqual({
      ok: true,
      drafts: [{ kind: 'correction', quantityMilli: 10_800, leftMilli: 10_800 }],
    });
    const receipt = { kind: 'receipt', standingMilli: 5000 } as const;
    expect(decideMovement(3000, { kind: 'correction', of: receipt, insteadMilli: 0 })).toMatchObject({
      code: 'not-enough',
      shortMilli: 2000,
    });
    const count = { kind: 'count', standingMilli: -5 } as const;
    expect(decideMovement(3000, { kind: 'correction', of: count, insteadMilli: 0 })).toEqual({
      ok: false,
      code: 'not-correctable',
    });
  });

  test('quantities that are not whole are a wrong call', () => {
    expect(() => decideMovement(1, { kind: 'receipt', milli: 0.5 })).toThrow(RangeError);
    expect(() => decideMovement(1, { kind: 'count', countedMilli: -1 })).toThrow(RangeError);
    expect(() => toMilli(Number.NaN)).toThrow(RangeError);
  });

  test(`its lines sum to what is left, never below zero, after any sequence (${RUNS} sequences)`, () => {
    const milli = fc.integer({ min: 0, max: 3_000_000 });
    const step = fc.record({
      kind: fc.constantFrom('receipt', 'issue', 'found', 'count', 'correction', 'mix'),
      milli,
      other: milli,
      pick: fc.nat(50),
    });
    let moved = 0;
    fc.assert(
      fc.property(milli, fc.array(step, { maxLength: 40 }), (first, steps) => {
        const lines: MovementDraft[] = [];
        const standing: { kind: 'receipt' | 'issue'; standingMilli: number }[] = [];
        let left = first;
        const take = (drafts: readonly MovementDraft[]) => {
          for (const line of drafts) {
            lines.push(line);
            left += line.quantityMilli;
            expect(line.leftMilli).toBe(left);
            expect(left).toBeGreaterThanOrEqual(0);
          }
        };
        for (const { kind, milli: some, other, pick } of steps) {
          if (kind === 'mix') {
            const had = other % 1000;
            take(followMix(left, had, some));
            continue;
          }
          const of = standing[pick % Math.max(1, standing.length)];
          const request = requestOf(kind, some, other, of);
          const decision = decideMovement(left, request);
          if (!decision.ok) continue;
          moved += 1;
          take(decision.drafts);
          if (request.kind === 'count') expect(left).toBe(request.countedMilli);
          if (request.kind === 'correction' && of !== undefined) {
            of.standingMilli += decision.drafts.at(-1)?.quantityMilli ?? 0;
            expect(Math.abs(of.standingMilli)).toBe(request.insteadMilli);
          }
          if (request.kind === 'receipt' || request.kind === 'issue') {
            standing.push({ kind: request.kind, standingMilli: decision.drafts.at(-1)?.quantityMilli ?? 0 });
          }
        }
        expect(first + lines.reduce((sum, line) => sum + line.quantityMilli, 0)).toBe(left);
      }),
      { numRuns: RUNS },
    );
    console.log(`ledger: ${RUNS} sequences, ${moved} movements`);
    expect(moved).toBeGreaterThan(RUNS);
  });
});

function requestOf(
  kind: string,
  milli: number,
  other: number,
  of: { kind: 'receipt' | 'issue'; standingMilli: number } | undefined,
): MovementRequest {
  if (kind === 'correction' && of !== undefined) return { kind: 'correction', of, insteadMilli: milli };
  if (kind === 'issue') return { kind: 'issue', milli, foundLeftMilli: null };
  if (kind === 'found') return { kind: 'issue', milli: Math.max(1, milli), foundLeftMilli: other };
  if (kind === 'count') return { kind: 'count', countedMilli: milli };
  return { kind: 'receipt', milli };
}

describe('what a cup took', () => {
  const byMass = { ratio: { partsA: 100, partsB: 44, basis: 'mass' } } as const;
  const lots = [
    { lotId: 'a1', part: 'resin', leftMilli: 3000 },
    { lotId: 'a2', part: 'resin', leftMilli: 100_000 },
    { lotId: 'b', part: 'hardener', leftMilli: 50_000 },
  ] as const;

  test('is shared by the ratio of the sheet, the first can emptied before the second, and sums to the cup', () => {
    const usage = mixUsage(14.4, byMass, lots);
    expect(usage).toEqual({
      ok: true,
      takenMilli: new Map([
        ['a1', 3000],
        ['a2', 7000],
        ['b', 4400],
      ]),
    });
  });

  test('a ratio by volume becomes one by mass through the densities, and is not guessed without them', () => {
    // 2 : 1 by volume at 1.17 and 0.97 g/mL: 2.34 : 0.97 by mass.
    const byVolume = { ratio: { partsA: 2, partsB: 1, basis: 'volume' } } as const;
    const usage = mixUsage(33.1, { ...byVolume, densityA: 1.17, densityB: 0.97 }, lots.slice(1));
    expect(usage.ok && [...usage.takenMilli]).toEqual([
      ['a2', 23_400],
      ['b', 9700],
    ]);
    expect(mixUsage(10, byVolume, lots)).toEqual({ ok: false, code: 'volume-ratio-without-densities' });
    expect(mixUsage(10, {}, lots)).toEqual({ ok: false, code: 'no-ratio' });
  });

  test('all of it comes from a lot that holds both parts', () => {
    const usage = mixUsage(8, {}, [{ lotId: 'w', part: 'whole', leftMilli: 1000 }]);
    expect(usage).toEqual({ ok: true, takenMilli: new Map([['w', 8000]]) });
  });

  test('a book that holds less says that the cup took more, and ends at zero', () => {
    expect(followMix(500, 0, 800)).toEqual([
      { kind: 'correction', quantityMilli: 300, leftMilli: 800 },
      { kind: 'issue', quantityMilli: -800, leftMilli: 0 },
    ]);
    expect(followMix(0, 120_000, 12_000)).toEqual([{ kind: 'correction', quantityMilli: 108_000, leftMilli: 108_000 }]);
    expect(followMix(5, 7, 7)).toEqual([]);
  });
});
