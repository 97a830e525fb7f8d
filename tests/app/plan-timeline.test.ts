import { describe, expect, it } from 'vitest';
import { timelineRows } from '@/app/plan/_components/timeline-rows';
import { drawnAround, panned, SPANS_MS, zoomed } from '@/app/plan/_components/timeline-scale';
import { benchSessionsOf } from '@/app/plan/_components/timeline-sessions';
import { timelineTicks } from '@/app/plan/_components/timeline-ticks';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';

const DAY_MS = 24 * HOUR_MS;
const MONDAY = Date.UTC(2026, 2, 9);

function visit(key: string, startAt: Instant, minutes: number, rest: Partial<PlannedVisit> = {}): PlannedVisit {
  const finishAt = startAt + minutes * MINUTE_MS;
  return {
    key,
    batchId: 'one',
    batchNumber: 1,
    modelName: 'Test lure',
    operationId: 'glue',
    taskKey: 'glue.0',
    operationName: 'glue',
    kind: 'glue',
    materialName: null,
    pieces: [1],
    state: 'open',
    personId: 'ada',
    startAt,
    finishAt,
    stretches: [{ startAt, endAt: finishAt }],
    setUpMinutes: 0,
    remedies: [],
    curedAt: null,
    closesAt: null,
    holds: [],
    waitsFor: null,
    ...rest,
  };
}

describe('the timeline', () => {
  it('draws nothing anew before it has moved by half a span', () => {
    const spanMs = 7 * DAY_MS;
    const at = (fromAt: Instant) => drawnAround({ fromAt, spanMs }, MONDAY);
    expect(at(MONDAY + DAY_MS)).toEqual(at(MONDAY + 3 * DAY_MS));
    expect(at(MONDAY + 4 * DAY_MS)).not.toEqual(at(MONDAY + 3 * DAY_MS));
    for (const days of [0, 1, 3.4, 3.6, 20]) {
      const { fromAt, toAt } = at(MONDAY + days * DAY_MS);
      expect(fromAt).toBeLessThanOrEqual(MONDAY + days * DAY_MS);
      expect(toAt).toBeGreaterThanOrEqual(MONDAY + days * DAY_MS + spanMs);
    }
  });

  it('zooms from a day to eight weeks, and stays within what is planned', () => {
    const most = MONDAY + 56 * DAY_MS;
    let sight = { fromAt: MONDAY + 10 * DAY_MS, spanMs: SPANS_MS[0] ?? 0 };
    const spans = SPANS_MS.map(() => {
      const { spanMs } = sight;
      sight = zoomed(sight, 1, MONDAY, most);
      return spanMs / DAY_MS;
    });
    expect(spans).toEqual([1, 2, 4, 7, 14, 28, 56]);
    expect(sight).toEqual({ fromAt: MONDAY, spanMs: 56 * DAY_MS });
    expect(panned({ fromAt: MONDAY, spanMs: DAY_MS }, 90 * DAY_MS, MONDAY, most).fromAt).toBe(most - DAY_MS);
  });

  it('marks the same instants however the stretch is cut, and names hours, days or Mondays as there is room', () => {
    const zone = 'Europe/London';
    const ticks = (from: number, to: number, pxPerDay: number) =>
      timelineTicks({ fromAt: MONDAY + from * DAY_MS, toAt: MONDAY + to * DAY_MS }, pxPerDay / DAY_MS, zone);
    const whole = ticks(0, 56, 20);
    const part = ticks(10, 30, 20);
    expect(part.every((tick) => whole.some((other) => other.at === tick.at && other.text === tick.text))).toBe(true);
    expect(
      ticks(0, 1, 1400)
        .map(({ text }) => text)
        .slice(0, 3),
    ).toEqual(['Mon 9 Mar', '01:00', '02:00']);
    expect(ticks(0, 2, 100).map(({ text }) => text)).toEqual(['Mon 9 Mar', 'Tue 10 Mar', 'Wed 11 Mar']);
    expect(
      whole
        .filter(({ text }) => text !== null)
        .map(({ text }) => text)
        .slice(0, 3),
    ).toEqual(['9 Mar', '16 Mar', '23 Mar']);
    // The clocks go forward on the 29th: midnight is an hour earlier after it.
    expect(ticks(20, 22, 100).map(({ at }) => (at - MONDAY) / HOUR_MS)).toEqual([480, 503, 527]);
  });

  it('counts what is planned of each session, of all people together', () => {
    const evening = (day: number, from: number, to: number) => ({
      startAt: MONDAY + day * DAY_MS + from * HOUR_MS,
      endAt: MONDAY + day * DAY_MS + to * HOUR_MS,
    });
    const people = [
      { id: 'ada', name: 'Ada', sessions: [evening(0, 18, 21), evening(1, 18, 21)] },
      { id: 'bo', name: 'Bo', sessions: [evening(0, 20, 22)] },
    ];
    const planned = [
      visit('a', MONDAY + 18 * HOUR_MS, 60),
      visit('b', MONDAY + 20 * HOUR_MS, 30, { personId: 'bo' }),
      visit('c', MONDAY + DAY_MS + 19 * HOUR_MS, 45),
      visit('done long ago', MONDAY - 8 * HOUR_MS, 45, { personId: null }),
    ];
    expect(
      benchSessionsOf(people, planned).map(({ benchMs, plannedMs }) =>
        [benchMs, plannedMs].map((ms) => ms / MINUTE_MS),
      ),
    ).toEqual([
      [300, 90],
      [180, 45],
    ]);
  });

  it('puts bars that overlap under each other, and tells the most places that are taken at once', () => {
    const hold = (untilAt: Instant) => ({ holds: [{ resourceId: 'rack', amount: 6, untilAt }] });
    const visits = [
      visit('a', MONDAY, 30, { curedAt: MONDAY + 8 * HOUR_MS, ...hold(MONDAY + 8 * HOUR_MS) }),
      visit('b', MONDAY + HOUR_MS, 30, hold(MONDAY + 2 * HOUR_MS)),
      visit('c', MONDAY + 8 * HOUR_MS, 30, hold(MONDAY + 9 * HOUR_MS)),
    ];
    const batches = [{ batchId: 'one', number: 1, modelName: 'Test lure', weight: 1, dueAt: null, readyAt: null }];
    const places = [{ id: 'rack', name: 'Rack', capacity: 12, changes: [] }];
    const source = { visits, batches, people: [], places };
    const [batch] = timelineRows('batches', source);
    expect(batch?.bars.map(({ visit: { key }, lane }) => `${key}${lane}`)).toEqual(['a0', 'b1', 'c0']);
    expect(batch?.bars[0]?.nextAt).toBe(MONDAY + 8 * HOUR_MS);
    expect(timelineRows('places', source)[0]?.label).toBe('Rack: 12 of 12 places taken at the most');
  });
});
