import { describe, expect, it } from 'vitest';
import { courseReader } from '@/lib/batch/cure-reader';
import { evaluateBatch, pieceStages } from '@/lib/batch/evaluate-batch';
import type { KnownBatch, OperationStatus } from '@/lib/batch/evaluation';
import type { BatchEventBody } from '@/lib/batch/events';
import { foldBatch } from '@/lib/batch/fold-batch';
import { releaseBook } from '@/lib/batch/release-book';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import {
  batchOf,
  coat,
  EVENING_AT,
  history,
  hoursOn,
  joints,
  mix,
  OPENED,
  PLAN,
  SLOW_EPOXY,
  shopAt,
  work,
} from './workshop';

/** What stands before each operation of a piece, by operation. */
function statuses(batch: KnownBatch, at: Instant, piece: number): Record<string, OperationStatus> {
  const own = pieceStages(batch, at).filter(({ pieces }) => pieces.includes(piece));
  return Object.fromEntries(own.map(({ operationId, status }) => [operationId, status]));
}

function hoursSince(startAt: Instant, at: Instant | null): string {
  return at === null ? 'never' : ((at - startAt) / HOUR_MS).toFixed(2);
}

const SET = history([0, OPENED], [0, work('drill', 1, 2, 3, 4)], [1, mix('m1')], [1.5, joints('m1', 1, 2)]);
/** Coated at hour 24, mixed half an hour before. */
const COATED = history(
  [0, OPENED],
  [0, work('drill', 1, 2, 3, 4)],
  [1, mix('m1')],
  [1.5, joints('m1', 1, 2, 3)],
  [23.5, mix('m2', 'coat-1', 2)],
  [24, coat('m2', 1, 2)],
);

describe('evaluateBatch', () => {
  it('says the same when it is asked again and again as when it is asked for the first time', () => {
    for (const events of [SET, COATED]) {
      const asked = batchOf(events);
      const kinds = new Set<string>();
      // Forward in steps of seven minutes, then back to a time before what is recorded.
      const hours = [...Array.from({ length: 1_500 }, (_, step) => (step * 7) / 60), 24, 23.75, 1.25, 0.5];
      for (const hour of hours) {
        const evaluation = evaluateBatch(asked, hoursOn(hour));
        expect(evaluation).toEqual(evaluateBatch(batchOf(events), hoursOn(hour)));
        for (const { status } of evaluation.groups) kinds.add(status.kind);
      }
      expect(kinds).toContain('waits');
      expect(kinds).toContain('ready');
    }
  });

  it('groups pieces that stand equally', () => {
    const { groups, livePieces, donePieces } = evaluateBatch(batchOf(SET), hoursOn(2));
    expect(groups.map(({ operationId, pieces, status }) => [operationId, pieces, status.kind])).toEqual([
      ['set', [3, 4], 'ready'],
      ['coat-1', [1, 2], 'waits'],
      ['coat-1', [3, 4], 'blocked'],
      ['coat-2', [1, 2, 3, 4], 'blocked'],
      ['sand', [1, 2, 3, 4], 'blocked'],
      ['paint', [1, 2, 3, 4], 'blocked'],
    ]);
    expect([livePieces, donePieces]).toEqual([4, 0]);
  });

  it('waits 6 h at 25 degC for handling: at 15 degC 12.96 h, between 11.27 and 14.91 (factors of pack section 2.2)', () => {
    const status = statuses(batchOf(SET, 15), hoursOn(2), 1)['coat-1'];
    if (status?.kind !== 'waits') throw new Error(`expected a wait, got ${status?.kind}`);
    const { band, ...waiting } = status.waiting;
    expect(waiting).toEqual({ operationId: 'set', milestone: 'handle', mixIds: ['m1'] });
    const hours = [band.earliestAt, band.centralAt, band.latestAt].map((at) => Number(hoursSince(hoursOn(1.5), at)));
    // 6 / .5326, 6 / .4630, 6 / .4025 with the table's four digits
    expect(hours).toEqual([11.27, 12.96, 14.91]);
  });

  it('is ready from the latest instant on, not a millisecond before', () => {
    const batch = batchOf(SET, 15);
    const before = statuses(batch, hoursOn(2), 1)['coat-1'];
    const latestAt = before?.kind === 'waits' ? before.waiting.band.latestAt : null;
    if (latestAt === null) throw new Error('expected a latest instant');
    expect(statuses(batch, latestAt - 1, 1)['coat-1']?.kind).toBe('waits');
    expect(statuses(batch, latestAt, 1)['coat-1']).toEqual({ kind: 'ready', sinceAt: latestAt, closesAt: null });
  });

  it('opens the recoat window 4 h / .4025 = 9.94 h after the coat and closes it 24 h after the mixing, at 15 degC', () => {
    const batch = batchOf(COATED, 15);
    const waits = statuses(batch, hoursOn(25), 1)['coat-2'];
    const opensAt = waits?.kind === 'waits' ? waits.waiting.band.latestAt : null;
    expect(hoursSince(hoursOn(24), opensAt)).toBe('9.94');
    expect(statuses(batch, hoursOn(40), 1)['coat-2']).toEqual({
      kind: 'ready',
      sinceAt: opensAt,
      closesAt: hoursOn(23.5 + 24),
    });
    expect(statuses(batch, hoursOn(47.5) - 1, 1)['coat-2']?.kind).toBe('ready');
    expect(statuses(batch, hoursOn(47.5), 1)['coat-2']).toEqual({
      kind: 'window-closed',
      operationId: 'coat-1',
      closedAt: hoursOn(47.5),
      remedy: null,
    });
  });

  it('closes the window early in a warm shop: at 30 degC 24 h / 1.5411 = 15.57 h after the mixing', () => {
    const status = statuses(batchOf(COATED, 30), hoursOn(30), 1)['coat-2'];
    expect(status?.kind === 'ready' && hoursSince(hoursOn(23.5), status.closesAt)).toBe('15.57');
  });

  it('is ready again once the closed window was made good', () => {
    const remedy: BatchEventBody = { kind: 'window-remedied', operationId: 'coat-1', pieces: [1] };
    const events = [
      ...COATED,
      ...history([0, OPENED], [72, remedy])
        .slice(1)
        .map((e) => ({ ...e, seq: 7, key: 'r' })),
    ];
    const batch = batchOf(events, 15);
    expect(statuses(batch, hoursOn(71), 1)['coat-2']?.kind).toBe('window-closed');
    expect(statuses(batch, hoursOn(73), 1)['coat-2']).toEqual({ kind: 'ready', sinceAt: hoursOn(72), closesAt: null });
    expect(statuses(batch, hoursOn(73), 2)['coat-2']?.kind).toBe('window-closed');
  });

  it('waits for the last joint of a piece', () => {
    const events = history(
      [0, OPENED],
      [0, work('drill', 1)],
      [1, mix('m1')],
      [1.2, { kind: 'joints-set', mixId: 'm1', joints: [{ piece: 1, anchorId: 'tie' }] }],
      [9, mix('m2', 'set', 2)],
      [9.5, { kind: 'joints-set', mixId: 'm2', joints: [{ piece: 1, anchorId: 'belly' }] }],
    );
    const status = statuses(batchOf(events, 25), hoursOn(10), 1)['coat-1'];
    expect(status).toMatchObject({
      kind: 'waits',
      waiting: { mixIds: ['m1', 'm2'], band: { latestAt: hoursOn(15.5), centralAt: hoursOn(15.5) } },
    });
  });

  it('says below the least temperature that there is no end in sight, and never that it is ready', () => {
    const status = statuses(batchOf(SET, 9.9), hoursOn(900), 1)['coat-1'];
    expect(status).toMatchObject({ kind: 'waits', waiting: { band: { centralAt: null, latestAt: null } } });
  });

  const without = (...milestones: (keyof AdhesiveSheet['milestoneHours'])[]): BatchEventBody => {
    const hours = Object.entries(SLOW_EPOXY.milestoneHours).filter(([name]) => !milestones.some((m) => m === name));
    return { ...mix('m2', 'coat-1', 2), sheet: { ...SLOW_EPOXY, milestoneHours: Object.fromEntries(hours) } };
  };
  const coatedWith = (sheet: BatchEventBody) =>
    COATED.map((event) => (event.seq === 5 ? { ...event, body: sheet } : event));

  it('does not judge a wait that the sheet gives no hours for', () => {
    const batch = batchOf(coatedWith(without('recoat-from')), 20);
    expect(statuses(batch, hoursOn(30), 1)['coat-2']).toEqual({
      kind: 'not-judged',
      missing: { operationId: 'coat-1', milestone: 'recoat-from', code: 'not-on-sheet' },
    });
  });

  it('does not judge an open window whose end the sheet does not give', () => {
    const batch = batchOf(coatedWith(without('recoat-by')), 20);
    expect(statuses(batch, hoursOn(24.5), 1)['coat-2']?.kind).toBe('waits');
    expect(statuses(batch, hoursOn(40), 1)['coat-2']).toMatchObject({
      kind: 'not-judged',
      missing: { milestone: 'recoat-by' },
    });
  });

  it('does not judge a cure before the known temperatures, or of an operation that does not cure', () => {
    const early = history([-200, OPENED], [-199, work('drill', 1)], [-190, mix('m1')], [-190, joints('m1', 1)]);
    expect(statuses(batchOf(early), hoursOn(0), 1)['coat-1']).toMatchObject({ missing: { code: 'no-temperature' } });
    const drill = PLAN.operations[0];
    const sand = PLAN.operations[4];
    if (drill === undefined || sand === undefined) throw new Error('the plan is too short');
    const plan = {
      ...PLAN,
      operations: [drill, { ...sand, needs: [{ operationId: 'drill', wait: 'sand' } as const] }],
    };
    const batch = batchOf(history([0, OPENED], [0, work('drill', 1)]), 20, plan);
    expect(statuses(batch, hoursOn(1), 1)).toMatchObject({
      sand: { kind: 'not-judged', missing: { code: 'no-clock' } },
    });
  });

  it('does not let one sheet that cannot be computed with fail the batch', () => {
    const bad = { ...SLOW_EPOXY, referenceC: Number.NaN };
    const events = SET.map((event) => (event.seq === 3 ? { ...event, body: { ...mix('m1'), sheet: bad } } : event));
    const status = statuses(batchOf(events), hoursOn(2), 1)['coat-1'];
    expect(status).toMatchObject({ kind: 'not-judged', missing: { code: 'bad-sheet' } });
    const shown = JSON.stringify(evaluateBatch(batchOf(events), hoursOn(2)).groups);
    expect(shown).not.toContain('NaN');
  });

  it('tells the next release of each clock that something waits for', () => {
    const batch = batchOf(COATED, 25);
    const next = (hours: number) =>
      evaluateBatch(batch, hoursOn(hours)).nextReleases.map(({ clock, milestone, band }) => [
        clock.operationId,
        milestone,
        hoursSince(EVENING_AT, milestone === 'recoat-by' ? band.earliestAt : band.latestAt),
      ]);
    // Piece 3 is not coated yet, so its joints are still of interest; their handling was over at 7.5.
    expect(next(24)).toEqual([
      ['set', 'sand', '25.50'],
      ['coat-1', 'recoat-from', '28.00'],
    ]);
    expect(next(29)).toEqual([
      ['coat-1', 'handle', '30.00'],
      ['set', 'paint', '49.50'],
    ]);
    expect(next(31)).toEqual([
      ['coat-1', 'recoat-by', '47.50'],
      ['set', 'paint', '49.50'],
    ]);
  });

  it('computes a release once, whatever instants it is asked for', () => {
    let asked = 0;
    const reader = shopAt(15);
    const releases = releaseBook({
      release(clock, milestone) {
        asked++;
        return reader.release(clock, milestone);
      },
    });
    const batch = { plan: PLAN, state: foldBatch(PLAN, COATED), releases };
    const first = evaluateBatch(batch, hoursOn(100));
    const after = asked;
    for (let hours = 0; hours < 100; hours++) evaluateBatch(batch, hoursOn(hours));
    expect(evaluateBatch(batch, hoursOn(100))).toEqual(first);
    expect(asked).toBeLessThanOrEqual(2 * 6);
    expect(after).toBeLessThanOrEqual(asked);
  });

  it('does not judge a sheet whose law is refused', () => {
    const reader = courseReader(() => {
      throw new RangeError('no such law');
    });
    expect(reader.release({ setAt: 0, mixedAt: 0, sheet: SLOW_EPOXY }, 'sand')).toEqual({
      ok: false,
      code: 'bad-sheet',
    });
  });
});
