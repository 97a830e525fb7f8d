import { describe, expect, it } from 'vitest';
import { decideEvent } from '@/lib/batch/decide-event';
import { nextMixNumber } from '@/lib/batch/decide-mix';
import type { BatchEvent, BatchEventBody, CorrectableBody } from '@/lib/batch/events';
import { explainConflict } from '@/lib/batch/explain-conflict';
import { MINUTE_MS } from '@/lib/units/instant';
import {
  batchOf,
  coat,
  correct,
  EVENING_AT,
  eventOf,
  history,
  hoursOn,
  joints,
  mix,
  OPENED,
  PLAN,
  SLOW_EPOXY,
  work,
} from './workshop';

/** Pieces 1 and 2 set, 3 drilled, 4 scrapped; mix 1 running, mix 2 closed. */
const BENCH = history(
  [0, OPENED],
  [0.5, work('drill', 1, 2, 3)],
  [1, mix('m1')],
  [1.2, joints('m1', 1, 2)],
  [1.5, mix('m2', 'set', 2)],
  [1.6, { kind: 'mix-closed', mixId: 'm2' }],
  [1.7, { kind: 'pieces-scrapped', pieces: [4], reason: 'split' }],
);

function decide(body: BatchEventBody, hours = 1.3, events: readonly BatchEvent[] = BENCH, nowHours = 100) {
  return decideEvent(batchOf(events, 25), { at: hoursOn(hours), body }, hoursOn(nowHours));
}

const replaced = (seq: number, hours: number, body: CorrectableBody): BatchEventBody => ({
  kind: 'corrected',
  seq,
  reason: 'slip',
  replacement: { at: hoursOn(hours), body },
});

describe('decideEvent takes in', () => {
  it.each<[string, BatchEventBody, number]>([
    ['joints with a running mix', joints('m1', 3), 1.3],
    ['joints written down after the closing, set before', joints('m2', 3), 1.55],
    ['another mix', mix('m3', 'set', 3), 2],
    ['a coat mix before any piece is ready', mix('m3', 'coat-1', 3), 2],
    ['the closing of a mix', { kind: 'mix-closed', mixId: 'm1' }, 2],
    ['a scrapping', { kind: 'pieces-scrapped', pieces: [1], reason: 'eye came loose' }, 2],
    ['a mix put in doubt', { kind: 'mix-quarantined', mixId: 'm2', reason: 'reads low' }, 2],
    ['a note', { kind: 'noted', text: 'cold hands', pieces: [] }, 2],
    ['taking back joints', correct(4), 2],
    ['a mix with its mass put right', replaced(3, 1, { ...mix('m1'), massG: 12 }), 2],
    ['joints on another piece instead', replaced(4, 1.2, joints('m1', 3)), 2],
    ['a closing taken back', correct(6), 2],
  ])('%s', (_, body, hours) => {
    expect(decide(body, hours)).toEqual({ ok: true, warnings: [] });
  });

  it('joints past the pot life, with a warning', () => {
    expect(decide(joints('m1', 3), 2)).toMatchObject({ ok: true, warnings: [{ code: 'late', mixId: 'm1' }] });
  });

  it('another material and too large a cup, with warnings', () => {
    expect(decide({ ...mix('m3', 'set', 3), materialId: 'fast', massG: 200 }, 2)).toEqual({
      ok: true,
      warnings: [
        { code: 'other-material', plannedMaterialId: 'slow', materialId: 'fast' },
        { code: 'over-mass-limit', massG: 200, maxMassG: 150 },
      ],
    });
  });

  it('what cannot be judged, with a warning', () => {
    const { handle: _, ...milestoneHours } = SLOW_EPOXY.milestoneHours;
    const silent = { ...mix('m1'), sheet: { ...SLOW_EPOXY, milestoneHours } };
    const events = BENCH.map((event) => (event.seq === 3 ? { ...event, body: silent } : event));
    const withCoat = [...events, eventOf(8, hoursOn(2), mix('m3', 'coat-1', 3))];
    expect(decide(coat('m3', 1, 2), 2.1, withCoat)).toEqual({
      ok: true,
      warnings: [
        {
          code: 'not-judged',
          pieces: [1, 2],
          missing: { operationId: 'set', milestone: 'handle', code: 'not-on-sheet' },
        },
      ],
    });
  });
});

describe('decideEvent refuses', () => {
  const inUse = { code: 'mix-in-use', mixId: 'm1', bySeqs: [4] };
  it.each<[string, BatchEventBody, number, object]>([
    ['no pieces', work('drill'), 2, { code: 'no-pieces' }],
    [
      'an unknown piece',
      work('drill', 3, 5),
      2,
      { code: 'unknown-pieces', pieces: [5], otherPieces: [3], quantity: 4 },
    ],
    [
      'a scrapped piece',
      work('drill', 3, 4),
      2,
      { code: 'scrapped-pieces', pieces: [4], otherPieces: [3], bySeqs: [7] },
    ],
    [
      'work done before',
      work('drill', 1, 2),
      2,
      { code: 'already-done', pieces: [1, 2], otherPieces: [], bySeqs: [2] },
    ],
    [
      'joints set before',
      joints('m1', 1, 3),
      1.3,
      { code: 'already-done', pieces: [1], otherPieces: [3], bySeqs: [4] },
    ],
    ['an unknown operation', work('polish', 1), 2, { code: 'unknown-operation', operationId: 'polish' }],
    ['work on a glue operation', work('set', 3), 2, { code: 'wrong-operation-kind', recordedAs: 'joints' }],
    ['a coat with a glue mix', coat('m1', 1), 1.3, { code: 'wrong-operation-kind', operationId: 'set' }],
    [
      'an operation before its needs',
      work('sand', 1, 3),
      2,
      { code: 'blocked', pieces: [1, 3], byOperationIds: ['coat-2'] },
    ],
    ['an unknown mix', joints('m9', 3), 2, { code: 'unknown-mix', mixId: 'm9' }],
    ['a closed mix', joints('m2', 3), 2, { code: 'mix-closed', closedAt: hoursOn(1.6), bySeq: 6 }],
    ['closing it again', { kind: 'mix-closed', mixId: 'm2' }, 2, { code: 'mix-closed', bySeq: 6 }],
    ['joints before the mixing', joints('m1', 3), 0.9, { code: 'before-mix', mixedAt: hoursOn(1) }],
    ['closing before the last joint', { kind: 'mix-closed', mixId: 'm1' }, 1.1, { code: 'closed-before-last-use' }],
    ['a mix id used before', mix('m1', 'set', 3), 2, { code: 'duplicate-mix', bySeq: 3 }],
    ['a mix number used before', mix('m3', 'set', 2), 2, { code: 'mix-number-taken', nextNumber: 3, bySeq: 5 }],
    ['a mix without mass', { ...mix('m3', 'set', 3), massG: 0 }, 2, { code: 'bad-figure', figure: 'massG' }],
    [
      'an unknown anchor',
      { kind: 'joints-set', mixId: 'm1', joints: [{ piece: 3, anchorId: 'tail' }] },
      1.3,
      { code: 'unknown-anchor', anchorIds: ['tail'] },
    ],
    [
      'a remedy without a film',
      { kind: 'window-remedied', operationId: 'coat-1', pieces: [1] },
      2,
      { code: 'not-done', pieces: [1] },
    ],
    ['finishing with open pieces', { kind: 'batch-finished' }, 2, { code: 'open-pieces', pieces: [1, 2, 3] }],
    ['reopening an open batch', { kind: 'batch-reopened' }, 2, { code: 'not-finished' }],
    ['a second opening', OPENED, 2, { code: 'already-opened' }],
    ['a time before the opening', work('drill', 3), -1, { code: 'before-opening', openedAt: EVENING_AT }],
    ['no time', work('drill', 3), Number.NaN, { code: 'bad-instant' }],
    ['the future', { kind: 'noted', text: 'x', pieces: [] }, 101, { code: 'in-future' }],
    ['a correction of the opening', correct(1), 2, { code: 'cannot-correct-opening' }],
    ['a correction of nothing', correct(9), 2, { code: 'unknown-event', seq: 9 }],
    ['taking back a mix in use', correct(3), 2, inUse],
    ['another mix instead of one', replaced(3, 1, mix('m7', 'set', 7)), 2, { code: 'mix-id-changed', mixId: 'm1' }],
    ['a note instead of a mix in use', replaced(3, 1, { kind: 'noted', text: 'x', pieces: [] }), 2, inUse],
    ['a mix that starts after its joints', replaced(3, 1.25, mix('m1')), 2, { code: 'others-depend', bySeqs: [4] }],
    ['taking back work that later work rests on', correct(2), 2, { code: 'others-depend', bySeqs: [4] }],
    ['a replacement that does not fit', replaced(4, 1.2, joints('m1', 4)), 2, { code: 'blocked', pieces: [4] }],
    ['a replacement in the future', replaced(4, 101, joints('m1', 3)), 2, { code: 'in-future' }],
  ])('%s', (_, body, hours, refusal) => {
    expect(decide(body, hours)).toMatchObject({ ok: false, refusal });
  });

  it('correcting something twice, and replacing a correction', () => {
    const corrected = [...BENCH, eventOf(8, hoursOn(2), correct(4))];
    expect(decide(correct(4), 2, corrected)).toMatchObject({
      refusal: { code: 'already-corrected', seq: 4, bySeq: 8 },
    });
    expect(decide(replaced(8, 2, joints('m1', 3)), 2, corrected)).toMatchObject({
      refusal: { code: 'correction-only-undone', seq: 8 },
    });
    expect(decide(correct(8), 2, corrected)).toEqual({ ok: true, warnings: [] });
  });

  it('everything but notes, corrections and reopening once the batch is finished', () => {
    const plan = { ...PLAN, operations: PLAN.operations.slice(0, 1) };
    const events = history([0, OPENED], [1, work('drill', 1, 2, 3, 4)], [2, { kind: 'batch-finished' }]);
    const at = (body: BatchEventBody) => decideEvent(batchOf(events, 25, plan), { at: hoursOn(3), body }, hoursOn(3));
    expect(at(work('drill', 1))).toMatchObject({
      refusal: { code: 'batch-finished', finishedAt: hoursOn(2), bySeq: 3 },
    });
    expect(at({ kind: 'noted', text: 'sold', pieces: [1] })).toMatchObject({ ok: true });
    expect(at({ kind: 'batch-reopened' })).toMatchObject({ ok: true });
    expect(at(correct(2))).toMatchObject({ refusal: { code: 'others-depend', bySeqs: [3] } });
    expect(at(correct(3))).toMatchObject({ ok: true });
  });
});

/** All of pieces 1 and 2 coated twice and sanded; the second coat of piece 2 went on two hours later. */
const COATED_TWICE = history(
  [0, OPENED],
  [0, work('drill', 1, 2, 3, 4)],
  [1, mix('m1')],
  [1.5, joints('m1', 1, 2, 3, 4)],
  [8, mix('m2', 'coat-1', 2)],
  [8, coat('m2', 1, 2, 3)],
  [13, mix('m3', 'coat-2', 3)],
  [13, coat('m3', 1)],
  [15, coat('m3', 2)],
  [40, work('sand', 1, 2)],
);

describe('decideEvent at the cure clocks', () => {
  it('refuses paint before 48 h with the release, names the pieces and those that may', () => {
    // At 25 degC without doubt, piece 1 is at paint at 13 + 48 = 61 h, piece 2 at 63 h.
    expect(decide(work('paint', 1, 2), 62, COATED_TWICE)).toEqual({
      ok: false,
      refusal: {
        code: 'not-yet',
        operationId: 'paint',
        pieces: [2],
        otherPieces: [1],
        groups: [
          {
            pieces: [2],
            waiting: {
              operationId: 'coat-2',
              milestone: 'paint',
              mixIds: ['m3'],
              band: { earliestAt: hoursOn(63), centralAt: hoursOn(63), latestAt: hoursOn(63) },
            },
          },
        ],
      },
    });
    expect(decide(work('paint', 1), 61, COATED_TWICE)).toMatchObject({ ok: true });
    expect(decide(work('paint', 1, 2), 63, COATED_TWICE)).toMatchObject({ ok: true });
  });

  it('judges at the instant of the action, not at the time it is sent', () => {
    expect(decide(work('paint', 1), 60, COATED_TWICE, 90)).toMatchObject({ refusal: { code: 'not-yet' } });
  });

  it('refuses a coat before and after its window, and takes it after the remedy', () => {
    const coated = COATED_TWICE.slice(0, 6);
    const withMix = (hours: number) => [...coated, eventOf(7, hoursOn(hours), mix('m4', 'coat-2', 4))];
    expect(decide(coat('m4', 1), 11.9, withMix(11))).toMatchObject({ refusal: { code: 'not-yet', pieces: [1] } });
    expect(decide(coat('m4', 1), 12, withMix(11))).toMatchObject({ ok: true });
    expect(decide(coat('m4', 1, 4), 32, withMix(31.9))).toMatchObject({ refusal: { code: 'blocked', pieces: [4] } });
    expect(decide(coat('m4', 1, 2), 32, withMix(31.9))).toEqual({
      ok: false,
      refusal: {
        code: 'window-closed',
        operationId: 'coat-2',
        filmOperationId: 'coat-1',
        closedAt: hoursOn(32),
        remedy: null,
        pieces: [1, 2],
        otherPieces: [],
      },
    });
    const remedy: BatchEventBody = { kind: 'window-remedied', operationId: 'coat-1', pieces: [1] };
    expect(decide(remedy, 33, coated)).toEqual({ ok: true, warnings: [] });
    const remedied = [...coated, eventOf(7, hoursOn(33), remedy), eventOf(8, hoursOn(34), mix('m4', 'coat-2', 4))];
    expect(decide(coat('m4', 1), 34, remedied)).toMatchObject({ ok: true });
    expect(decide(coat('m4', 1, 2), 34, remedied)).toMatchObject({
      refusal: { code: 'window-closed', pieces: [2], otherPieces: [1] },
    });
  });

  it('warns of sanding a film that is not sandable for sure', () => {
    const remedy: BatchEventBody = { kind: 'window-remedied', operationId: 'coat-1', pieces: [1] };
    expect(decide(remedy, 31, COATED_TWICE.slice(0, 6))).toMatchObject({
      ok: true,
      warnings: [{ code: 'remedy-before-sand', pieces: [1], waiting: { band: { latestAt: hoursOn(32) } } }],
    });
  });

  it('refuses work written at a time before the earlier work was done', () => {
    expect(decide(work('paint', 1), 39, COATED_TWICE)).toMatchObject({
      refusal: { code: 'not-yet', groups: [{ pieces: [1] }] },
    });
  });
});

describe('explainConflict', () => {
  it('finds what somebody else just did', () => {
    const other = eventOf(8, hoursOn(1.9), joints('m1', 3), 'ben');
    const decision = decide(joints('m1', 3), 2, [...BENCH, other]);
    if (decision.ok) throw new Error('expected a refusal');
    expect(explainConflict(decision.refusal, [other])).toEqual({
      seq: 8,
      personId: 'ben',
      at: hoursOn(1.9),
      recordedAt: hoursOn(1.9),
      body: other.body,
    });
    expect(explainConflict(decision.refusal, [])).toBeNull();
  });

  it('finds the correction that took away what the sender meant', () => {
    const undone = [...BENCH, eventOf(8, hoursOn(2), correct(5)), eventOf(9, hoursOn(2), correct(4), 'ben')];
    const decision = decide({ kind: 'window-remedied', operationId: 'set', pieces: [1] }, 2, undone);
    expect(decision).toMatchObject({ refusal: { code: 'not-done' } });
    if (!decision.ok)
      expect(explainConflict(decision.refusal, undone.slice(7))).toMatchObject({ seq: 9, personId: 'ben' });
  });

  it('names nothing when the cause lies with the sender', () => {
    const other = eventOf(8, hoursOn(1.9), { kind: 'noted', text: 'x', pieces: [] }, 'ben');
    expect(explainConflict({ code: 'no-pieces' }, [other])).toBeNull();
    expect(explainConflict({ code: 'mix-closed', mixId: 'm2', closedAt: 0, bySeq: 6 }, [other])).toBeNull();
  });
});

describe('nextMixNumber', () => {
  it('does not give a number again whose mix was taken back', () => {
    expect(nextMixNumber(batchOf(history([0, OPENED])))).toBe(1);
    const events = [
      ...history([0, OPENED], [1, mix('m1')], [1, mix('m2', 'set', 2)]),
      eventOf(4, hoursOn(1), correct(3)),
    ];
    expect(nextMixNumber(batchOf(events))).toBe(3);
  });
});

it('lets a device clock run a minute ahead', () => {
  const note: BatchEventBody = { kind: 'noted', text: 'x', pieces: [] };
  const at = (ms: number) => decideEvent(batchOf(BENCH), { at: hoursOn(2) + ms, body: note }, hoursOn(2)).ok;
  expect([at(MINUTE_MS), at(MINUTE_MS + 1)]).toEqual([true, false]);
});
