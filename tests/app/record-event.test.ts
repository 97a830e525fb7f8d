import { expect, it } from 'vitest';
import { openBatch } from '@/app/_commands/open-batch';
import { recordEvent } from '@/app/_commands/record-event';
import type { BatchAction } from '@/lib/contracts/batch-action';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { listBatchEvents } from '@/prisma/data/batch-events';
import { findBatchHead } from '@/prisma/data/batches';
import { describeBothDatabases } from '../prisma/both-databases';
import { ANCHORS, EVENING, insertTestWorkshop } from './test-workshop';

const BATCH = 'batch-of-the-test';
const ALL = [1, 2, 3, 4];

let keys = 0;
const newKey = () => `key-of-the-test-${++keys}`;

async function openTestBatch(db: Db): Promise<void> {
  await insertTestWorkshop(db);
  const opened = await openBatch(db, {
    batchId: BATCH,
    revisionId: 'rev',
    quantity: ALL.length,
    dueOn: null,
    orderNote: '',
    personId: null,
    now: EVENING - 48 * HOUR_MS,
  });
  expect(opened).toMatchObject({ ok: true, number: 1, hasFrozen: true });
}

interface Sent {
  readonly key?: string;
  readonly at?: Instant;
  readonly now?: Instant;
  readonly seenSeq?: number;
  readonly personId?: string | null;
}

function send(
  db: Db,
  action: BatchAction,
  { key = newKey(), at, now = EVENING, seenSeq = 1, personId = null }: Sent = {},
) {
  const input = { key, seenSeq, action, ...(at === undefined ? {} : { at }) };
  return recordEvent(db, { batchId: BATCH, input, personId, now });
}

const startMix = (
  mixId: string,
  changes: Partial<Extract<BatchAction, { kind: 'mix-started' }>> = {},
): BatchAction => ({
  kind: 'mix-started',
  mixId,
  operationId: 'rev-glue',
  materialId: 'glue',
  massG: 9,
  temperatureC: 25,
  lotIds: ['glue-lot'],
  ...changes,
});

const setJoints = (mixId: string, pieces: readonly number[]): BatchAction => ({
  kind: 'joints-set',
  mixId,
  joints: pieces.flatMap((piece) => ANCHORS.map((anchor) => ({ piece, anchorId: `rev-${anchor}` }))),
});

const shape = (pieces: readonly number[]): BatchAction => ({ kind: 'work-done', operationId: 'rev-shape', pieces });

const mixOfJoints = async (db: Db) =>
  (
    await db.joint.findMany({
      select: { mixId: true, piece: { select: { number: true } } },
      orderBy: { piece: { number: 'asc' } },
    })
  ).map((joint) => `${joint.piece.number} ${joint.mixId}`);

describeBothDatabases('recording what happened at the bench', (makeDb) => {
  it('opens a batch with its pieces and joints, freezes the draft, and opens it once for one form', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    expect(await db.piece.count()).toBe(4);
    expect(await db.joint.count()).toBe(12);
    expect((await db.revision.findUniqueOrThrow({ where: { id: 'rev' } })).frozenAt).not.toBeNull();
    const form = {
      batchId: BATCH,
      revisionId: 'rev',
      quantity: 4,
      dueOn: null,
      orderNote: '',
      personId: null,
      now: EVENING,
    };
    expect(await openBatch(db, form)).toMatchObject({ ok: true, number: 1, hasFrozen: false });
    expect(await openBatch(db, { ...form, quantity: 5 })).toMatchObject({ ok: false, code: 'key-reused' });
    expect(await openBatch(db, { ...form, batchId: 'another-batch' })).toMatchObject({ ok: true, number: 2 });
    expect(await db.batch.count()).toBe(2);
    expect(await listBatchEvents(db, BATCH)).toMatchObject([{ seq: 1, body: { kind: 'batch-opened', quantity: 4 } }]);
  });

  it('tells an evening: shape, mix, joints, close; and the rows of mixes and joints follow', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    expect(await send(db, shape(ALL))).toMatchObject({ ok: true, event: { seq: 2 } });
    expect(await send(db, startMix('mix-one'), { personId: 'ada' })).toMatchObject({
      ok: true,
      event: { seq: 3, personId: 'ada', body: { number: 1, materialName: 'Test glue', sheet: { referenceC: 25 } } },
    });
    expect(await send(db, setJoints('mix-one', [1, 2]))).toMatchObject({ ok: true, warnings: [] });
    expect(await send(db, { kind: 'mix-closed', mixId: 'mix-one' })).toMatchObject({ ok: true });
    expect(await db.mix.findMany({ include: { lots: true } })).toMatchObject([
      { id: 'mix-one', number: 1, massG: 9, materialId: 'glue', lots: [{ lotId: 'glue-lot' }] },
    ]);
    expect((await mixOfJoints(db)).filter((joint) => joint.endsWith('mix-one'))).toHaveLength(6);
    expect(await findBatchHead(db, BATCH)).toMatchObject({ lastSeq: 5, status: 'open' });
  });

  it('takes the same key once, answers as the first time, and refuses another action under it', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    const first = await send(db, shape([1, 2]), { key: 'one-and-the-same' });
    const again = await send(db, shape([1, 2]), { key: 'one-and-the-same' });
    expect(first).toMatchObject({ ok: true, isRepeat: false, event: { seq: 2 } });
    expect(again).toMatchObject({ ok: true, isRepeat: true, event: { seq: 2 } });
    expect(await send(db, shape([3]), { key: 'one-and-the-same' })).toMatchObject({ ok: false, code: 'key-reused' });
    await send(db, startMix('mix-one'), { key: 'key-of-the-mix' });
    expect(await send(db, startMix('mix-one'), { key: 'key-of-the-mix' })).toMatchObject({ ok: true, isRepeat: true });
    expect(await listBatchEvents(db, BATCH)).toHaveLength(3);
  });

  it('lets two phones act at once: what fits lands in turn, what does not is told what somebody else did', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    await send(db, shape(ALL));
    const starts = await Promise.all(
      ['a', 'b', 'c', 'd'].map((name) => send(db, startMix(`mix-${name}-x`), { seenSeq: 2 })),
    );
    expect(starts.map((answer) => answer.ok)).toEqual([true, true, true, true]);
    const mixes = await db.mix.findMany({ orderBy: { number: 'asc' } });
    expect(mixes.map((mix) => mix.number)).toEqual([1, 2, 3, 4]);
    expect((await listBatchEvents(db, BATCH)).map((event) => event.seq)).toEqual([1, 2, 3, 4, 5, 6]);

    const both = await Promise.all([
      send(db, setJoints('mix-a-x', [1]), { seenSeq: 6, personId: 'ada' }),
      send(db, setJoints('mix-b-x', [1]), { seenSeq: 6, personId: 'ben' }),
    ]);
    const refused = both.filter((answer) => !answer.ok);
    expect(refused).toHaveLength(1);
    expect(refused[0]).toMatchObject({ code: 'refused', refusal: { code: 'already-done' }, conflict: { seq: 7 } });
  });

  it('lets twenty actions at once land once each, without a hole, on Postgres from two servers', async () => {
    const url = await makeDb.url();
    const one = await makeDb.open(url);
    // Two SQLite connections of one process would wait for each other without end; two processes are tried elsewhere.
    const other = makeDb.engine === 'postgres' ? await makeDb.open(url) : one;
    await openTestBatch(one);
    const notes = Array.from({ length: 20 }, (_, index) =>
      send(index % 2 === 0 ? one : other, { kind: 'noted', text: `note ${index}`, pieces: [] }),
    );
    expect((await Promise.all(notes)).every((answer) => answer.ok)).toBe(true);
    const events = await listBatchEvents(one, BATCH);
    expect(events.map((event) => event.seq)).toEqual(Array.from({ length: 21 }, (_, index) => index + 1));
    expect(await findBatchHead(one, BATCH)).toMatchObject({ lastSeq: 21 });
  });

  it('refuses paint before the glue may be painted for sure, says from when, and allows it after that', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    await send(db, shape(ALL), { at: EVENING - 30 * HOUR_MS });
    await send(db, startMix('mix-one'), { at: EVENING - 24 * HOUR_MS });
    await send(db, setJoints('mix-one', ALL), { at: EVENING - 24 * HOUR_MS + 10 * MINUTE_MS });
    const paint: BatchAction = { kind: 'work-done', operationId: 'rev-paint', pieces: ALL };
    const early = await send(db, paint, { seenSeq: 4 });
    expect(early).toMatchObject({
      ok: false,
      code: 'refused',
      refusal: { code: 'not-yet', pieces: ALL },
      conflict: null,
    });
    if (early.ok || early.code !== 'refused' || early.refusal.code !== 'not-yet') throw new Error('not refused');
    expect(early.refusal.groups[0]?.waiting.band.latestAt).toBeCloseTo(EVENING + 10 * MINUTE_MS, -2);
    expect(await send(db, paint, { seenSeq: 4, now: EVENING + 11 * MINUTE_MS })).toMatchObject({ ok: true });
  });

  it('flags joints set after the lower pot life and takes them in', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    await send(db, shape(ALL), { at: EVENING - 3 * HOUR_MS });
    await send(db, startMix('mix-one'), { at: EVENING - 2 * HOUR_MS });
    const late = await send(db, setJoints('mix-one', [1]));
    expect(late).toMatchObject({ ok: true, warnings: [{ code: 'late', mixId: 'mix-one' }] });
  });

  it('corrects: a void mix loses its rows, a replaced one changes them, and joints go back', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    await send(db, shape(ALL));
    await send(db, startMix('mix-one'));
    await send(db, setJoints('mix-one', [1]));
    const heavier = startMix('mix-one', { massG: 12, lotIds: [] });
    if (heavier.kind !== 'mix-started') throw new Error('not a mix');
    const replaced = await send(db, {
      kind: 'corrected',
      seq: 3,
      reason: 'misread the scale',
      replacement: { at: EVENING - MINUTE_MS, action: heavier },
    });
    expect(replaced).toMatchObject({ ok: true });
    expect(await db.mix.findMany({ include: { lots: true } })).toMatchObject([{ number: 1, massG: 12, lots: [] }]);
    const inUse = await send(db, { kind: 'corrected', seq: 5, reason: 'undo', replacement: null }, { seenSeq: 5 });
    expect(inUse).toMatchObject({ ok: true });
    expect(await db.mix.findMany({ include: { lots: true } })).toMatchObject([
      { massG: 9, lots: [{ lotId: 'glue-lot' }] },
    ]);

    expect(await send(db, { kind: 'corrected', seq: 4, reason: 'other piece', replacement: null })).toMatchObject({
      ok: true,
    });
    expect((await mixOfJoints(db)).every((joint) => joint.endsWith('null'))).toBe(true);
    expect(await send(db, { kind: 'corrected', seq: 3, reason: 'never mixed', replacement: null })).toMatchObject({
      ok: true,
    });
    expect(await db.mix.count()).toBe(0);
    expect(await send(db, startMix('mix-two'))).toMatchObject({ ok: true, event: { body: { number: 2 } } });
  });

  it('finishes a batch when nothing is left to do, and reopens it', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    expect(await send(db, { kind: 'batch-finished' })).toMatchObject({ ok: false, refusal: { code: 'open-pieces' } });
    await send(db, { kind: 'pieces-scrapped', pieces: ALL, reason: 'wet wood' });
    expect(await send(db, { kind: 'batch-finished' })).toMatchObject({ ok: true });
    expect(await findBatchHead(db, BATCH)).toMatchObject({ status: 'finished', finishedAt: EVENING });
    expect(await send(db, { kind: 'noted', text: 'sold', pieces: [] })).toMatchObject({ ok: true });
    expect(await send(db, shape([1]))).toMatchObject({ ok: false, refusal: { code: 'batch-finished' } });
    expect(await send(db, { kind: 'batch-reopened' })).toMatchObject({ ok: true });
    expect(await findBatchHead(db, BATCH)).toMatchObject({ status: 'open', finishedAt: null });
  });

  it('says what is wrong with a mix that cannot be', async () => {
    const db = await makeDb();
    await openTestBatch(db);
    await send(db, shape(ALL));
    expect(await send(db, startMix('mix-one', { materialId: 'nothing', lotIds: [] }))).toMatchObject({
      code: 'unknown-material',
    });
    expect(await send(db, startMix('mix-one', { materialId: 'bare', lotIds: [] }))).toMatchObject({ code: 'no-sheet' });
    expect(await send(db, startMix('mix-one', { lotIds: ['gloss-lot'] }))).toMatchObject({
      code: 'unknown-lots',
      lotIds: ['gloss-lot'],
    });
    expect(await send(db, startMix('mix-one'), { at: EVENING - 31 * 24 * HOUR_MS })).toMatchObject({ code: 'too-old' });
    expect(await send(db, startMix('mix-one'), { at: EVENING + 5 * MINUTE_MS })).toMatchObject({
      refusal: { code: 'in-future' },
    });
    expect(await listBatchEvents(db, BATCH)).toHaveLength(2);
    expect(await db.mix.count()).toBe(0);
  });
});
