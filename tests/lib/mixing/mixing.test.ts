import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ARRANGEMENTS, arrange, type MixUse, usesByPiece } from '@/lib/mixing/arrangement';
import { doses, leastWeighableMixG } from '@/lib/mixing/doses';
import { glueMassG, glueRoundShank } from '@/lib/mixing/glue-need';
import { checkWeighed, commonTolerance, massRatio, mixedDensity } from '@/lib/mixing/mass-ratio';
import { type Cup, type Pace, planMixes } from '@/lib/mixing/mix-plan';
import { COMMON_WASTE, shopWaste } from '@/lib/mixing/waste';

const RUNS = process.env.SOAK === '1' ? 20_000 : 500;

const uses = (pieces: number, anchors: number, massG = 0.15): MixUse[] =>
  Array.from({ length: pieces * anchors }, (_, i) => ({
    piece: 1 + Math.floor(i / anchors),
    anchorId: `anchor-${i % anchors}`,
    massG,
  }));

describe('doses', () => {
  it('sum to the mix in whole steps, cover the need and hold the ratio with both readings off', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 500, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.constantFrom(0.02, 0.03, 0.05, 0.1),
        fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1),
        fc.constantFrom(1, 2),
        (neededG, aPerB, tolerance, stepG, errorSteps) => {
          const errorG = stepG * errorSteps;
          const got = doses(neededG, aPerB, tolerance, { stepG, errorG });
          if (!got.ok) throw new Error(`nothing to weigh for ${neededG} g at ${aPerB}`);
          expect(got.partASteps + got.partBSteps).toBe(Math.round(got.massG / stepG));
          expect(got.partAG + got.partBG).toBeCloseTo(got.massG, 9);
          expect(got.massG).toBeGreaterThanOrEqual(neededG - 1e-9 * neededG - 1e-6);
          const high = (got.partAG + errorG) / (got.partBG - errorG) / aPerB - 1;
          const low = 1 - (got.partAG - errorG) / (got.partBG + errorG) / aPerB;
          expect(Math.max(high, low)).toBeLessThanOrEqual(tolerance + 1e-6);
          expect(Math.abs(got.ratioError)).toBeLessThanOrEqual(got.worstRatioError);
        },
      ),
      { numRuns: RUNS },
    );
  });

  it('grow no further than the least that can be weighed asks', () => {
    const got = doses(2, 2, 0.05, { stepG: 0.1, errorG: 0.1 });
    expect(got).toMatchObject({ ok: true, massG: 9.3, partAG: 6.2, partBG: 3.1, ratioError: 0 });
  });

  it('are refused where the cup may not be as heavy as weighing asks', () => {
    const got = doses(2, 2, 0.05, { stepG: 1, errorG: 1 }, 50);
    expect(got).toEqual({ ok: false, code: 'cannot-weigh', leastG: leastWeighableMixG(1, 2, 0.05) });
  });

  it('of a one-part product are only rounded up', () => {
    expect(doses(2.31, null, 0.05, { stepG: 0.1, errorG: 0.1 })).toMatchObject({ ok: true, massG: 2.4, partBG: 0 });
  });
});

describe('a ratio by volume', () => {
  const sheet = { ratio: { partsA: 2, partsB: 1, basis: 'volume' } } as const;
  const dense = { ...sheet, densityA: 1.15, densityB: 0.97 };

  it('is not weighed without densities', () => {
    expect(massRatio(sheet)).toEqual({ ok: false, code: 'volume-ratio-without-densities', aPerBByVolume: 2 });
    expect(checkWeighed(sheet, 10, 5, 0.05)).toMatchObject({ ok: false, code: 'volume-ratio-without-densities' });
    expect(mixedDensity(sheet)).toBeNull();
  });

  it('weighed as it stands is named as what it is', () => {
    expect(checkWeighed(dense, 10, 5, 0.05)).toMatchObject({ ok: false, code: 'volume-ratio-weighed' });
    expect(checkWeighed(dense, 10, 2, 0.05)).toMatchObject({ ok: false, code: 'ratio-off' });
    expect(checkWeighed(dense, 23.7, 10, 0.05)).toMatchObject({ ok: true });
  });

  it('of one part is nothing to weigh', () => {
    expect(massRatio({})).toEqual({ ok: false, code: 'no-ratio' });
  });
});

describe('arrangements', () => {
  const shape = fc.record({
    pieces: fc.integer({ min: 1, max: 60 }),
    anchors: fc.integer({ min: 1, max: 6 }),
    mixes: fc.integer({ min: 1, max: 12 }),
  });

  it('leave no joint without a mix and put none in two', () => {
    fc.assert(
      fc.property(shape, fc.constantFrom(...ARRANGEMENTS), ({ pieces, anchors, mixes }, arrangement) => {
        const all = uses(pieces, anchors);
        const named = arrange(usesByPiece(all), arrangement, mixes)
          .flat()
          .map(({ piece, anchorId }) => `${piece} ${anchorId}`);
        expect(named.toSorted()).toEqual(all.map(({ piece, anchorId }) => `${piece} ${anchorId}`).toSorted());
      }),
      { numRuns: RUNS },
    );
  });

  it('spread: two mixes or more never leave a piece to one, and every mix gets its share of every anchor', () => {
    fc.assert(
      fc.property(shape, ({ pieces, anchors, mixes }) => {
        const cups = arrange(usesByPiece(uses(pieces, anchors)), 'spread', mixes);
        const sizes = cups.map((cup) => cup.length);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
        for (const cup of cups) {
          const counts = new Map<number, number>();
          for (const { piece } of cup) counts.set(piece, (counts.get(piece) ?? 0) + 1);
          if (mixes >= 2 && anchors >= 2) expect(Math.max(0, ...counts.values())).toBeLessThan(anchors);
          if (mixes >= anchors) expect(Math.max(0, ...counts.values())).toBeLessThanOrEqual(1);
          for (let anchor = 0; anchor < anchors; anchor++) {
            const own = cup.filter(({ anchorId }) => anchorId === `anchor-${anchor}`).length;
            expect(Math.abs(own - pieces / mixes)).toBeLessThan(anchors + 1);
          }
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('spread: two anchors in two mixes change places', () => {
    const cups = arrange(usesByPiece(uses(40, 2)), 'spread', 2);
    for (const cup of cups) expect(cup.filter(({ anchorId }) => anchorId === 'anchor-0')).toHaveLength(20);
  });

  it('traceable: every piece has all its joints from one mix', () => {
    fc.assert(
      fc.property(shape, ({ pieces, anchors, mixes }) => {
        const cups = arrange(usesByPiece(uses(pieces, anchors)), 'traceable', mixes);
        const owners = cups.flatMap((cup) => [...new Set(cup.map(({ piece }) => piece))]);
        expect(owners.toSorted((a, b) => a - b)).toEqual(Array.from({ length: pieces }, (_, i) => i + 1));
        const sizes = cups.map((cup) => cup.length / anchors);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('a plan of mixes', () => {
  const pace: Pace = { secondsPerUse: 45, people: 1, stirSeconds: 120, usableShare: 0.8 };
  const cup: Cup = {
    weighedG: (neededG) => Math.max(9, neededG),
    potLifeMinutes: (massG) => 30 * (massG / 100) ** -0.2,
    mostG: 100,
    lossG: 0.5,
  };

  it('keeps every cup within the usable time, and one mix fewer would not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 120 }),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom(...ARRANGEMENTS),
        fc.integer({ min: 5, max: 240 }),
        fc.integer({ min: 1, max: 3 }),
        (pieces, anchors, arrangement, secondsPerUse, people) => {
          const own = { ...pace, secondsPerUse, people };
          const all = uses(pieces, anchors);
          const plan = planMixes(all, arrangement, own, cup);
          if (!plan.ok) throw new Error(plan.code);
          expect(plan.mixes.flatMap((mix) => mix.uses)).toHaveLength(all.length);
          const busy = (count: number) => 120 + Math.ceil(count / people) * secondsPerUse;
          for (const mix of plan.mixes) {
            expect(busy(mix.uses.length)).toBeLessThanOrEqual(0.8 * 60 * cup.potLifeMinutes(mix.massG) + 1e-6);
            expect(mix.massG).toBeGreaterThanOrEqual(mix.neededG);
          }
          const fewer = plan.mixes.length - 1;
          if (fewer < 1 || (arrangement === 'spread' && anchors > 1 && fewer < 2)) return;
          const tooFew = arrange(usesByPiece(all), arrangement, fewer).some((joints) => {
            const massG = Math.max(9, joints.length * 0.15 + 0.5);
            return busy(joints.length) > 0.8 * 60 * cup.potLifeMinutes(massG);
          });
          expect(tooFew).toBe(true);
        },
      ),
      { numRuns: RUNS },
    );
  });

  it('takes two mixes to spread even where one would do', () => {
    expect(planMixes(uses(4, 3), 'spread', pace, cup)).toMatchObject({ ok: true, mixes: { length: 2 } });
    expect(planMixes(uses(4, 3), 'traceable', pace, cup)).toMatchObject({ ok: true, mixes: { length: 1 } });
    expect(planMixes([], 'spread', pace, cup)).toEqual({ ok: true, mixes: [] });
  });

  it('says what is in the way', () => {
    const slow = { ...pace, secondsPerUse: 900 };
    expect(planMixes(uses(2, 3), 'spread', slow, cup)).toMatchObject({ ok: true, mixes: { length: 3 } });
    expect(planMixes(uses(2, 3), 'traceable', slow, cup)).toEqual({ ok: false, code: 'too-slow', isWholePiece: true });
    const never = { ...pace, secondsPerUse: 7200 };
    expect(planMixes(uses(2, 3), 'spread', never, cup)).toEqual({ ok: false, code: 'too-slow', isWholePiece: false });
    const unweighable = { ...cup, weighedG: () => null };
    expect(planMixes(uses(1, 1), 'spread', pace, unweighable)).toMatchObject({ ok: false, code: 'cannot-weigh' });
    expect(planMixes(uses(1, 1), 'spread', pace, { ...cup, mostG: 8 })).toMatchObject({ code: 'cup-too-heavy' });
  });

  it('keeps every cup below the most', () => {
    const plan = planMixes(uses(200, 1, 2), 'spread', { ...pace, secondsPerUse: 1 }, { ...cup, mostG: 50 });
    if (!plan.ok) throw new Error(plan.code);
    expect(plan.mixes).toHaveLength(9);
    for (const mix of plan.mixes) expect(mix.massG).toBeLessThanOrEqual(50);
  });
});

describe('waste', () => {
  const glueUp = (usedG: number, netG: number) => ({ mixedG: usedG + 2, leftG: 2, netG });

  it("is the common figure until three glue-ups were weighed, then the shop's own", () => {
    const two = [glueUp(3, 2), glueUp(6, 5)];
    expect(shopWaste(two, COMMON_WASTE.joint)).toEqual({ factor: 1.5, basis: 'common', count: 2 });
    expect(shopWaste([...two, glueUp(4, 3)], COMMON_WASTE.joint)).toEqual({ factor: 1.3, basis: 'own', count: 3 });
  });

  it('passes over weighings that cannot be, and never falls below what geometry asks for', () => {
    const wrong = [{ mixedG: 2, leftG: 3, netG: 1 }, { mixedG: 2, leftG: 0, netG: 0 }, glueUp(Number.NaN, 1)];
    expect(shopWaste(wrong, 1.35)).toEqual({ factor: 1.35, basis: 'common', count: 0 });
    expect(shopWaste([glueUp(1, 2), glueUp(1, 2), glueUp(1, 2)], 1.5).factor).toBe(1);
  });
});

describe('glue round a shank', () => {
  it('is refused where the twisted wire does not go in, and tight where glue hardly passes', () => {
    const shank = { holeDiameterMm: 1.7, embedmentMm: 25, wireDiameterMm: 0.9, pitchMm: 6 };
    expect(glueRoundShank(shank)).toEqual({ ok: false, code: 'hole-too-narrow', leastMm: 2 });
    expect(glueRoundShank({ ...shank, holeDiameterMm: 1.9 })).toMatchObject({ ok: true, isTight: true });
    expect(glueRoundShank({ ...shank, holeDiameterMm: 2 })).toMatchObject({ ok: true, isTight: false });
  });

  it('refuses figures that are none', () => {
    expect(() => glueMassG(10, 0, 1.5)).toThrow(RangeError);
    expect(() => glueMassG(10, 1.1, 0.9)).toThrow(RangeError);
    expect(commonTolerance(4)).toBe(0.03);
    expect(commonTolerance(0.5)).toBe(0.05);
  });
});
