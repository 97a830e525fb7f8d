import { describe, expect, test } from 'vitest';
import { decideEvent } from '@/lib/batch/decide-event';
import { storedBodySchema } from '@/lib/contracts/batch-event';
import { clientKeySchema, idSchema } from '@/lib/contracts/plain-text';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { daysAgo } from '@/prisma/seed/demo/demo-times';
import { DEMO_ZONE, demoAt } from './demo-plan';

// Weeks with a clock change in Chicago (2026-03-08 and 2026-11-01) and one without, every two or every thirteen hours.
const WEEKS = ['2026-03-04T06:00:00Z', '2026-10-28T05:00:00Z', '2026-06-10T05:00:00Z'];
const STEP_H = process.env.SOAK === '1' ? 2 : 13;
const LONG_MS = 300_000;
const LOADED_AT = WEEKS.flatMap((week) =>
  Array.from(
    { length: Math.ceil((14 * 24) / STEP_H) },
    (_, index) => Date.parse(week) + index * STEP_H * HOUR_MS + 123_456,
  ),
);

test(
  `whenever it is loaded, every demo event is one the bench would have taken in (${LOADED_AT.length} moments)`,
  () => {
    for (const nowAt of LOADED_AT) {
      const { batches, known } = demoAt(nowAt);
      for (const batch of batches) {
        for (const [index, event] of batch.events.entries()) {
          const where = `loaded ${new Date(nowAt).toISOString()}, batch ${batch.number}, event ${event.seq}`;
          const decision = decideEvent(known(batch, batch.events.slice(0, index)), event, event.recordedAt);
          expect(decision, where).toMatchObject({ ok: true });
          expect(event.recordedAt, where).toBeLessThanOrEqual(nowAt);
          const before = batch.events[index - 1];
          if (before !== undefined) expect(event.at, where).toBeGreaterThanOrEqual(before.at);
        }
        expect(known(batch).state.anomalies).toEqual([]);
      }
    }
  },
  LONG_MS,
);

test(
  'whenever it is loaded, each batch stands at its stage',
  () => {
    for (const nowAt of LOADED_AT) {
      const where = `loaded ${new Date(nowAt).toISOString()}`;
      const { batches, known, groupsOf, times } = demoAt(nowAt);
      const state = (number: number) => {
        const batch = batches.find((other) => other.number === number);
        if (batch === undefined) throw new Error(`no batch ${number}`);
        return known(batch).state;
      };
      expect(state(21).finishedAt, where).not.toBeNull();
      expect(groupsOf(21), where).toEqual([]);

      const topcoat = groupsOf(22).filter(({ operationId }) => operationId === 'demo-plumbline-a-top-1');
      expect(
        topcoat.map(({ status }) => status.kind),
        where,
      ).toEqual(['ready', 'ready']);
      expect(
        topcoat.flatMap(({ pieces }) => pieces),
        where,
      ).toHaveLength(17);
      expect(
        state(22).mixes.map((mix) => [mix.massG, mix.lateCount]),
        where,
      ).toEqual([
        [12, 0],
        [12.4, 1],
        [3, 0],
        [3, 0],
        [3, 0],
        [22, 0],
      ]);

      expect(groupsOf(23)[0], where).toMatchObject({
        operationId: 'demo-mallet-b-top-2',
        status: { kind: 'ready', closesAt: times.windowClosesAt },
      });

      const [flush] = groupsOf(24);
      expect(flush, where).toMatchObject({
        operationId: 'demo-sawhorse-a-flush',
        status: { kind: 'waits', waiting: { milestone: 'sand' } },
      });
      if (flush?.status.kind === 'waits') {
        expect(flush.status.waiting.band.latestAt ?? 0, where).toBeGreaterThan(nowAt + 2 * HOUR_MS);
      }

      const running = state(25).mixes.at(-1);
      expect(running?.closedAt, where).toBeNull();
      expect(running?.potLife.ok, where).toBe(true);
      if (running?.potLife.ok) {
        expect(running.potLife.lowerAt - nowAt, where).toBeGreaterThan(12 * MINUTE_MS);
        expect(running.potLife.lowerAt - nowAt, where).toBeLessThan(60 * MINUTE_MS);
      }
      expect(groupsOf(25)[0], where).toMatchObject({
        operationId: 'demo-kettle-a-glue',
        status: { kind: 'ready' },
        pieces: [5, 6, 7, 8, 9, 10],
      });

      expect(groupsOf(26)[0], where).toMatchObject({
        operationId: 'demo-plumbline-a-shape',
        status: { kind: 'ready' },
      });
      expect(groupsOf(26)[0]?.pieces, where).toHaveLength(24);
    }
  },
  LONG_MS,
);

describe('loaded on a Tuesday at 17:00', () => {
  const nowAt = Date.parse('2026-02-10T23:00:00Z');
  const { batches, readings, times } = demoAt(nowAt);

  test('the window closes this evening at nine', () => {
    expect(wallTimeAt(times.windowClosesAt, DEMO_ZONE)).toMatchObject({ day: '2026-02-10', minuteOfDay: 21 * 60 });
  });

  test('the cold night moves the hour of sanding', () => {
    const sandingAt = (readingsUntilAt: number) => {
      const { batches: same, known: knownWith } = demoAt(nowAt, readingsUntilAt);
      const batch = same.find(({ number }) => number === 24);
      const clock = batch && knownWith(batch).state.clocks[0];
      const release = batch && clock && knownWith(batch).releases.release(clock, 'sand');
      if (!release?.ok || release.band.centralAt === null) throw new Error('no release of batch 24');
      return release.band.centralAt;
    };
    const evening = daysAgo(times, times.glueUpDaysAgo, '22:00');
    expect(sandingAt(nowAt) - sandingAt(evening)).toBeGreaterThan(3 * HOUR_MS);
  });

  test('two weeks of readings every 15 minutes, with a cold night and one gap', () => {
    const temperatures = readings.map(({ temperatureC }) => temperatureC);
    expect(Math.min(...temperatures)).toBeLessThan(8);
    expect(Math.max(...temperatures)).toBeLessThan(22);
    expect(readings.length).toBe(14 * 96 - 14);
    const steps = readings.slice(1).map((reading, index) => reading.at - (readings[index]?.at ?? 0));
    expect(steps.filter((step) => step !== 15 * MINUTE_MS)).toEqual([15 * 15 * MINUTE_MS]);
    expect(nowAt - (readings.at(-1)?.at ?? 0)).toBeLessThan(15 * MINUTE_MS);
    for (const { humidityPct } of readings) {
      expect(humidityPct).toBeGreaterThan(25);
      expect(humidityPct).toBeLessThan(95);
    }
  });

  test('the same moment gives the same demo', () => {
    expect(demoAt(nowAt).batches).toEqual(batches);
    expect(demoAt(nowAt).readings).toEqual(readings);
  });

  test('bodies, keys and ids are such as the app itself writes', () => {
    for (const batch of batches) {
      expect(idSchema.safeParse(batch.id).success).toBe(true);
      for (const { body, key } of batch.events) {
        expect(storedBodySchema.parse(body)).toEqual(body);
        expect(clientKeySchema.safeParse(key).success, key).toBe(true);
      }
    }
  });
});
