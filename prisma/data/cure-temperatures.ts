import { type ReadingSeries, readingSeries } from '@/lib/cure/reading-series';
import type { Instant } from '@/lib/units/instant';
import type { DbReader } from '@/prisma/client';

/** Version of a sensor's readings, raised by every write of them; null when there is no such sensor. */
export async function findSensorVersion(reader: DbReader, sensorId: string): Promise<number | null> {
  const row = await reader.sensor.findUnique({ where: { id: sensorId }, select: { version: true } });
  return row?.version ?? null;
}

/** A sensor's readings from `fromAt` on, with the one before it, up to `toAt` where that is given. */
export async function loadReadingSeries(
  reader: DbReader,
  sensorId: string,
  fromAt: Instant,
  toAt: Instant = Number.MAX_SAFE_INTEGER,
): Promise<ReadingSeries> {
  const before = await reader.reading.findFirst({
    where: { sensorId, atMs: { lt: BigInt(fromAt) } },
    select: { atMs: true },
    orderBy: { atMs: 'desc' },
  });
  return loadRows(reader, sensorId, before?.atMs ?? BigInt(fromAt), BigInt(toAt));
}

/**
 * A series that was loaded before, brought up to date. Usually only newer readings were added, and only those are
 * loaded; when the count of the readings it had differs, some came in between, and all of it is loaded again.
 */
export async function renewReadingSeries(
  reader: DbReader,
  sensorId: string,
  fromAt: Instant,
  known: ReadingSeries,
): Promise<ReadingSeries> {
  const firstAt = known.at[0];
  const lastAt = known.at.at(-1);
  if (firstAt === undefined || lastAt === undefined) return loadReadingSeries(reader, sensorId, fromAt);
  // From `fromAt` on: an older log may have been imported in front of all the readings there were.
  const count = await reader.reading.count({
    where: { sensorId, atMs: { gte: BigInt(Math.min(firstAt, fromAt)), lte: BigInt(lastAt) } },
  });
  if (count !== known.at.length) return loadReadingSeries(reader, sensorId, fromAt);
  const newer = await loadRows(reader, sensorId, BigInt(lastAt + 1), BigInt(Number.MAX_SAFE_INTEGER));
  return joined(known, newer);
}

/** Rows read at once: bounds the memory of a year of one-minute readings. Chosen. */
const PAGE_ROWS = 50_000;

async function loadRows(reader: DbReader, sensorId: string, fromMs: bigint, toMs: bigint): Promise<ReadingSeries> {
  let series: ReadingSeries = readingSeries([], []);
  for (let nextMs = fromMs; ; ) {
    // Raw, because a year of readings through the object mapper takes seconds.
    const rows = await reader.$queryRaw<{ atMs: bigint; temperatureC: number }[]>`
      SELECT "atMs", "temperatureC" FROM "Reading"
      WHERE "sensorId" = ${sensorId} AND "atMs" >= ${nextMs} AND "atMs" <= ${toMs}
      ORDER BY "atMs" LIMIT ${PAGE_ROWS}`;
    const at = Float64Array.from(rows, (row) => Number(row.atMs));
    const temperatureC = Float64Array.from(rows, (row) => Number(row.temperatureC));
    series = joined(series, readingSeries(at, temperatureC));
    const last = rows.at(-1);
    if (rows.length < PAGE_ROWS || last === undefined) return series;
    nextMs = BigInt(last.atMs) + 1n;
  }
}

function joined(first: ReadingSeries, second: ReadingSeries): ReadingSeries {
  if (first.at.length === 0) return second;
  if (second.at.length === 0) return first;
  return { at: concat(first.at, second.at), temperatureC: concat(first.temperatureC, second.temperatureC) };
}

function concat(first: Float64Array, second: Float64Array): Float64Array {
  const all = new Float64Array(first.length + second.length);
  all.set(first);
  all.set(second, first.length);
  return all;
}

/** The newest reading of a sensor, or null. */
export async function findNewestReading(
  reader: DbReader,
  sensorId: string,
): Promise<{ readonly at: Instant; readonly temperatureC: number; readonly humidityPct: number | null } | null> {
  const row = await reader.reading.findFirst({
    where: { sensorId },
    select: { atMs: true, temperatureC: true, humidityPct: true },
    orderBy: { atMs: 'desc' },
  });
  return row === null ? null : { at: Number(row.atMs), temperatureC: row.temperatureC, humidityPct: row.humidityPct };
}
