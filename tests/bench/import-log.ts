import { createReadStream } from 'node:fs';
import { confirmReadingImport } from '@/app/_commands/confirm-reading-import';
import { MOST_ROWS, previewReadingImport } from '@/app/_commands/preview-reading-import';
import { receiveReadingFile } from '@/app/_commands/receive-reading-file';
import { forgetImportJob, startImportJob } from '@/app/_server/reading-imports';
import { ReadingFile } from '@/lib/exchange/reading-file';
import type { Db } from '@/prisma/client';

/** Reads a file as the import does, without a database. */
export async function readLogAlone(file: string): Promise<number> {
  const reader = new ReadingFile({ timeZone: 'America/Chicago', temperatureUnit: 'C', answers: {} }, MOST_ROWS);
  for await (const chunk of createReadStream(file, { highWaterMark: 256 * 1024 })) reader.push(chunk);
  const result = reader.finish();
  if (result.state !== 'read') throw new Error(`the log was not read: ${result.state}`);
  return result.readings.at.length;
}

/** All of an import: receiving with its hash, reading for the preview, writing in one transaction. */
export async function importLog(db: Db, file: string, sensorName: string): Promise<number> {
  const job = startImportJob('long-log.csv', Date.UTC(2026, 0, 1));
  await receiveReadingFile(job, createReadStream(file, { highWaterMark: 64 * 1024 }));
  await previewReadingImport(db, job, {});
  if (job.stage.name !== 'ready' || job.readings === null) throw new Error(`the log was not read: ${job.stage.name}`);
  const result = await confirmReadingImport(db, {
    job,
    report: job.stage.report,
    readings: job.readings,
    target: { newSensor: { name: sensorName, place: '' } },
    nowAt: Date.UTC(2026, 0, 1),
  });
  forgetImportJob(job.id);
  if (!result.ok) throw new Error(result.message);
  return result.outcome.added;
}
