import { answerView, jobOrRefusal, readImportBody, refuseImport, refuseStranger } from '@/app/_server/import-route';
import { startPreview } from '@/app/_server/reading-import-steps';
import { isBusy } from '@/app/_server/reading-imports';
import { importAnswersSchema } from '@/lib/contracts/reading-import';
import { db } from '@/prisma/client';

/** Reads the file of an import once more, under these answers. They take the place of all earlier ones. */
export async function POST(request: Request, { params }: RouteContext<'/api/v1/reading-imports/[id]/answers'>) {
  const stranger = refuseStranger(request);
  if (stranger !== null) return stranger;
  const job = jobOrRefusal((await params).id);
  if (job instanceof Response) return job;
  const body = await readImportBody(request, importAnswersSchema);
  if (!body.ok) return body.response;
  if (isBusy(job) || job.stage.name === 'done') return refuseImport(409, 'This file is being dealt with, or is done.');
  startPreview(await db(), job, body.value);
  return answerView(job, 202);
}
