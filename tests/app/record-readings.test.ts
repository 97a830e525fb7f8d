import { expect, it } from 'vitest';
import { recordReadings } from '@/app/_commands/record-readings';
import type { ReadingInput } from '@/lib/contracts/readings';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { describeBothDatabases } from '../prisma/both-databases';

const NOW = Date.UTC(2026, 2, 10, 18);
const reading = (minute: number, temperatureC: number, more: Partial<ReadingInput> = {}): ReadingInput => ({
  at: NOW + minute * MINUTE_MS,
  temperatureC,
  humidityPct: null,
  sensor: null,
  ...more,
});

describeBothDatabases('readings sent by a logger', (makeDb) => {
  async function shopWithSensor(): Promise<Db> {
    const db = await makeDb();
    await db.sensor.create({ data: { id: 'bench', name: 'Bench', place: '', createdAt: new Date(NOW) } });
    return db;
  }

  const send = (db: Db, ...readings: ReadingInput[]) => recordReadings(db, { sensorId: 'bench', readings, nowAt: NOW });

  it('counts a reading once, however often and in whatever order it is sent', async () => {
    const db = await shopWithSensor();
    expect(await send(db, reading(5, 17), reading(0, 18), reading(5, 17))).toMatchObject({ accepted: 2, repeated: 1 });
    expect(await send(db, reading(0, 18), reading(5, 17))).toMatchObject({ accepted: 0, repeated: 2, conflicts: 0 });
    expect(await db.reading.count()).toBe(2);
  });

  it('keeps the first of two that differ, within a request and after it', async () => {
    const db = await shopWithSensor();
    expect(await send(db, reading(0, 18), reading(0, 19))).toMatchObject({
      accepted: 1,
      conflicts: 1,
      firstConflicts: [{ at: NOW, keptC: 18, sentC: 19 }],
    });
    expect(await send(db, reading(0, 20))).toMatchObject({
      accepted: 0,
      conflicts: 1,
      firstConflicts: [{ at: NOW, keptC: 18, sentC: 20 }],
    });
  });

  it('twenty senders at once with the same readings: each is there once', async () => {
    const db = await shopWithSensor();
    const readings = Array.from({ length: 50 }, (_, minute) => reading(minute, 17 + minute / 10));
    const results = await Promise.all(Array.from({ length: 20 }, () => send(db, ...readings)));
    const accepted = results.reduce((sum, result) => sum + (result.ok ? result.accepted : 0), 0);
    expect(accepted).toBe(50);
    expect(await db.reading.count()).toBe(50);
  });

  it('takes in nothing of a list with a reading of another sensor, or more than a day ahead', async () => {
    const db = await shopWithSensor();
    expect(await send(db, reading(0, 18), reading(1, 18, { sensor: 'Shelf' }))).toMatchObject({
      ok: false,
      code: 'other-sensor',
      index: 1,
    });
    const dayAhead = (24 * HOUR_MS) / MINUTE_MS;
    expect(await send(db, reading(0, 18), reading(dayAhead + 1, 18))).toMatchObject({
      ok: false,
      code: 'in-future',
      index: 1,
    });
    expect(await db.reading.count()).toBe(0);
    expect(await send(db, reading(0, 18, { sensor: 'Bench' }), reading(dayAhead, 18))).toMatchObject({
      ok: true,
      accepted: 2,
    });
  });

  it('says when the sensor is gone', async () => {
    const db = await makeDb();
    expect(await send(db, reading(0, 18))).toEqual({ ok: false, code: 'no-sensor' });
  });
});
