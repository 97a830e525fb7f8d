import type { ReadingInput } from '@/lib/contracts/readings';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';
import { type Db, isPostgresDb, writeTx } from '@/prisma/client';
import type { ReadingRows } from '@/prisma/data/reading-part';
import { insertReadings, type ReadingConflict } from '@/prisma/data/readings';

/** A logger whose clock runs further ahead than this is refused: its readings could never be put right. Chosen. */
const LATEST_AHEAD_MS = 24 * HOUR_MS;

export interface RecordReadingsRequest {
  readonly sensorId: string;
  readonly readings: readonly ReadingInput[];
  readonly nowAt: Instant;
}

/** What became of the readings sent: accepted + repeated + conflicts = sent. */
export type RecordReadingsResult =
  | {
      readonly ok: true;
      readonly accepted: number;
      /** Readings that were there already with the same value, or stood twice in the request. */
      readonly repeated: number;
      /** Readings of instants at which another value is kept; the first one stays. */
      readonly conflicts: number;
      readonly firstConflicts: readonly ReadingConflict[];
    }
  | { readonly ok: false; readonly code: 'no-sensor' }
  | { readonly ok: false; readonly code: 'other-sensor'; readonly index: number; readonly sensorName: string }
  | { readonly ok: false; readonly code: 'in-future'; readonly index: number; readonly at: Instant };

/** Takes in readings of one sensor, all or none. The same reading sent twice counts once. */
export async function recordReadings(database: Db, request: RecordReadingsRequest): Promise<RecordReadingsResult> {
  const { sensorId, readings, nowAt } = request;
  const ahead = readings.findIndex((reading) => reading.at > nowAt + LATEST_AHEAD_MS);
  if (ahead !== -1) return { ok: false, code: 'in-future', index: ahead, at: readings[ahead]?.at ?? nowAt };
  const sent = firstOfEachInstant(readings);
  return writeTx(database, async (tx): Promise<RecordReadingsResult> => {
    const sensor = await tx.sensor.findUnique({ where: { id: sensorId }, select: { name: true } });
    if (sensor === null) return { ok: false, code: 'no-sensor' };
    const other = readings.findIndex((reading) => reading.sensor !== null && reading.sensor !== sensor.name);
    if (other !== -1) return { ok: false, code: 'other-sensor', index: other, sensorName: sensor.name };
    const { inserted, known, conflicts, firstConflicts } = await insertReadings(
      tx,
      isPostgresDb(database),
      sensorId,
      sent.rows,
    );
    return {
      ok: true,
      accepted: inserted,
      repeated: known + sent.repeated,
      conflicts: conflicts + sent.conflicts.length,
      firstConflicts: [...firstConflicts, ...sent.conflicts],
    };
  });
}

interface Distinct {
  readonly rows: ReadingRows;
  readonly repeated: number;
  readonly conflicts: readonly ReadingConflict[];
}

/** The readings in order of time; of several for one instant the first that was sent. */
function firstOfEachInstant(readings: readonly ReadingInput[]): Distinct {
  const byInstant = new Map<Instant, ReadingInput>();
  const conflicts: ReadingConflict[] = [];
  let repeated = 0;
  for (const reading of readings) {
    const first = byInstant.get(reading.at);
    if (first === undefined) byInstant.set(reading.at, reading);
    else if (first.temperatureC === reading.temperatureC && first.humidityPct === reading.humidityPct) repeated += 1;
    else conflicts.push({ at: reading.at, keptC: first.temperatureC, sentC: reading.temperatureC });
  }
  const distinct = [...byInstant.values()].sort((a, b) => a.at - b.at);
  const rows = {
    at: Float64Array.from(distinct, ({ at }) => at),
    temperatureC: Float64Array.from(distinct, ({ temperatureC }) => temperatureC),
    humidityPct: Float64Array.from(distinct, ({ humidityPct }) => humidityPct ?? Number.NaN),
  };
  return { rows, repeated, conflicts };
}
