import { answerView, jobOrRefusal, readImportBody, refuseImport, refuseStranger } from '@/app/_server/import-route';
import { startConfirm } from '@/app/_server/reading-import-steps';
import { importTargetSchema } from '@/lib/contracts/reading-import';
import { db } from '@/prisma/client';

/** Takes in what was shown of an import, for one sensor: all or nothing. */
export async function POST(request: Request, { params }: RouteContext<'/api/v1/reading-imports/[id]/confirm'>) {
  const stranger = refuseStranger(request);
  if (stranger !== null) return stranger;
  const job = jobOrRefusal((await params).id);
  if (job instanceof Response) return job;
  const body = await readImportBody(request, importTargetSchema);
  if (!body.ok) return body.response;
  const started = startConfirm(await db(), job, body.value);
  return started.ok ? answerView(job, 202) : refuseImport(409, started.message);
}
