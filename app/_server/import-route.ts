import 'server-only';
import type { z } from 'zod';
import type { ImportRefusal } from '@/app/_import/import-view';
import { importViewOf, runningView } from '@/app/_import/import-view-of';
import { isFromOwnPage } from './caller';
import { now } from './clock';
import { readJsonBody } from './json-body';
import { findImportJob, type ReadingImportJob } from './reading-imports';
import { currentShop } from './shop';

/** What the routes of an import share: who may send, which job, what is answered. */

const HEADERS = { 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' };
const LONGEST_BODY = 20_000;

export function refuseImport(status: number, message: string, fieldErrors?: ImportRefusal['fieldErrors']): Response {
  const body: ImportRefusal = { ok: false, message, ...(fieldErrors === undefined ? {} : { fieldErrors }) };
  return Response.json(body, { status, headers: HEADERS });
}

/** Only a page of this app may import: files come from a person who looks at what was understood. */
export function refuseStranger(request: Request): Response | null {
  if (isFromOwnPage(request.headers)) return null;
  return refuseImport(403, 'Only a page of this app may send a file. A logger posts to /api/v1/readings with a token.');
}

export async function answerView(job: ReadingImportJob, status = 200): Promise<Response> {
  const view = runningView(job) ?? importViewOf(job, await currentShop(), now());
  return Response.json(view, { status, headers: HEADERS });
}

const GONE =
  'This import is not known any more: the server was started anew, or others came after it. Nothing of it was kept; send the file again.';

export function jobOrRefusal(id: string): ReadingImportJob | Response {
  return (
    findImportJob(id) ??
    Response.json({ ok: false, message: GONE, isGone: true } satisfies ImportRefusal, { status: 404, headers: HEADERS })
  );
}

/** The body under a contract, or the refusal with what is wrong by field. */
export async function readImportBody<T>(
  request: Request,
  schema: z.ZodType<T>,
): Promise<{ readonly ok: true; readonly value: T } | { readonly ok: false; readonly response: Response }> {
  const body = await readJsonBody(request, LONGEST_BODY);
  if (!body.ok) return { ok: false, response: refuseImport(body.status, body.message) };
  const parsed = schema.safeParse(body.value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const fieldErrors: Record<string, string> = {};
  for (const { path, message } of parsed.error.issues) fieldErrors[path.join('.')] ??= message;
  return { ok: false, response: refuseImport(422, 'Look at the marked fields.', fieldErrors) };
}
