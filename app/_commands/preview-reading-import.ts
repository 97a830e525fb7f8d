import { createReadStream } from 'node:fs';
import { keepReadings, type ReadingImportJob } from '@/app/_server/reading-imports';
import { ReadingFile } from '@/lib/exchange/reading-file';
import type { ReadingFileResult } from '@/lib/exchange/reading-file-result';
import type { LayoutAnswers } from '@/lib/exchange/reading-layout';
import type { Db } from '@/prisma/client';
import { findImportByHash } from '@/prisma/data/reading-imports';
import { getShop } from '@/prisma/data/shop';

/** Most rows of one file. Chosen: two years of one-minute readings. */
export const MOST_ROWS = 1_000_000;

/** Bytes read at once: few milliseconds of work, so that other requests are answered in between. Chosen. */
const READ_BYTES = 256 * 1024;

/** Reads the file of a job under the answers given, and leaves the outcome in its stage. Nothing is written. */
export async function previewReadingImport(database: Db, job: ReadingImportJob, answers: LayoutAnswers): Promise<void> {
  job.answers = answers;
  keepReadings(job, null);
  const result = await readImportFile(database, job);
  switch (result.state) {
    case 'unreadable':
      job.stage = { name: 'unreadable', result };
      return;
    case 'asks':
      job.stage = { name: 'asks', report: result.report, questions: result.questions };
      return;
    case 'read':
      keepReadings(job, result.readings);
      job.stage = {
        name: 'ready',
        report: result.report,
        earlier: await findImportByHash(database, job.fileHash),
        refusal: null,
      };
  }
}

/** The file of a job as the shop and the job's answers read it. */
export async function readImportFile(database: Db, job: ReadingImportJob): Promise<ReadingFileResult> {
  const { timeZone, temperatureUnit } = await getShop(database);
  const reader = new ReadingFile({ timeZone, temperatureUnit, answers: job.answers }, MOST_ROWS);
  job.stage = { name: 'reading', readBytes: 0, lines: 0 };
  let readBytes = 0;
  for await (const chunk of createReadStream(job.filePath, { highWaterMark: READ_BYTES })) {
    if (!reader.push(chunk)) break;
    readBytes += chunk.length;
    job.stage = { name: 'reading', readBytes, lines: reader.lineCount };
  }
  return reader.finish();
}
