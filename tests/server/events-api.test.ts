import { expect, it } from 'vitest';
import { openBatch } from '@/app/_commands/open-batch';
import { newAccessToken } from '@/app/_server/access-token';
import { HOUR_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { listBatchEvents } from '@/prisma/data/batch-events';
import { serveWorkshop } from '../app/serve-workshop';
import { insertTestWorkshop } from '../app/test-workshop';
import { describeBothDatabases } from '../prisma/both-databases';

const BATCH = 'batch-of-the-test';

async function prepare(db: Db): Promise<{ readonly writer: string; readonly logger: string }> {
  await insertTestWorkshop(db);
  const now = Date.now() - HOUR_MS;
  const request = { batchId: BATCH, revisionId: 'rev', quantity: 4, dueOn: null, orderNote: '', personId: null, now };
  expect(await openBatch(db, request)).toMatchObject({ ok: true });
  const tokens = { writer: newAccessToken(), logger: newAccessToken() };
  for (const [name, { id, secretHash }] of Object.entries(tokens)) {
    const scope = name === 'writer' ? 'events:write' : 'readings:write';
    await db.accessToken.create({ data: { id, name, scope, secretHash, createdAt: new Date(now) } });
  }
  return { writer: tokens.writer.token, logger: tokens.logger.token };
}

describeBothDatabases('POST /api/v1/batches/:id/events', (makeDb) => {
  it('takes actions of its own pages and of scripts with a token, and answers everybody else with what to do', async () => {
    const databaseUrl = await makeDb.url();
    const before = await makeDb.open(databaseUrl);
    const { writer, logger } = await prepare(before);
    await before.$disconnect();
    const workshop = await serveWorkshop({ databaseUrl, startsEmpty: true });
    try {
      const send = async (body: unknown, headers: Record<string, string>, batch = BATCH) => {
        const response = await fetch(`${workshop.url}/api/v1/batches/${batch}/events`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', ...headers },
          body: typeof body === 'string' ? body : JSON.stringify(body),
        });
        return { status: response.status, body: await response.json() };
      };
      const page = { origin: workshop.url };
      const note = (key: string) => ({ key, seenSeq: 0, action: { kind: 'noted', text: 'kept', pieces: [1] } });

      expect(await send(note('note-by-page'), page)).toMatchObject({ status: 201, body: { ok: true, seq: 2 } });
      expect(await send(note('note-by-page'), page)).toMatchObject({ status: 200, body: { seq: 2, isRepeat: true } });
      const bearer = (token: string) => ({ authorization: `Bearer ${token}` });
      expect(await send(note('note-by-script'), bearer(writer))).toMatchObject({ status: 201, body: { seq: 3 } });

      expect(await send(note('note-by-other'), { origin: 'http://elsewhere.example' })).toMatchObject({
        status: 403,
        body: { code: 'not-allowed', message: expect.stringContaining('token') },
      });
      expect(await send(note('note-by-nobody'), {})).toMatchObject({ status: 403 });
      expect(await send(note('note-by-logger'), bearer(logger))).toMatchObject({
        status: 403,
        body: { code: 'wrong-scope' },
      });
      expect(await send(note('note-by-guess'), bearer(`lw_${'0'.repeat(16)}_${'a'.repeat(43)}`))).toMatchObject({
        status: 401,
      });
      expect(await send(note('note-to-nothing'), page, 'no-such-batch')).toMatchObject({ status: 404 });
      expect(await send('{"key":', page)).toMatchObject({ status: 400 });
      expect(await send(note('note-as-text'), { ...page, 'content-type': 'text/plain' })).toMatchObject({
        status: 415,
      });
      expect(await send({ ...note('note-with-more'), colour: 'red' }, page)).toMatchObject({
        status: 400,
        body: { code: 'not-an-action', details: [expect.stringContaining('colour')] },
      });

      const shape = { kind: 'work-done', operationId: 'rev-shape', pieces: [1, 2] };
      const both = await Promise.all(
        ['phone-one-action', 'phone-two-action'].map((key) => send({ key, seenSeq: 3, action: shape }, page)),
      );
      expect(both.map(({ status }) => status).sort()).toEqual([201, 409]);
      expect(both.find(({ status }) => status === 409)?.body.message).toMatch(/^Someone else just changed this/);

      const after = await makeDb.open(databaseUrl);
      expect((await listBatchEvents(after, BATCH)).map((event) => event.key)).toEqual([
        `opened-${BATCH}`,
        'note-by-page',
        'note-by-script',
        expect.stringMatching(/^phone-(one|two)-action$/),
      ]);
    } finally {
      await workshop.stop();
    }
  });
});
