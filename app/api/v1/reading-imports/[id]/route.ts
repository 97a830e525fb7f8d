import { answerView, jobOrRefusal, refuseImport, refuseStranger } from '@/app/_server/import-route';
import { forgetImportJob, isBusy } from '@/app/_server/reading-imports';

/** How far an import is. */
export async function GET(_request: Request, { params }: RouteContext<'/api/v1/reading-imports/[id]'>) {
  const job = jobOrRefusal((await params).id);
  return job instanceof Response ? job : answerView(job);
}

/** Drops an import that was not confirmed, and its file. */
export async function DELETE(request: Request, { params }: RouteContext<'/api/v1/reading-imports/[id]'>) {
  const stranger = refuseStranger(request);
  if (stranger !== null) return stranger;
  const job = jobOrRefusal((await params).id);
  if (job instanceof Response) return job;
  if (isBusy(job)) return refuseImport(409, 'This file is being dealt with just now. Wait until it is done.');
  forgetImportJob(job.id);
  return new Response(null, { status: 204 });
}
