import { expect, it } from 'vitest';
import { MINUTE_MS } from '@/lib/units/instant';
import { type Db, isPostgresDb, writeTx } from '@/prisma/client';
import { findSensorVersion, loadReadingSeries, renewReadingSeries } from '@/prisma/data/cure-temperatures';
import type { ReadingRows } from '@/prisma/data/reading-part';
import { insertReadings } from '@/prisma/data/readings';
import { describeBothDatabases } from './both-databases';

const START = Date.UTC(2026, 0, 1);

function rowsOf(count: number, fromMinute = 0, valueAt = (row: number) => 18 + (row % 7) / 10): ReadingRows {
  return {
    at: Float64Array.from({ length: count }, (_, row) => START + (fromMinute + row) * MINUTE_MS),
    temperatureC: Float64Array.from({ length: count }, (_, row) => valueAt(fromMinute + row)),
    humidityPct: Float64Array.from({ length: count }, (_, row) => (row % 2 === 0 ? 45.5 : Number.NaN)),
  };
}

const insert = (db: Db, rows: ReadingRows) => writeTx(db, (tx) => insertReadings(tx, isPostgresDb(db), 'bench', rows));

describeBothDatabases('readings', (makeDb) => {
  async function shopWithSensor(): Promise<Db> {
    const db = await makeDb();
    await db.sensor.create({ data: { id: 'bench', name: 'Bench', place: '', createdAt: new Date(START) } });
    return db;
  }

  it('writes many at once and gives them back as they are', async () => {
    const db = await shopWithSensor();
    const rows = rowsOf(45_001, 0, (row) => Math.round(Math.sin(row) * 20e6) / 1e6);
    expect(await insert(db, rows)).toEqual({ inserted: 45_001, known: 0, conflicts: 0, firstConflicts: [] });
    const series = await loadReadingSeries(db, 'bench', START);
    expect(series.at).toEqual(rows.at);
    expect(series.temperatureC).toEqual(rows.temperatureC);
    expect(await db.reading.count({ where: { humidityPct: 45.5 } })).toBe(22_501);
    expect(await db.reading.count({ where: { humidityPct: null } })).toBe(22_500);
  });

  it.each([
    ['to the millisecond over years', (row: number) => row * 86_400_007 + (row % 3)],
    ['several a second', (row: number) => row * 250],
    ['one second after a gap of years', (row: number) => (row < 5 ? row * 1000 : row * 1000 + 1.5e11)],
  ])('keeps instants as they are: %s', async (_name, msOf) => {
    const db = await shopWithSensor();
    for (const humidityPct of [null, Float64Array.from({ length: 900 }, (_, row) => row / 9)]) {
      const id = humidityPct === null ? 'dry' : 'wet';
      await db.sensor.create({ data: { id, name: id, place: '', createdAt: new Date(START) } });
      const at = Float64Array.from({ length: 900 }, (_, row) => START + msOf(row));
      const temperatureC = Float64Array.from({ length: 900 }, (_, row) => -40 + (row * 125) / 899);
      const sent = { at, temperatureC, humidityPct };
      expect(await writeTx(db, (tx) => insertReadings(tx, isPostgresDb(db), id, sent))).toMatchObject({
        inserted: 900,
      });
      const kept = await db.reading.findMany({ where: { sensorId: id }, orderBy: { atMs: 'asc' } });
      expect(kept.map(({ atMs }) => Number(atMs))).toEqual(Array.from(at));
      for (const [row, reading] of kept.entries()) {
        expect(reading.temperatureC).toBeCloseTo(temperatureC[row] ?? 0, 6);
        if (humidityPct !== null) expect(reading.humidityPct).toBeCloseTo(humidityPct[row] ?? 0, 6);
      }
    }
  });

  it('counts the same reading once, keeps the first of two that differ, and says so', async () => {
    const db = await shopWithSensor();
    await insert(db, rowsOf(100));
    const again = rowsOf(120, 0, (row) => (row === 7 ? 30 : 18 + (row % 7) / 10));
    expect(await insert(db, again)).toEqual({
      inserted: 20,
      known: 99,
      conflicts: 1,
      firstConflicts: [{ at: START + 7 * MINUTE_MS, keptC: 18, sentC: 30 }],
    });
    const kept = await db.reading.findUniqueOrThrow({
      where: { sensorId_atMs: { sensorId: 'bench', atMs: BigInt(START + 7 * MINUTE_MS) } },
    });
    expect(kept.temperatureC).toBe(18);
  });

  it('raises the version of the sensor when something was added, and only then', async () => {
    const db = await shopWithSensor();
    const before = await findSensorVersion(db, 'bench');
    await insert(db, rowsOf(3));
    expect(await findSensorVersion(db, 'bench')).toBe((before ?? 0) + 1);
    await insert(db, rowsOf(3));
    expect(await findSensorVersion(db, 'bench')).toBe((before ?? 0) + 1);
  });

  it('writes nothing at all when the transaction fails behind it', async () => {
    const db = await shopWithSensor();
    const failing = writeTx(db, async (tx) => {
      await insertReadings(tx, isPostgresDb(db), 'bench', rowsOf(30_000));
      throw new Error('the power went');
    });
    await expect(failing).rejects.toThrow('the power went');
    expect(await db.reading.count()).toBe(0);
  });

  it('tells how far it is', async () => {
    const db = await shopWithSensor();
    const told: number[] = [];
    await writeTx(db, (tx) => insertReadings(tx, isPostgresDb(db), 'bench', rowsOf(50_000), (done) => told.push(done)));
    expect(told).toEqual([20_000, 40_000, 50_000]);
  });

  it('a kept series finds readings that were imported before, between and behind its own', async () => {
    const db = await shopWithSensor();
    await insert(db, rowsOf(10, 100));
    const known = await loadReadingSeries(db, 'bench', START);
    for (const [count, fromMinute] of [
      [5, 200],
      [5, 0],
      [5, 112],
    ] as const) {
      await insert(db, rowsOf(count, fromMinute));
      expect(await renewReadingSeries(db, 'bench', START, known)).toEqual(await loadReadingSeries(db, 'bench', START));
    }
  });
});
