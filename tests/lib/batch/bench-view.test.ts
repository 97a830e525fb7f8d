import { describe, expect, it } from 'vitest';
import type { BenchBatch } from '@/lib/batch/bench-entries';
import { BENCH_LIMITS, benchView } from '@/lib/batch/bench-view';
import { evaluateBatch } from '@/lib/batch/evaluate-batch';
import type { BatchEvent } from '@/lib/batch/events';
import type { BatchPlan } from '@/lib/batch/plan';
import type { Instant } from '@/lib/units/instant';
import { batchOf, coat, history, hoursOn, joints, mix, OPENED, PLAN, SLOW_EPOXY, work } from './workshop';

function benchBatch(
  batchId: string,
  events: readonly BatchEvent[],
  nowAt: Instant,
  { dueOn = null, plan = PLAN }: { readonly dueOn?: string | null; readonly plan?: BatchPlan } = {},
): BenchBatch {
  const batch = batchOf(events, 25, plan);
  return { ...batch, batchId, number: Number(batchId.slice(1)), dueOn, evaluation: evaluateBatch(batch, nowAt) };
}

const DRILL_ALL = work('drill', 1, 2, 3, 4);
/** Pieces 1 and 2 coated at `hours`, 3 and 4 not set. */
const coatedAt = (hours: number) =>
  history(
    [0, OPENED],
    [0, DRILL_ALL],
    [0, mix('m1')],
    [0.2, joints('m1', 1, 2)],
    [0.3, { kind: 'mix-closed', mixId: 'm1' }],
    [hours, mix('m2', 'coat-1', 2)],
    [hours, coat('m2', 1, 2)],
    [hours, { kind: 'mix-closed', mixId: 'm2' }],
  );

describe('benchView', () => {
  it('puts windows that close first, then due dates, then the longest waiting', () => {
    const nowAt = hoursOn(24);
    const view = benchView(
      [
        benchBatch('b1', history([3, OPENED]), nowAt),
        benchBatch('b2', history([1, OPENED]), nowAt),
        benchBatch('b3', history([5, OPENED]), nowAt, { dueOn: '2026-03-01' }),
        benchBatch('b4', history([5, OPENED]), nowAt, { dueOn: '2026-02-20' }),
        benchBatch('b5', coatedAt(8), nowAt),
        benchBatch('b6', coatedAt(7), nowAt, { dueOn: '2026-05-01' }),
      ],
      nowAt,
    );
    expect(view.actions.shown.map(({ batchId, operationId, urgency }) => [batchId, operationId, urgency])).toEqual([
      ['b6', 'coat-2', { kind: 'window-closing', closesAt: hoursOn(31) }],
      ['b5', 'coat-2', { kind: 'window-closing', closesAt: hoursOn(32) }],
      ['b4', 'drill', { kind: 'due', dueOn: '2026-02-20' }],
      ['b3', 'drill', { kind: 'due', dueOn: '2026-03-01' }],
      ['b6', 'set', { kind: 'due', dueOn: '2026-05-01' }],
      ['b5', 'set', { kind: 'waiting', sinceAt: hoursOn(0) }],
      ['b2', 'drill', { kind: 'waiting', sinceAt: hoursOn(1) }],
      ['b1', 'drill', { kind: 'waiting', sinceAt: hoursOn(3) }],
    ]);
    expect(view.actions.shown[0]).toMatchObject({ pieces: [1, 2], recordedAs: 'coat', runningMixIds: [] });
  });

  it('shows running mixes by the end of their pot life, and which are past it', () => {
    const running = (hours: number, sheet = SLOW_EPOXY) =>
      history([0, OPENED], [0, DRILL_ALL], [hours, { ...mix('m1'), sheet }], [hours, joints('m1', 1)]);
    const nowAt = hoursOn(1.5);
    const view = benchView(
      [
        benchBatch('b1', running(1.2), nowAt),
        benchBatch('b2', running(0.5), nowAt),
        benchBatch('b3', running(0.1, { ...SLOW_EPOXY, potLife: [] }), nowAt),
        benchBatch('b4', coatedAt(1), nowAt),
      ],
      nowAt,
    );
    expect(view.runningMixes.shown.map(({ batchId, past, jointCount }) => [batchId, past, jointCount])).toEqual([
      ['b2', true, 2],
      ['b1', false, 2],
      ['b3', false, 2],
    ]);
    expect(view.runningMixes.shown[2]?.potLife).toEqual({ ok: false, code: 'no-pot-life' });
    expect(view.actions.shown.find(({ batchId }) => batchId === 'b1')).toMatchObject({
      operationId: 'set',
      pieces: [2, 3, 4],
      runningMixIds: ['m1'],
    });
  });

  it('merges joints of one mix that were set over some minutes into the release of the last', () => {
    const events = history(
      [0, OPENED],
      [0, DRILL_ALL],
      [1, mix('m1')],
      [1.1, joints('m1', 2)],
      [1.3, joints('m1', 1, 3)],
    );
    const view = benchView([benchBatch('b1', events, hoursOn(2))], hoursOn(2));
    expect(view.releases).toEqual({
      more: 0,
      shown: [
        {
          batchId: 'b1',
          mixId: 'm1',
          mixNumber: 1,
          operationId: 'set',
          milestone: 'handle',
          band: { earliestAt: hoursOn(7.3), centralAt: hoursOn(7.3), latestAt: hoursOn(7.3) },
          pieces: [1, 2, 3],
        },
      ],
    });
    expect(view.held.shown).toMatchObject([
      {
        operationId: 'coat-1',
        pieces: [1, 2, 3],
        status: { kind: 'waits', waiting: { band: { latestAt: hoursOn(7.3) } } },
      },
    ]);
  });

  it('orders what is held: closed windows, then what cannot be judged, then waits by their hour', () => {
    const { handle: _, ...milestoneHours } = SLOW_EPOXY.milestoneHours;
    const unjudged = history(
      [0, OPENED],
      [0, DRILL_ALL],
      [1, { ...mix('m1'), sheet: { ...SLOW_EPOXY, milestoneHours } }],
      [1, joints('m1', 1)],
    );
    const nowAt = hoursOn(40);
    const view = benchView(
      [
        benchBatch('b1', coatedAt(39), nowAt),
        benchBatch('b2', unjudged, nowAt),
        benchBatch('b3', coatedAt(38), nowAt),
        benchBatch('b4', coatedAt(10), nowAt),
      ],
      nowAt,
    );
    expect(view.held.shown.map(({ batchId, status }) => [batchId, status.kind])).toEqual([
      ['b4', 'window-closed'],
      ['b2', 'not-judged'],
      ['b3', 'waits'],
      ['b1', 'waits'],
    ]);
  });

  it('names batches that are to be finished, and passes over those that are', () => {
    const plan = { ...PLAN, operations: PLAN.operations.slice(0, 1) };
    const done = history([0, OPENED], [1, DRILL_ALL]);
    const finished = history([0, OPENED], [1, DRILL_ALL], [2, { kind: 'batch-finished' }]);
    const scrapped = history([0, OPENED], [1, { kind: 'pieces-scrapped', pieces: [1, 2, 3, 4], reason: 'split' }]);
    const view = benchView(
      [
        benchBatch('b1', done, hoursOn(3), { plan }),
        benchBatch('b2', finished, hoursOn(3), { plan }),
        benchBatch('b3', scrapped, hoursOn(3), { plan }),
        benchBatch('b4', history([0, OPENED]), hoursOn(3), { plan }),
      ],
      hoursOn(3),
    );
    expect(view.toFinish.shown).toEqual(['b1', 'b3']);
    expect(view.actions.shown.map(({ batchId }) => batchId)).toEqual(['b4']);
  });

  it('stays bounded with a thousand batches and counts the rest', () => {
    const one = benchBatch('b1', coatedAt(8), hoursOn(24));
    const view = benchView(
      Array.from({ length: 1000 }, () => one),
      hoursOn(24),
    );
    expect(view.actions.shown.length).toBe(BENCH_LIMITS.actions);
    expect(view.actions.more).toBe(2000 - BENCH_LIMITS.actions);
    expect(benchView([], hoursOn(24))).toMatchObject({ actions: { shown: [], more: 0 }, held: { shown: [], more: 0 } });
  });
});
