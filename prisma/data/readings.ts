import type { Instant } from '@/lib/units/instant';
import type { DbReader, Tx } from '@/prisma/client';
import type { Prisma } from '@/prisma/generated/sqlite/client';
import { postgresPart, type ReadingRows, sqlitePart } from './reading-part';

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

/** Most rows of one statement. Chosen; neither half nor double is quicker. */
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
  for (let from = 0; from < total; ) {
    const part = (isPostgres ? postgresPart : sqlitePart)(rows, from, Math.min(from + CHUNK_ROWS, total));
    if (hasSome) {
      const found = await findConflicts(tx, sensorId, part.sent);
      conflicts += found.length;
      firstConflicts.push(...found.slice(0, LISTED_CONFLICTS - firstConflicts.length));
    }
    inserted += await tx.$executeRaw`
      INSERT INTO "Reading" ("sensorId", "atMs", "temperatureC", "humidityPct")
      SELECT ${sensorId}, at, c, pct FROM (${part.sent}) AS sent WHERE true
      ON CONFLICT DO NOTHING`;
    from = part.to;
    onProgress(from);
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

interface ConflictRow {
  readonly at: bigint | number;
  readonly kept: number;
  readonly sent: number;
}

async function findConflicts(tx: Tx, sensorId: string, sent: Prisma.Sql): Promise<ReadingConflict[]> {
  // "Cross" keeps SQLite from going through all the readings there are and looking each up among those sent.
  const rows = await tx.$queryRaw<ConflictRow[]>`
    SELECT kept."atMs" AS at, kept."temperatureC" AS kept, sent.c AS sent
    FROM (${sent}) AS sent CROSS JOIN "Reading" AS kept
    WHERE kept."sensorId" = ${sensorId} AND kept."atMs" = sent.at
      AND (abs(kept."temperatureC" - sent.c) > ${SAME_WITHIN} OR abs(kept."humidityPct" - sent.pct) > ${SAME_WITHIN})`;
  return rows.map(({ at, kept, sent: sentC }) => ({ at: Number(at), keptC: Number(kept), sentC: Number(sentC) }));
}
