import { recordReadings } from '@/app/_commands/record-readings';
import { checkAccessToken } from '@/app/_server/access-token';
import { now } from '@/app/_server/clock';
import { readJsonBody } from '@/app/_server/json-body';
import { recordReadingsAnswer } from '@/app/_server/record-readings-answer';
import { parseReadings } from '@/lib/contracts/readings';
import { db } from '@/prisma/client';

/** Longest body taken: 10,000 readings with all fields need less than half of it. Chosen. */
const LONGEST_BODY = 4_000_000;

/** Issues that are listed. Chosen: enough to see what is wrong with all of them. */
const LISTED_ISSUES = 50;

/**
 * Takes in one reading or a list of them for the sensor of the token. The same reading sent twice counts once, so a
 * logger that heard no answer sends again.
 *
 *     curl -X POST http://127.0.0.1:3000/api/v1/readings \
 *       -H 'authorization: Bearer lw_...' -H 'content-type: application/json' \
 *       -d '[{"at":"2026-03-10T18:15:00Z","temperatureC":17.5,"humidityPct":48}]'
 *
 * 201 when something new was taken in, 200 when all of it was there already; nothing of a list is taken in when a part
 * of it is wrong (422).
 */
export async function POST(request: Request): Promise<Response> {
  const nowAt = now();
  const database = await db();
  const token = await checkAccessToken(database, request.headers, 'readings:write', nowAt);
  if (!token.ok) {
    const status = token.code === 'wrong-scope' ? 403 : 401;
    return answer(status, { ok: false, code: token.code, message: token.message });
  }
  if (token.sensorId === null) return recordReadingsAnswer({ ok: false, code: 'no-sensor' });
  const body = await readJsonBody(request, LONGEST_BODY);
  if (!body.ok) return answer(body.status, { ok: false, code: body.code, message: body.message });
  const parsed = parseReadings(body.value);
  if (!parsed.ok) {
    const issues = parsed.issues.slice(0, LISTED_ISSUES);
    const message = 'Nothing was taken in: correct what is listed and send it again.';
    return answer(422, { ok: false, code: 'not-readings', message, issueCount: parsed.issues.length, issues });
  }
  const { readings } = parsed;
  return recordReadingsAnswer(await recordReadings(database, { sensorId: token.sensorId, readings, nowAt }));
}

function answer(status: number, body: object): Response {
  const headers = { 'cache-control': 'no-store', ...(status === 401 ? { 'www-authenticate': 'Bearer' } : {}) };
  return Response.json(body, { status, headers });
}
