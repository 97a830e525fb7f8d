import { recordEvent } from '@/app/_commands/record-event';
import { checkAccessToken } from '@/app/_server/access-token';
import { isFromOwnPage } from '@/app/_server/caller';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { type AnswerWithStatus, recordEventAnswer, refusal } from '@/app/_server/record-event-answer';
import { currentPeople, currentShop } from '@/app/_server/shop';
import { recordEventSchema } from '@/lib/contracts/batch-action';
import { db } from '@/prisma/client';

/** Longest body taken, in characters: 500 pieces with 20 joints each fit well. Chosen. */
const LONGEST_BODY = 1_000_000;

/**
 * Records one action at the bench. The body is `recordEventSchema`, the answer a RecordEventAnswer: 201 when taken in,
 * 200 when the same key and action were taken in before, 409 when it does not fit the batch as it stands, 422 when it
 * could not be right, 400 for a body that is none. Sent by a page of this app, or by a script with a token:
 *
 *     curl -X POST http://127.0.0.1:3000/api/v1/batches/BATCH/events -H 'authorization: Bearer lw_...' \
 *       -H 'content-type: application/json' \
 *       -d '{"key":"note-2026-05-31-1","seenSeq":0,"action":{"kind":"noted","text":"Racked","pieces":[1,2]}}'
 */
export async function POST(
  request: Request,
  { params }: RouteContext<'/api/v1/batches/[id]/events'>,
): Promise<Response> {
  const { id } = await params;
  const { status, answer } = await record(request, id);
  return Response.json(answer, { status, headers: { 'cache-control': 'no-store' } });
}

async function record(request: Request, batchId: string): Promise<AnswerWithStatus> {
  const nowAt = now();
  const database = await db();
  const hasToken = request.headers.has('authorization');
  if (hasToken) {
    const token = await checkAccessToken(database, request.headers, 'events:write', nowAt);
    if (!token.ok) return refusal(token.code === 'wrong-scope' ? 403 : 401, token.code, token.message);
  } else if (!isFromOwnPage(request.headers)) {
    return refusal(
      403,
      'not-allowed',
      'Only a page of this app may send this. A script needs a token of Shop, Access.',
    );
  }
  const body = await readJson(request);
  if (!body.ok) return body.answer;
  const input = recordEventSchema.safeParse(body.value);
  if (!input.success) {
    const details = input.error.issues.map((issue) => `${issue.path.join('.') || 'body'}: ${issue.message}`);
    return refusal(400, 'not-an-action', 'This is not an action that can be recorded.', details);
  }
  const [shop, people] = [await currentShop(), await currentPeople()];
  const personId = hasToken ? null : await chosenPersonId();
  const result = await recordEvent(database, { batchId, input: input.data, personId, now: nowAt });
  return recordEventAnswer(result, shop, nowAt, (id) => people.find((person) => person.id === id)?.name ?? null);
}

async function readJson(
  request: Request,
): Promise<{ readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly answer: AnswerWithStatus }> {
  if (!(request.headers.get('content-type') ?? '').startsWith('application/json')) {
    return { ok: false, answer: refusal(415, 'not-json', 'Send the action as application/json.') };
  }
  const text = await request.text();
  if (text.length > LONGEST_BODY) {
    return { ok: false, answer: refusal(413, 'too-long', 'This body is too long. Send several smaller actions.') };
  }
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false, answer: refusal(400, 'not-json', 'The body is not valid JSON.') };
  }
}
