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
  return newer.at.length === 0 ? known : joined([known, newer]);
}

/** Rows read at once, with a turn for other requests after each page. Chosen: some hundredths of a second. */
const PAGE_ROWS = 5_000;

async function loadRows(reader: DbReader, sensorId: string, fromMs: bigint, toMs: bigint): Promise<ReadingSeries> {
  const pages: ReadingSeries[] = [];
  for (let nextMs = fromMs; ; ) {
    // Raw, because a year of readings through the object mapper takes seconds.
    const rows = await reader.$queryRaw<{ atMs: bigint; temperatureC: number }[]>`
      SELECT "atMs", "temperatureC" FROM "Reading"
      WHERE "sensorId" = ${sensorId} AND "atMs" >= ${nextMs} AND "atMs" <= ${toMs}
      ORDER BY "atMs" LIMIT ${PAGE_ROWS}`;
    const at = Float64Array.from(rows, (row) => Number(row.atMs));
    const temperatureC = Float64Array.from(rows, (row) => Number(row.temperatureC));
    pages.push(readingSeries(at, temperatureC));
    const last = rows.at(-1);
    if (rows.length < PAGE_ROWS || last === undefined) return joined(pages);
    nextMs = BigInt(last.atMs) + 1n;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

function joined(pages: readonly ReadingSeries[]): ReadingSeries {
  return {
    at: concat(pages.map(({ at }) => at)),
    temperatureC: concat(pages.map(({ temperatureC }) => temperatureC)),
  };
}

function concat(parts: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
  let from = 0;
  for (const part of parts) {
    all.set(part, from);
    from += part.length;
  }
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
