import { LONGEST_FILE_BYTES, receiveReadingFile } from '@/app/_commands/receive-reading-file';
import { now } from '@/app/_server/clock';
import { answerView, refuseImport, refuseStranger } from '@/app/_server/import-route';
import { chunksOf } from '@/app/_server/json-body';
import { startPreview } from '@/app/_server/reading-import-steps';
import { forgetImportJob, startImportJob } from '@/app/_server/reading-imports';
import { importFileNameSchema } from '@/lib/contracts/reading-import';
import { db } from '@/prisma/client';

/**
 * Takes a logger's file, whose bytes are the body and whose name stands in `?fileName=`, and begins to read it. 201
 * with the job, 413 when it is too long. Nothing is taken in before the job is confirmed.
 */
export async function POST(request: Request): Promise<Response> {
  const stranger = refuseStranger(request);
  if (stranger !== null) return stranger;
  const fileName = importFileNameSchema.safeParse(new URL(request.url).searchParams.get('fileName'));
  if (!fileName.success) return refuseImport(422, 'Send the name of the file, at most 200 characters long.');
  const stated = Number(request.headers.get('content-length') ?? 0);
  if (stated > LONGEST_FILE_BYTES) return refuseTooLong();
  const job = startImportJob(fileName.data, now());
  try {
    const received = await receiveReadingFile(job, chunksOf(request));
    if (!received.ok) {
      forgetImportJob(job.id);
      return received.code === 'empty' ? refuseImport(422, 'This file is empty. Choose another.') : refuseTooLong();
    }
  } catch {
    forgetImportJob(job.id);
    return refuseImport(400, 'The file did not arrive whole. Send it again.');
  }
  startPreview(await db(), job, {});
  return answerView(job, 201);
}

function refuseTooLong(): Response {
  const message = 'This file is larger than 64 MB. Cut it into parts by month or year, and import them one by one.';
  return refuseImport(413, message);
}
