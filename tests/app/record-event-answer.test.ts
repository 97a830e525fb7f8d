import { expect, it } from 'vitest';
import { openBatch } from '@/app/_commands/open-batch';
import { recordEvent } from '@/app/_commands/record-event';
import { isFromOwnPage } from '@/app/_server/caller';
import { recordEventAnswer } from '@/app/_server/record-event-answer';
import { type BatchAction, recordEventSchema } from '@/lib/contracts/batch-action';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { getShop } from '@/prisma/data/shop';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestWorkshop } from './test-workshop';

describeBothDatabases('the answer to a recorded action', (makeDb) => {
  it('says in words what somebody else just did, and until when pieces must wait', async () => {
    const db = await makeDb();
    await insertTestWorkshop(db);
    const batchId = 'batch-of-the-test';
    const now = EVENING - 48 * HOUR_MS;
    await openBatch(db, { batchId, revisionId: 'rev', quantity: 3, dueOn: null, orderNote: '', personId: null, now });
    const shop = await getShop(db);
    const names: Readonly<Record<string, string>> = { ada: 'Ada', ben: 'Ben' };
    let keys = 0;
    const answer = async (action: BatchAction, personId: string, seenSeq: number, at = EVENING) => {
      keys += 1;
      const input = { key: `key-of-the-test-${keys}`, seenSeq, action, at };
      const result = await recordEvent(db, { batchId, input, personId, now: EVENING });
      return recordEventAnswer(result, shop, EVENING, (id) => names[id] ?? null);
    };
    const shape: BatchAction = { kind: 'work-done', operationId: 'rev-shape', pieces: [1, 2, 3] };
    expect(await answer(shape, 'ada', 1, EVENING - MINUTE_MS)).toEqual({
      status: 201,
      answer: { ok: true, seq: 2, isRepeat: false, warnings: [] },
    });
    const second = await answer(shape, 'ben', 1);
    expect(second.status).toBe(409);
    expect(second.answer).toMatchObject({
      ok: false,
      code: 'already-done',
      message: expect.stringMatching(/^Someone else just changed this\. Ada at 17:59: shape: done on pieces 1-3/),
      details: [expect.stringContaining('recorded already')],
    });

    const mix: BatchAction = {
      kind: 'mix-started',
      mixId: 'mix-one-x',
      operationId: 'rev-glue',
      materialId: 'glue',
      massG: 9,
      temperatureC: 25,
      lotIds: [],
    };
    await answer(mix, 'ada', 2);
    const joints = [1, 2].flatMap((piece) =>
      ['line-tie', 'belly', 'tail'].map((name) => ({ piece, anchorId: `rev-${name}` })),
    );
    await answer({ kind: 'joints-set', mixId: 'mix-one-x', joints }, 'ada', 3);
    const early = await answer({ kind: 'work-done', operationId: 'rev-paint', pieces: [1, 2] }, 'ada', 4);
    expect(early).toMatchObject({ status: 409, answer: { code: 'not-yet' } });
    expect(early.answer.ok ? '' : early.answer.message).toMatch(
      /^2 pieces \(1, 2\) not yet at paint after glue: from Wed 18:00/,
    );
  });
});

it('takes an action only in its contract: the first unknown key, doubled piece or missing reason is named', () => {
  const body = (action: unknown, more: object = {}) =>
    recordEventSchema.safeParse({ key: 'a-good-key', seenSeq: 0, action, ...more });
  const issue = (parsed: ReturnType<typeof body>) => (parsed.success ? null : parsed.error.issues[0]?.path.join('.'));
  expect(body({ kind: 'mix-closed', mixId: 'm' }).success).toBe(true);
  expect(issue(body({ kind: 'mix-closed', mixId: 'm', extra: 1 }))).toBe('action');
  expect(issue(body({ kind: 'batch-opened', quantity: 2 }))).toBe('action.kind');
  expect(issue(body({ kind: 'work-done', operationId: 'o', pieces: [2, 2] }))).toBe('action.pieces');
  expect(issue(body({ kind: 'work-done', operationId: 'o', pieces: [0] }))).toBe('action.pieces.0');
  expect(issue(body({ kind: 'pieces-scrapped', pieces: [1], reason: '  ' }))).toBe('action.reason');
  expect(issue(body({ kind: 'noted', text: 'a\u0000b', pieces: [] }))).toBe('action.text');
  expect(issue(body({ kind: 'mix-closed', mixId: 'm' }, { key: 'short' }))).toBe('key');
  expect(issue(body({ kind: 'mix-closed', mixId: 'm' }, { at: 12 }))).toBe('at');
  expect(issue(body({ kind: 'coat-applied', mixId: 'm', pieces: [1], humidityPct: 101 }))).toBe('action.humidityPct');
});

it('knows its own pages from those of other sites', () => {
  const from = (headers: Record<string, string>) =>
    isFromOwnPage(new Headers({ host: '192.168.1.4:3000', ...headers }));
  expect(from({ origin: 'http://192.168.1.4:3000' })).toBe(true);
  expect(from({ origin: 'http://192.168.1.4:3000', 'sec-fetch-site': 'same-origin' })).toBe(true);
  expect(from({ origin: 'https://lures.example', 'x-forwarded-host': 'lures.example' })).toBe(true);
  expect(from({ origin: 'http://elsewhere.example' })).toBe(false);
  expect(from({ origin: 'http://192.168.1.4:3000', 'sec-fetch-site': 'cross-site' })).toBe(false);
  expect(from({ origin: 'null' })).toBe(false);
  expect(from({})).toBe(false);
});
