import { describe, expect, it } from 'vitest';
import type { BatchEventBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import { quarantinedPieces } from '@/lib/batch/quarantined-pieces';
import { MINUTE_MS } from '@/lib/units/instant';
import { coat, correct, EVENING_AT, eventOf, history, hoursOn, joints, mix, OPENED, PLAN, work } from './workshop';

const ALL = [1, 2, 3, 4];

describe('foldBatch', () => {
  it('knows nothing before the opening', () => {
    const state = foldBatch(PLAN, []);
    expect(state).toMatchObject({ openedAt: null, finishedAt: null, pieces: [], mixes: [], clocks: [], lastSeq: 0 });
  });

  it('opens with every operation of every piece open', () => {
    const state = foldBatch(PLAN, history([0, OPENED]));
    expect(state.pieces.map((piece) => piece.number)).toEqual(ALL);
    expect(state.pieces[3]?.operations.map(({ status }) => status)).toEqual(Array(6).fill('open'));
    expect(state.openedAt).toBe(EVENING_AT);
  });

  it('follows an evening from drilling to the first coat', () => {
    const state = foldBatch(
      PLAN,
      history(
        [0, OPENED],
        [0.5, work('drill', ...ALL)],
        [1, mix('m1')],
        [1.1, { kind: 'joints-set', mixId: 'm1', joints: [{ piece: 1, anchorId: 'tie' }] }],
        [1.2, { kind: 'joints-set', mixId: 'm1', joints: [{ piece: 1, anchorId: 'belly' }] }],
        [1.2, joints('m1', 2)],
        [1.3, { kind: 'mix-closed', mixId: 'm1' }],
        [24, mix('m2', 'coat-1', 2)],
        [24.1, coat('m2', 1, 2)],
      ),
    );
    expect(state.anomalies).toEqual([]);
    expect(state.pieces.map((piece) => piece.operations.map(({ status }) => status[0]).join(''))).toEqual([
      'dddooo',
      'dddooo',
      'dooooo',
      'dooooo',
    ]);
    expect(state.pieces[0]?.operations[1]).toMatchObject({ doneAt: hoursOn(1.2), doneSeq: 5, clockIndexes: [0, 1] });
    expect(state.clocks).toMatchObject([
      { mixId: 'm1', setAt: hoursOn(1.1), mixedAt: hoursOn(1), pieces: [1], anchorIds: ['tie'], jointCount: 1 },
      { mixId: 'm1', setAt: hoursOn(1.2), pieces: [1, 2], anchorIds: ['belly', 'tie'], jointCount: 3 },
      { mixId: 'm2', setAt: hoursOn(24.1), pieces: [1, 2], anchorIds: [], jointCount: 0, operationId: 'coat-1' },
    ]);
    expect(state.mixes).toMatchObject([
      { mixId: 'm1', jointCount: 4, coatCount: 0, lateCount: 0, closedAt: hoursOn(1.3), lastUsedAt: hoursOn(1.2) },
      { mixId: 'm2', jointCount: 0, coatCount: 2, closedAt: null },
    ]);
  });

  it('ends the pot life of 9 g at 22 degC after 40.70, 60.84 and 102.61 minutes (pack section 3.3)', () => {
    const { potLife } = foldBatch(PLAN, history([0, OPENED], [1, mix('m1')])).mixes[0] ?? {};
    const ends = potLife?.ok ? [potLife.lowerAt, potLife.centralAt, potLife.upperAt] : [];
    const minutes = ends.map((at) => (at - hoursOn(1)) / MINUTE_MS);
    expect(minutes.map((value) => value.toFixed(2))).toEqual(['40.70', '60.84', '102.61']);
  });

  it('flags joints set after the lower end of the pot life as late, and not those at it', () => {
    const { potLife } = foldBatch(PLAN, history([0, OPENED], [1, mix('m1')])).mixes[0] ?? {};
    const lowerAt = potLife?.ok ? potLife.lowerAt : 0;
    const start = history([0, OPENED], [0, work('drill', ...ALL)], [1, mix('m1')]);
    const inTime = eventOf(4, lowerAt, joints('m1', 1));
    const late = eventOf(5, lowerAt + 1, joints('m1', 2));
    const state = foldBatch(PLAN, [...start, inTime, late]);
    expect(state.clocks.map((clock) => clock.late)).toEqual([false, true]);
    expect(state.pieces[1]?.operations[1]?.joints[0]?.set).toMatchObject({ late: true, mixId: 'm1' });
    expect(state.mixes[0]?.lateCount).toBe(2);
  });

  it('leaves scrapped pieces out of the clocks, but keeps what was done to them', () => {
    const scrap: BatchEventBody = { kind: 'pieces-scrapped', pieces: [2], reason: 'split' };
    const start = history([0, OPENED], [0, work('drill', ...ALL)], [1, mix('m1')], [1.1, joints('m1', 1, 2)]);
    const state = foldBatch(PLAN, [...start, eventOf(5, hoursOn(2), scrap)]);
    expect(state.pieces[1]).toMatchObject({ scrapped: { at: hoursOn(2), seq: 5, reason: 'split' } });
    expect(state.pieces[1]?.operations[1]).toMatchObject({ status: 'done', clockIndexes: [] });
    expect(state.clocks).toMatchObject([{ pieces: [1], jointCount: 2 }]);
    expect(state.mixes[0]?.jointCount).toBe(4);
  });

  it('finishes only when every live piece has every operation done, and reopens', () => {
    const plan = { ...PLAN, quantity: 2, operations: PLAN.operations.slice(0, 1) };
    const opened: BatchEventBody = { kind: 'batch-opened', quantity: 2 };
    const early = history([0, opened], [1, work('drill', 1)], [2, { kind: 'batch-finished' }]);
    expect(foldBatch(plan, early)).toMatchObject({
      finishedAt: null,
      anomalies: [{ seq: 3, code: 'open-pieces', pieces: [2], count: 1, applied: false }],
    });
    const scrap: BatchEventBody = { kind: 'pieces-scrapped', pieces: [2], reason: 'split' };
    const done = history([0, opened], [1, work('drill', 1)], [2, scrap], [3, { kind: 'batch-finished' }]);
    expect(foldBatch(plan, done)).toMatchObject({ finishedAt: hoursOn(3), finishedSeq: 4, anomalies: [] });
    const reopened = foldBatch(plan, [...done, eventOf(5, hoursOn(4), { kind: 'batch-reopened' })]);
    expect(reopened).toMatchObject({ finishedAt: null, finishedSeq: null, anomalies: [] });
  });

  it('holds the pieces of a mix in doubt until each is tested, redone or scrapped', () => {
    const start = history(
      [0, OPENED],
      [0, work('drill', ...ALL)],
      [1, mix('m1')],
      [1.1, joints('m1', 1, 2, 3)],
      [2, { kind: 'mix-quarantined', mixId: 'm1', reason: 'reads low' }],
    );
    const held = (...more: BatchEventBody[]) =>
      quarantinedPieces(foldBatch(PLAN, [...start, ...more.map((body, i) => eventOf(6 + i, hoursOn(3 + i), body))]));
    expect(held()).toMatchObject([{ reason: 'reads low', pieces: [1, 2, 3] }]);
    const tested: BatchEventBody = { kind: 'pieces-cleared', mixId: 'm1', pieces: [2], how: 'tested', note: '' };
    const scrap: BatchEventBody = { kind: 'pieces-scrapped', pieces: [1], reason: 'pulled to its peak' };
    expect(held(tested)).toMatchObject([{ pieces: [1, 3] }]);
    expect(held(tested, scrap)).toMatchObject([{ pieces: [3] }]);
    expect(held(tested, scrap, { ...tested, pieces: [3], how: 'redone' })).toEqual([]);
    expect(foldBatch(PLAN, [...start.slice(0, 4), eventOf(5, hoursOn(2), tested)]).anomalies).toMatchObject([
      { code: 'not-quarantined', applied: false },
    ]);
  });

  const DRILLED = history([0, OPENED], [1, work('drill', 1, 2, 3)], [1, mix('m1')], [1.5, joints('m1', 1)]);
  const scrapped: BatchEventBody = { kind: 'pieces-scrapped', pieces: [3], reason: 'split' };
  it.each<[string, [number, BatchEventBody][], object[]]>([
    ['work done twice', [[2, work('drill', 1, 4)]], [{ code: 'already-done', pieces: [1], applied: false }]],
    ['a joint set twice', [[1.6, joints('m1', 1)]], [{ code: 'already-done', pieces: [1], count: 2 }]],
    [
      'work on scrapped pieces',
      [
        [2, scrapped],
        [2, work('drill', 3)],
      ],
      [{ code: 'scrapped-pieces', pieces: [3] }],
    ],
    ['pieces that are not there', [[2, work('drill', 0, 4, 5)]], [{ code: 'unknown-pieces', pieces: [0, 5] }]],
    ['work before its needs', [[2, work('paint', 1)]], [{ code: 'before-needs', pieces: [1], applied: true }]],
    ['work recorded on a glue operation', [[2, work('set', 1)]], [{ code: 'wrong-operation-kind' }]],
    ['an operation that is not there', [[2, work('polish', 1)]], [{ code: 'unknown-operation' }]],
    ['a mix that is not there', [[2, joints('m9', 1)]], [{ code: 'unknown-mix' }]],
    ['a mix started twice', [[2, mix('m1')]], [{ code: 'duplicate-mix' }]],
    ['joints before the mixing', [[0.9, joints('m1', 2)]], [{ code: 'before-mix' }]],
    [
      'a mix closed before its last joint',
      [[1.4, { kind: 'mix-closed', mixId: 'm1' }]],
      [{ code: 'closed-before-last-use' }],
    ],
    [
      'joints after the closing',
      [
        [2, { kind: 'mix-closed', mixId: 'm1' }],
        [2.1, joints('m1', 2)],
      ],
      [{ code: 'mix-closed' }],
    ],
    [
      'joints before the closing, written down later',
      [
        [2, { kind: 'mix-closed', mixId: 'm1' }],
        [1.9, joints('m1', 2)],
      ],
      [],
    ],
    [
      'a remedy on a film that is not there',
      [[2, { kind: 'window-remedied', operationId: 'coat-1', pieces: [1] }]],
      [{ code: 'not-done' }],
    ],
    ['something before the opening', [[-1, work('drill', 4)]], [{ code: 'before-opening' }]],
    ['no time', [[Number.NaN, work('drill', 4)]], [{ code: 'bad-instant' }]],
    ['a second opening', [[2, OPENED]], [{ code: 'already-opened' }]],
    ['a correction of the opening', [[2, correct(1)]], [{ code: 'cannot-correct-opening' }]],
    ['a correction of what comes later', [[2, correct(7)]], [{ code: 'unknown-event' }]],
    [
      'a second correction',
      [
        [2, correct(4)],
        [2, correct(4)],
      ],
      [{ code: 'already-corrected', seq: 6 }],
    ],
    [
      'a note on a piece that is not there',
      [[2, { kind: 'noted', text: 'x', pieces: [9] }]],
      [{ code: 'unknown-pieces', applied: true }],
    ],
  ])('keeps %s in the history with what is wrong', (_, entries, anomalies) => {
    const events = [...DRILLED, ...entries.map(([hours, body], i) => eventOf(5 + i, hoursOn(hours), body))];
    const state = foldBatch(PLAN, events);
    expect(state.anomalies).toMatchObject(anomalies);
    expect(state.history.map(({ event }) => event.seq)).toEqual(events.map(({ seq }) => seq));
    expect(state.history.flatMap((entry) => entry.anomalies)).toEqual(state.anomalies);
  });

  it('restores what a correction took away when the correction is taken back', () => {
    const events = [...DRILLED, eventOf(5, hoursOn(2), correct(4)), eventOf(6, hoursOn(2), correct(5))];
    expect(foldBatch(PLAN, events.slice(0, 5)).pieces[0]?.operations[1]?.status).toBe('open');
    const restored = foldBatch(PLAN, events);
    expect(restored.pieces[0]?.operations[1]?.status).toBe('done');
    expect(restored.history.map(({ standing }) => standing)).toEqual([
      'stands',
      'stands',
      'stands',
      'stands',
      'void',
      'stands',
    ]);
  });

  it('says of a corrected event by which it was, and keeps what was written', () => {
    const replacement = { at: hoursOn(1.4), body: joints('m1', 2) };
    const body: BatchEventBody = { kind: 'corrected', seq: 4, reason: 'other piece', replacement };
    const state = foldBatch(PLAN, [...DRILLED, eventOf(5, hoursOn(2), body)]);
    expect(state.history[3]).toMatchObject({
      standing: 'replaced',
      correctedBySeq: 5,
      event: { body: joints('m1', 1) },
    });
    expect(state.pieces.map((piece) => piece.operations[1]?.status)).toEqual(['open', 'done', 'open', 'open']);
    expect(state.clocks).toMatchObject([{ setAt: hoursOn(1.4), pieces: [2] }]);
  });

  it('takes a batch of half a million joints in one event without failing', () => {
    const many = Array.from({ length: 500_000 }, (_, i) => ({ piece: i - 1000, anchorId: 'tie' }));
    const state = foldBatch(PLAN, [
      ...DRILLED,
      eventOf(5, hoursOn(2), { kind: 'joints-set', mixId: 'm1', joints: many }),
    ]);
    expect(state.anomalies).toMatchObject([
      { code: 'unknown-pieces', count: 499_996 },
      { code: 'already-done', pieces: [1] },
      { code: 'before-needs', pieces: [4] },
    ]);
    expect(state.anomalies[0]?.pieces.length).toBe(100);
  });
});
