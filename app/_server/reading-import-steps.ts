import 'server-only';
import { confirmReadingImport } from '@/app/_commands/confirm-reading-import';
import { previewReadingImport, readImportFile } from '@/app/_commands/preview-reading-import';
import type { ImportTarget } from '@/lib/contracts/reading-import';
import type { LayoutAnswers } from '@/lib/exchange/reading-layout';
import type { Db } from '@/prisma/client';
import { now } from './clock';
import { isBusy, keepReadings, type ReadingImportJob } from './reading-imports';

/** Starts reading the file of a job under these answers; the page asks the job how far it is. */
export function startPreview(database: Db, job: ReadingImportJob, answers: LayoutAnswers): void {
  job.stage = { name: 'reading', readBytes: 0, lines: 0 };
  job.running = previewReadingImport(database, job, answers).catch((error) => fail(job, error));
}

export type StartConfirmResult = { readonly ok: true } | { readonly ok: false; readonly message: string };

/** Starts writing what was shown of a job. Only a file that was read without an open question can be taken in. */
export function startConfirm(database: Db, job: ReadingImportJob, target: ImportTarget): StartConfirmResult {
  if (isBusy(job)) return { ok: false, message: 'This file is being dealt with just now.' };
  if (job.stage.name !== 'ready') return { ok: false, message: 'This file cannot be taken in as it stands.' };
  job.running = confirm(database, job, target).catch((error) => fail(job, error));
  return { ok: true };
}

async function confirm(database: Db, job: ReadingImportJob, target: ImportTarget): Promise<void> {
  const ready = job.stage;
  if (ready.name !== 'ready') return;
  const { report } = ready;
  job.stage = { name: 'writing', written: 0, total: report.counts.accepted };
  const readings = job.readings ?? (await readAgain(database, job));
  if (readings === null) {
    job.stage = {
      name: 'failed',
      message: 'The file could not be read a second time. Nothing was kept; send it again.',
    };
    return;
  }
  const result = await confirmReadingImport(database, { job, report, readings, target, nowAt: now() });
  if (result.ok) {
    keepReadings(job, null);
    job.stage = { name: 'done', outcome: result.outcome };
  } else {
    job.stage = { ...ready, refusal: { message: result.message, field: result.field ?? null } };
  }
}

async function readAgain(database: Db, job: ReadingImportJob) {
  const result = await readImportFile(database, job);
  return result.state === 'read' ? result.readings : null;
}

function fail(job: ReadingImportJob, error: unknown): void {
  console.error('import of a logger file failed', error);
  const message =
    'Something went wrong, and nothing of this file was kept. Send it again; if it fails again, look at the log of the server.';
  job.stage = { name: 'failed', message };
}
