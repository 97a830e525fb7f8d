import 'server-only';
import type { RecordReadingsResult } from '@/app/_commands/record-readings';

/** What a logger is told of the readings it sent. */
export function recordReadingsAnswer(result: RecordReadingsResult): Response {
  const headers = { 'cache-control': 'no-store' };
  if (!result.ok) {
    const { status, body } = refusal(result);
    return Response.json({ ok: false, code: result.code, ...body }, { status, headers });
  }
  const { accepted, repeated, conflicts, firstConflicts } = result;
  const kept = firstConflicts.map(({ at, keptC, sentC }) => ({ at: new Date(at).toISOString(), keptC, sentC }));
  const body = {
    ok: true,
    accepted,
    repeated,
    conflicts,
    ...(conflicts > 0 ? { message: 'At these instants another reading is kept; the first one stays.', kept } : {}),
  };
  return Response.json(body, { status: accepted > 0 ? 201 : 200, headers });
}

function refusal(result: Extract<RecordReadingsResult, { ok: false }>): { status: number; body: object } {
  switch (result.code) {
    case 'no-sensor':
      return {
        status: 403,
        body: { message: 'The sensor of this token is not there any more. Make another token in Shop, Access.' },
      };
    case 'other-sensor': {
      const message = `This token writes for the sensor ${result.sensorName}; leave "sensor" out, or name that one.`;
      return { status: 422, body: { message, issues: [{ path: `${result.index}.sensor`, message }] } };
    }
    case 'in-future': {
      const at = new Date(result.at).toISOString();
      const message = `${at} lies more than a day ahead. Set the clock of the logger right, then send again.`;
      return { status: 422, body: { message, issues: [{ path: `${result.index}.at`, message }] } };
    }
  }
}
