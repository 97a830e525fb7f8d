import type { ImportOutcome, ReadingImportJob } from '@/app/_server/reading-imports';
import type { ImportTarget } from '@/lib/contracts/reading-import';
import type { ReadingColumns } from '@/lib/exchange/reading-columns';
import type { ReadingFileReport } from '@/lib/exchange/reading-file-result';
import type { Instant } from '@/lib/units/instant';
import { MINUTE_MS } from '@/lib/units/instant';
import { type Db, isPostgresDb, type Tx, writeTx } from '@/prisma/client';
import { insertReadingImport } from '@/prisma/data/reading-imports';
import { insertReadings } from '@/prisma/data/readings';
import { getShop } from '@/prisma/data/shop';
import { addSensorInTurn } from './add-sensor';
import type { Refusal } from './command-result';

/** Longest that writing a file may take. Chosen: a million rows on a slow disk. */
const WRITE_WITHIN_MS = 15 * MINUTE_MS;

export type ConfirmImportResult =
  | { readonly ok: true; readonly outcome: ImportOutcome }
  | Refusal<'no-sensor' | 'name-taken'>;

export interface ConfirmImportRequest {
  readonly job: ReadingImportJob;
  readonly report: ReadingFileReport;
  readonly readings: ReadingColumns;
  readonly target: ImportTarget;
  readonly nowAt: Instant;
}

/**
 * Takes in the readings of a file as they were shown, all or none, in one transaction: a sensor where a new one is
 * named, the readings, and the record of the import. Readings that are there already are left as they are.
 */
export function confirmReadingImport(database: Db, request: ConfirmImportRequest): Promise<ConfirmImportResult> {
  return writeTx(database, (tx) => confirmInTurn(tx, isPostgresDb(database), request), { timeoutMs: WRITE_WITHIN_MS });
}

async function confirmInTurn(tx: Tx, isPostgres: boolean, request: ConfirmImportRequest): Promise<ConfirmImportResult> {
  const { job, report, readings, target, nowAt } = request;
  const sensor = await targetSensor(tx, target, nowAt);
  if (!sensor.ok) return sensor;
  const total = readings.at.length;
  job.stage = { name: 'writing', written: 0, total };
  const { inserted, known, conflicts, firstConflicts } = await insertReadings(
    tx,
    isPostgres,
    sensor.id,
    readings,
    (written) => {
      job.stage = { name: 'writing', written, total };
    },
  );
  // A file that brought nothing new leaves no second record.
  if (inserted > 0) {
    await insertReadingImport(tx, {
      sensorId: sensor.id,
      fileName: job.fileName,
      fileHash: job.fileHash,
      settings: { layout: report.layout, answers: job.answers },
      rowsAccepted: inserted,
      rowsDuplicate: report.counts.duplicate + known + conflicts,
      rowsRefused: report.counts.refused,
      firstAt: readings.at[0] ?? nowAt,
      lastAt: readings.at.at(-1) ?? nowAt,
      importedAt: nowAt,
    });
  }
  const { cureSensorId } = await getShop(tx);
  const rulesClocks = cureSensorId === sensor.id;
  return {
    ok: true,
    outcome: { sensorName: sensor.name, added: inserted, known, conflicts, firstConflicts, rulesClocks },
  };
}

async function targetSensor(
  tx: Tx,
  target: ImportTarget,
  nowAt: Instant,
): Promise<{ readonly ok: true; readonly id: string; readonly name: string } | Refusal<'no-sensor' | 'name-taken'>> {
  if ('newSensor' in target) {
    const added = await addSensorInTurn(tx, target.newSensor, nowAt);
    if (!added.ok) return { ...added, field: 'newSensor.name' };
    return { ok: true, id: added.sensorId, name: target.newSensor.name };
  }
  const found = await tx.sensor.findUnique({ where: { id: target.sensorId }, select: { id: true, name: true } });
  if (found !== null) return { ok: true, ...found };
  return {
    ok: false,
    code: 'no-sensor',
    message: 'This sensor is not there any more. Choose another.',
    field: 'sensorId',
  };
}
