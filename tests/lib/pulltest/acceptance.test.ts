import { describe, expect, test } from 'vitest';
import { type AcceptancePull, acceptance, pullsToAccept } from '@/lib/pulltest/acceptance';
import { heldMixIds, heldPieces } from '@/lib/pulltest/held-pieces';

const CERTAINTY = { content: 0.95, confidence: 0.75 };

function judged(
  loads: Readonly<Record<string, readonly number[]>>,
  demandN: number,
  change: Partial<Parameters<typeof acceptance>[0]> = {},
) {
  const pulls = Object.entries(loads).flatMap(([mixId, own]) =>
    own.map((loadN): AcceptancePull => ({ mixId, loadN, isLowerBound: false })),
  );
  return acceptance({ pulls, mixIds: Object.keys(loads), demandN, certainty: CERTAINTY, known: null, ...change });
}

const verdicts = (result: ReturnType<typeof acceptance>) =>
  result.mixes.map((mix) => (mix.verdict === 'accept' ? 'accept' : mix.reason));

describe('accepting a batch mix by mix', () => {
  test('three pulls of each of three mixes with a pooled scatter: k = 2.344 (h 1/3, 6 degrees of freedom)', () => {
    const result = judged({ 1: [400, 440, 420], 2: [410, 380, 430], 3: [300, 310, 330] }, 330);
    expect(verdicts(result)).toEqual(['accept', 'accept', 'below-demand']);
    expect(result.isAccepted).toBe(false);
    expect(result.scatter).toMatchObject({ freedom: 6, usesKnown: false });
    const [first] = result.mixes;
    const s = Math.max(0.05, result.scatter?.logSd ?? 0);
    const middle = Math.log(400 * 440 * 420) / 3;
    expect(first?.lowerN).toBeCloseTo(Math.exp(middle - 2.343964 * s), 3);
  });

  test('a lower value just short holds the mix, at the demand it is accepted', () => {
    const loads = { 1: [400, 440, 420], 2: [410, 380, 430] };
    const lowest = Math.min(...judged(loads, 1).mixes.map(({ lowerN }) => lowerN ?? 0));
    expect(judged(loads, lowest).isAccepted).toBe(true);
    expect(verdicts(judged(loads, lowest + 0.01))).toContain('lower-value-short');
  });

  test('an untested mix, a joint that fell out, single pulls without a known scatter', () => {
    expect(verdicts(judged({ 1: [400, 420], 2: [] }, 100))).toEqual(['accept', 'not-tested']);
    expect(verdicts(judged({ 1: [0, 420] }, 100))).toEqual(['fell-out']);
    expect(verdicts(judged({ 1: [420], 2: [500] }, 100))).toEqual(['no-scatter-known', 'no-scatter-known']);
    expect(judged({}, 100).isAccepted).toBe(false);
  });

  test('a calibration that knows the scatter makes one pull of a mix say something', () => {
    const known = { logSd: 0.12, freedom: 20 };
    const result = judged({ 1: [420], 2: [500] }, 200, { known });
    expect(verdicts(result)).toEqual(['accept', 'accept']);
    expect(result.scatter).toEqual({ ...known, usesKnown: true });
  });

  test('a batch that scatters clearly more than the calibration is judged by its own scatter', () => {
    const result = judged({ 1: [200, 800, 300, 1200] }, 10, { known: { logSd: 0.1, freedom: 30 } });
    expect(result.scatter).toMatchObject({ usesKnown: false, freedom: 3 });
  });

  test('proof loads alone: 28 held joints say what 27 do not', () => {
    const proofs = (count: number) => ({
      pulls: Array.from({ length: count }, () => ({ mixId: '1', loadN: 250, isLowerBound: true })),
    });
    expect(verdicts(judged({ 1: [] }, 250, proofs(28)))).toEqual(['accept']);
    const short = judged({ 1: [] }, 250, proofs(27));
    expect(verdicts(short)).toEqual(['bounds-only']);
    expect(short.mixes[0]).toMatchObject({ proofShare: 0.25 ** (1 / 27) });
    expect(verdicts(judged({ 1: [] }, 251, proofs(28)))).toEqual(['bounds-only']);
  });

  test('bounds among failures enter by likelihood and never lower the middle', () => {
    const mixed: AcceptancePull[] = [
      { mixId: '1', loadN: 400, isLowerBound: false },
      { mixId: '1', loadN: 430, isLowerBound: false },
      { mixId: '1', loadN: 450, isLowerBound: true },
    ];
    const result = acceptance({ pulls: mixed, mixIds: ['1'], demandN: 100, certainty: CERTAINTY, known: null });
    expect(verdicts(result)).toEqual(['accept']);
    expect(result.scatter).toMatchObject({ freedom: 1 });
  });

  test('a demand or a load that is no number is a programming error', () => {
    expect(() => judged({ 1: [400] }, 0)).toThrow(RangeError);
    expect(() => judged({ 1: [Number.NaN] }, 100)).toThrow(RangeError);
  });
});

test('how many pulls it takes: more for a narrow margin, none for a middle below the demand', () => {
  const known = { logSd: 0.15, freedom: 20 };
  expect(pullsToAccept(2, known, 2, CERTAINTY)).toBe(1);
  const narrow = pullsToAccept(1.35, known, 2, CERTAINTY) ?? 0;
  expect(narrow).toBeGreaterThan(1);
  expect(pullsToAccept(1.01, known, 2, CERTAINTY)).toBeNull();
  expect(pullsToAccept(0.9, known, 2, CERTAINTY)).toBeNull();
});

test('a held mix holds the very pieces it went into, until each joint is settled', () => {
  const result = judged({ 1: [400, 420], 2: [200, 210] }, 250);
  const joints = [
    { piece: 1, anchorId: 'tie', mixId: '1' },
    { piece: 1, anchorId: 'tail', mixId: '2' },
    { piece: 9, anchorId: 'tie', mixId: '2' },
    { piece: 9, anchorId: 'tail', mixId: '2' },
    { piece: 3, anchorId: 'tie', mixId: '1' },
  ];
  expect(heldPieces(joints, heldMixIds(result))).toEqual([
    { piece: 1, joints: [{ anchorId: 'tail', mixId: '2' }] },
    {
      piece: 9,
      joints: [
        { anchorId: 'tie', mixId: '2' },
        { anchorId: 'tail', mixId: '2' },
      ],
    },
  ]);
  expect(heldPieces(joints, heldMixIds(result), new Set(['1:tail', '9:tie'])).map(({ piece }) => piece)).toEqual([9]);
});
