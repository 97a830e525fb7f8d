import { describe, expect, it } from 'vitest';
import { timelineOf } from '@/lib/batch/timeline';
import { batchOf, coat, history, hoursOn, joints, mix, OPENED, work } from './workshop';

describe('timelineOf', () => {
  it('has nothing to draw before the first mix', () => {
    expect(timelineOf(batchOf(history([0, OPENED])))).toEqual({ fromAt: null, toAt: null, mixes: [], cures: [] });
  });

  it('draws mixes through their pot life and cures through their milestones, at 25 degC by the hours of the sheet', () => {
    const events = history(
      [0, OPENED],
      [0, work('drill', 1, 2, 3, 4)],
      [1, mix('m1')],
      [1.5, joints('m1', 1, 2)],
      [1.6, { kind: 'mix-closed', mixId: 'm1' }],
      [8, mix('m2', 'coat-1', 2)],
      [8.25, coat('m2', 1)],
    );
    const timeline = timelineOf(batchOf(events, 25));
    expect(timeline.mixes).toMatchObject([
      { mixNumber: 1, mixedAt: hoursOn(1), closedAt: hoursOn(1.6), potLife: { ok: true } },
      { mixNumber: 2, mixedAt: hoursOn(8), closedAt: null },
    ]);
    const marks = timeline.cures.map(({ operationId, setAt, marks: drawn, recoatWindow }) => ({
      operationId,
      setAt,
      drawn: drawn.map((mark) => [mark.milestone, mark.ok && mark.band.latestAt]),
      recoatWindow,
    }));
    expect(marks).toEqual([
      {
        operationId: 'set',
        setAt: hoursOn(1.5),
        drawn: [
          ['handle', hoursOn(7.5)],
          ['sand', hoursOn(25.5)],
          ['paint', hoursOn(49.5)],
          ['pull-test', hoursOn(169.5)],
        ],
        recoatWindow: { opensAt: hoursOn(5.5), closesAt: hoursOn(25) },
      },
      {
        operationId: 'coat-1',
        setAt: hoursOn(8.25),
        drawn: [
          ['handle', hoursOn(14.25)],
          ['sand', hoursOn(32.25)],
          ['paint', hoursOn(56.25)],
          ['pull-test', hoursOn(176.25)],
        ],
        recoatWindow: { opensAt: hoursOn(12.25), closesAt: hoursOn(32) },
      },
    ]);
    expect([timeline.fromAt, timeline.toAt]).toEqual([hoursOn(1), hoursOn(176.25)]);
  });
});
