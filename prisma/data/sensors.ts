import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';
import { findNewestReading } from '@/prisma/data/cure-temperatures';

export interface Sensor {
  readonly id: string;
  readonly name: string;
  readonly place: string;
}

export interface SensorLine extends Sensor {
  readonly newest: { readonly at: Instant; readonly temperatureC: number; readonly humidityPct: number | null } | null;
}

/** All sensors by name. */
export async function listSensors(reader: DbReader): Promise<Sensor[]> {
  return reader.sensor.findMany({ select: { id: true, name: true, place: true }, orderBy: { name: 'asc' } });
}

/** All sensors with their newest readings. */
export async function listSensorLines(reader: DbReader): Promise<SensorLine[]> {
  const lines: SensorLine[] = [];
  for (const sensor of await listSensors(reader)) {
    lines.push({ ...sensor, newest: await findNewestReading(reader, sensor.id) });
  }
  return lines;
}

/** Whether another sensor than `exceptId` has this name, in whatever case. */
export async function isSensorNameTaken(reader: DbReader, name: string, exceptId: string | null): Promise<boolean> {
  const folded = name.toLocaleLowerCase('en');
  const sensors = await listSensors(reader);
  return sensors.some((sensor) => sensor.id !== exceptId && sensor.name.toLocaleLowerCase('en') === folded);
}

/** What the readings of a stretch of time come to. */
export interface ReadingBucket {
  readonly firstAt: Instant;
  readonly lastAt: Instant;
  readonly lowestC: number;
  readonly highestC: number;
  readonly count: number;
}

interface BucketRow {
  readonly firstMs: bigint | number;
  readonly lastMs: bigint | number;
  readonly lowest: number;
  readonly highest: number;
  readonly count: bigint | number;
}

/**
 * A sensor's readings from `fromAt` to `toAt`, put together by stretches of `bucketMs`, in order; stretches without
 * readings are left out. The database sums, so that a log of every second costs no more to draw than one of an hour.
 */
export async function listReadingBuckets(
  reader: DbReader,
  sensorId: string,
  span: { readonly fromAt: Instant; readonly toAt: Instant; readonly bucketMs: number },
): Promise<ReadingBucket[]> {
  const { fromAt, toAt, bucketMs } = span;
  const rows = await reader.$queryRaw<BucketRow[]>`
    SELECT min("atMs") AS "firstMs", max("atMs") AS "lastMs",
      min("temperatureC") AS lowest, max("temperatureC") AS highest, count(*) AS count
    FROM "Reading"
    WHERE "sensorId" = ${sensorId} AND "atMs" >= ${BigInt(fromAt)} AND "atMs" < ${BigInt(toAt)}
    GROUP BY "atMs" / ${BigInt(bucketMs)} ORDER BY 1`;
  return rows.map((row) => ({
    firstAt: Number(row.firstMs),
    lastAt: Number(row.lastMs),
    lowestC: Number(row.lowest),
    highestC: Number(row.highest),
    count: Number(row.count),
  }));
}
