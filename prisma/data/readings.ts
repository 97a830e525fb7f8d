import type { Instant } from '@/lib/units/instant';
import type { DbReader, Tx } from '@/prisma/client';

/** Readings of one sensor as plain columns: instants strictly rising, NaN where the humidity is not known. */
export interface ReadingRows {
  readonly at: Float64Array;
  readonly temperatureC: Float64Array;
  readonly humidityPct: Float64Array | null;
}

/** A reading that was sent for an instant at which another one is kept. */
export interface ReadingConflict {
  readonly at: Instant;
  readonly keptC: number;
  readonly sentC: number;
}

/** What became of readings: inserted + known + conflicts = sent. */
export interface InsertedReadings {
  readonly inserted: number;
  /** Readings that are there already, with the same value. */
  readonly known: number;
  /** Readings of instants at which another value is kept: the first one stays. */
  readonly conflicts: number;
  readonly firstConflicts: readonly ReadingConflict[];
}

/** Conflicts that are listed; all are counted. Chosen. */
const LISTED_CONFLICTS = 50;

/** Rows of one statement: some 600 kB of JSON. Chosen; neither half nor double is quicker. */
const CHUNK_ROWS = 20_000;

/** Values nearer than this are the same: the rest is rounding. degC and percent. Chosen. */
const SAME_WITHIN = 1e-6;

/**
 * Adds readings of a sensor; those of instants that it has already are left as they are, and counted. Raises the
 * sensor's version when anything was added. `isPostgres`: which of the two ways of writing many rows at once to use.
 * `onProgress` is told after each part how many of the readings were dealt with.
 */
export async function insertReadings(
  tx: Tx,
  isPostgres: boolean,
  sensorId: string,
  rows: ReadingRows,
  onProgress: (done: number) => void = () => {},
): Promise<InsertedReadings> {
  const total = rows.at.length;
  const firstAt = rows.at[0];
  const lastAt = rows.at.at(-1);
  if (firstAt === undefined || lastAt === undefined) return { inserted: 0, known: 0, conflicts: 0, firstConflicts: [] };
  const hasSome = await hasReadingsWithin(tx, sensorId, firstAt, lastAt);
  let inserted = 0;
  let conflicts = 0;
  const firstConflicts: ReadingConflict[] = [];
  for (let from = 0; from < total; from += CHUNK_ROWS) {
    const to = Math.min(from + CHUNK_ROWS, total);
    const part = isPostgres ? postgresPart(rows, from, to) : jsonPart(rows, from, to);
    if (hasSome) {
      const found = await findConflicts(tx, sensorId, part);
      conflicts += found.length;
      firstConflicts.push(...found.slice(0, LISTED_CONFLICTS - firstConflicts.length));
    }
    inserted += await insertPart(tx, sensorId, part);
    onProgress(to);
    // A long write lets other requests be answered in between.
    await new Promise((resolve) => setImmediate(resolve));
  }
  if (inserted > 0) await tx.sensor.update({ where: { id: sensorId }, data: { version: { increment: 1 } } });
  return { inserted, known: total - inserted - conflicts, conflicts, firstConflicts };
}

async function hasReadingsWithin(reader: DbReader, sensorId: string, fromAt: Instant, toAt: Instant): Promise<boolean> {
  const found = await reader.reading.findFirst({
    where: { sensorId, atMs: { gte: BigInt(fromAt), lte: BigInt(toAt) } },
    select: { atMs: true },
  });
  return found !== null;
}

/** Some readings in the form that one statement takes: JSON for SQLite, lists for Postgres. */
type Part =
  | { readonly engine: 'sqlite'; readonly json: string }
  | { readonly engine: 'postgres'; readonly at: string; readonly temperatureC: string; readonly humidityPct: string };

function jsonPart({ at, temperatureC, humidityPct }: ReadingRows, from: number, to: number): Part {
  let json = '';
  for (let row = from; row < to; row += 1) {
    const humidity = humidityPct?.[row] ?? Number.NaN;
    json += `${json === '' ? '[' : ','}[${at[row]},${temperatureC[row]}${Number.isNaN(humidity) ? '' : `,${humidity}`}]`;
  }
  return { engine: 'sqlite', json: `${json}]` };
}

function postgresPart({ at, temperatureC, humidityPct }: ReadingRows, from: number, to: number): Part {
  const humidities = humidityPct?.subarray(from, to) ?? new Float64Array(to - from).fill(Number.NaN);
  return {
    engine: 'postgres',
    at: at.subarray(from, to).join(),
    temperatureC: temperatureC.subarray(from, to).join(),
    humidityPct: humidities.join(),
  };
}

function insertPart(tx: Tx, sensorId: string, part: Part): Promise<number> {
  if (part.engine === 'sqlite') {
    return tx.$executeRaw`
      INSERT OR IGNORE INTO "Reading" ("sensorId", "atMs", "temperatureC", "humidityPct")
      SELECT ${sensorId}, value ->> 0, value ->> 1, value ->> 2 FROM json_each(${part.json})`;
  }
  return tx.$executeRaw`
    INSERT INTO "Reading" ("sensorId", "atMs", "temperatureC", "humidityPct")
    SELECT ${sensorId}, at, c, nullif(pct, 'NaN') FROM unnest(
      string_to_array(${part.at}, ',')::bigint[],
      string_to_array(${part.temperatureC}, ',')::float8[],
      string_to_array(${part.humidityPct}, ',')::float8[]
    ) AS sent (at, c, pct)
    ON CONFLICT DO NOTHING`;
}

interface ConflictRow {
  readonly at: bigint | number;
  readonly kept: number;
  readonly sent: number;
}

async function findConflicts(tx: Tx, sensorId: string, part: Part): Promise<ReadingConflict[]> {
  const rows =
    part.engine === 'sqlite'
      ? await tx.$queryRaw<ConflictRow[]>`
          SELECT kept."atMs" AS at, kept."temperatureC" AS kept, sent.value ->> 1 AS sent
          FROM json_each(${part.json}) AS sent
          CROSS JOIN "Reading" AS kept -- "cross" keeps SQLite from reading the whole table first
          WHERE kept."sensorId" = ${sensorId} AND kept."atMs" = CAST(sent.value ->> 0 AS INTEGER)
            AND (abs(kept."temperatureC" - (sent.value ->> 1)) > ${SAME_WITHIN}
              OR abs(kept."humidityPct" - (sent.value ->> 2)) > ${SAME_WITHIN})`
      : await tx.$queryRaw<ConflictRow[]>`
          SELECT kept."atMs" AS at, kept."temperatureC" AS kept, sent.c AS sent
          FROM unnest(
            string_to_array(${part.at}, ',')::bigint[],
            string_to_array(${part.temperatureC}, ',')::float8[],
            string_to_array(${part.humidityPct}, ',')::float8[]
          ) AS sent (at, c, pct)
          JOIN "Reading" AS kept ON kept."sensorId" = ${sensorId} AND kept."atMs" = sent.at
          WHERE abs(kept."temperatureC" - sent.c) > ${SAME_WITHIN}
            OR abs(kept."humidityPct" - nullif(sent.pct, 'NaN')) > ${SAME_WITHIN}`;
  return rows.map(({ at, kept, sent }) => ({ at: Number(at), keptC: Number(kept), sentC: Number(sent) }));
}
