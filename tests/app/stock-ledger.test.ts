import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { addLot } from '@/app/_commands/add-lot';
import { correctMovement } from '@/app/_commands/correct-movement';
import { countLot } from '@/app/_commands/count-lot';
import { issueStock } from '@/app/_commands/issue-stock';
import { openBatch } from '@/app/_commands/open-batch';
import { receiveStock } from '@/app/_commands/receive-stock';
import { recordEvent } from '@/app/_commands/record-event';
import { removeLot } from '@/app/_commands/remove-lot';
import { saveLot } from '@/app/_commands/save-lot';
import { saveLotSheet } from '@/app/_commands/save-lot-sheet';
import type { BatchAction } from '@/lib/contracts/batch-action';
import type { LotInput } from '@/lib/contracts/material-forms';
import type { IssueInput } from '@/lib/contracts/stock-forms';
import { toMilli } from '@/lib/stock/ledger';
import type { Db } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import { listMovementPage } from '@/prisma/data/stock';
import { describeBothDatabases } from '../prisma/both-databases';
import { EVENING, insertTestWorkshop, TEST_SHEET } from './test-workshop';

const BY = { personId: 'ada', nowAt: EVENING };
const SPOOL: LotInput = {
  code: 'Spool 9',
  part: 'whole',
  unit: 'mm',
  quantity: 3000,
  receivedOn: '2026-02-01',
  openedOn: null,
  expiresOn: null,
  supplierNote: '',
  priceMinor: 900,
};

let keys = 0;
const newKey = () => `stock-key-${++keys}`;

/** A shop with a material "Wire" and its only spool of 3 m. */
async function shopWithSpool(db: Db): Promise<string> {
  await insertTestWorkshop(db);
  const dates = { createdAt: new Date(EVENING), updatedAt: new Date(EVENING) };
  await db.material.create({ data: { id: 'wire', kind: 'wire', name: 'Wire', sheetRevision: '', note: '', ...dates } });
  const added = await addLot(db, 'wire', SPOOL, EVENING);
  if (!added.ok) throw new Error(added.message);
  return added.lotId;
}

const take = (milli: number, more: Partial<IssueInput> = {}): IssueInput => ({
  key: newKey(),
  milli,
  foundLeftMilli: null,
  batchId: null,
  reason: 'test bench',
  ...more,
});

/** What is left by the row, and whether the lines of the book sum to it. */
async function leftOf(db: Db, lotId: string): Promise<number> {
  const lot = await findLot(db, lotId);
  const { movements, total } = await listMovementPage(db, { lotId, page: 0, pageSize: 1000 });
  const sum = movements.reduce((all, movement) => all + movement.quantityMilli, toMilli(lot?.quantity ?? Number.NaN));
  expect(toMilli(lot?.left ?? Number.NaN)).toBe(sum);
  expect(lot?.movementCount).toBe(total);
  expect(movements.map((movement) => movement.order)).toEqual(Array.from({ length: total }, (_, i) => total - i));
  expect(lot?.isUsedUp).toBe(sum === 0 && total > 0);
  return lot?.left ?? Number.NaN;
}

describeBothDatabases('the ledger of stock', (makeDb) => {
  test('two phones issuing the last spool at once: one is refused with a clear word', async () => {
    const address = await makeDb.url();
    const [one, two] = [await makeDb.open(address), await makeDb.open(address)];
    const lotId = await shopWithSpool(one);
    for (let round = 0; round < 5; round += 1) {
      const answers = await Promise.all([
        issueStock(one, lotId, take(3_000_000), BY),
        issueStock(two, lotId, take(3_000_000), { ...BY, personId: 'ben' }),
      ]);
      const refused = answers.flatMap((answer) => (answer.ok ? [] : [answer]));
      expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
      expect(refused).toMatchObject([{ code: 'not-enough', field: 'milli' }]);
      expect(refused[0]?.message).toContain('By the book nothing is left of lot Spool 9: 3000 mm too little.');
      expect(await leftOf(one, lotId)).toBe(0);
      const more = { key: newKey(), milli: 3_000_000, priceMinor: 900, reason: '' };
      expect(await receiveStock(one, lotId, more, BY)).toMatchObject({ ok: true });
    }
  });

  test('the same form sent twice moves the stock once; another one under its key is refused', async () => {
    const db = await makeDb();
    const lotId = await shopWithSpool(db);
    const form = take(500_000);
    expect(await issueStock(db, lotId, form, BY)).toEqual({ ok: true, isRepeat: false, leftMilli: 2_500_000 });
    expect(await issueStock(db, lotId, form, BY)).toEqual({ ok: true, isRepeat: true, leftMilli: 2_500_000 });
    const count = { key: form.key, countedMilli: 0, reason: 'gone' };
    expect(await countLot(db, lotId, count, BY)).toMatchObject({ ok: false, code: 'key-reused' });
    const both = await Promise.all([1, 2, 3].map(() => issueStock(db, lotId, { ...form, key: 'key-in-parallel' }, BY)));
    expect(both.map((answer) => answer.ok && answer.isRepeat).sort()).toEqual([false, true, true]);
    expect(await leftOf(db, lotId)).toBe(2000);
  });

  test('more than the book holds goes out only with what is really left, as a correction of its own', async () => {
    const db = await makeDb();
    const lotId = await shopWithSpool(db);
    expect(await issueStock(db, lotId, take(3_200_000), BY)).toMatchObject({ ok: false, code: 'not-enough' });
    expect(await issueStock(db, lotId, take(3_200_000, { foundLeftMilli: 100_000 }), BY)).toMatchObject({ ok: true });
    expect(await leftOf(db, lotId)).toBe(100);
    const { movements } = await listMovementPage(db, { lotId, page: 0, pageSize: 10 });
    expect(movements.map(({ kind, quantity, left }) => [kind, quantity, left])).toEqual([
      ['issue', -3200, 100],
      ['correction', 300, 3300],
    ]);
    expect((await findLot(db, lotId))?.openedOn).toBe('2026-03-10');
  });

  test('a slip is put right by one more line, for the batch too, and as often as it takes', async () => {
    const db = await makeDb();
    const lotId = await shopWithSpool(db);
    await openTestBatch(db);
    await issueStock(db, lotId, take(1_200_000, { batchId: 'batch-stock', reason: '' }), BY);
    const [issue] = (await listMovementPage(db, { lotId, page: 0, pageSize: 1 })).movements;
    const correct = (insteadMilli: number) =>
      correctMovement(db, issue?.id ?? '', { key: newKey(), insteadMilli, reason: 'typed wrong' }, BY);
    expect(await correct(120_000)).toMatchObject({ ok: true, leftMilli: 2_880_000 });
    expect(await correct(120_000)).toMatchObject({ ok: false, code: 'nothing' });
    expect(await correct(150_000)).toMatchObject({ ok: true, leftMilli: 2_850_000 });
    expect(await leftOf(db, lotId)).toBe(2850);
    const ofBatch = await db.stockMovement.aggregate({
      where: { batchId: 'batch-stock' },
      _sum: { quantityMilli: true },
    });
    expect(Number(ofBatch._sum.quantityMilli)).toBe(-150_000);
    const [newest] = (await listMovementPage(db, { lotId, page: 0, pageSize: 1 })).movements;
    const again = { key: newKey(), insteadMilli: 0, reason: 'no' };
    expect(await correctMovement(db, newest?.id ?? '', again, BY)).toMatchObject({ code: 'not-correctable' });
  });

  test('a lot that moved keeps its first receipt and its place', async () => {
    const db = await makeDb();
    const lotId = await shopWithSpool(db);
    expect(await saveLot(db, lotId, { ...SPOOL, quantity: 4000 })).toEqual({ ok: true });
    await countLot(db, lotId, { key: newKey(), countedMilli: 0, reason: 'lost' }, BY);
    expect(await saveLot(db, lotId, SPOOL)).toMatchObject({ code: 'has-moved', field: 'quantity' });
    expect(await saveLot(db, lotId, { ...SPOOL, quantity: 4000, code: 'Spool 10' })).toEqual({ ok: true });
    expect(await removeLot(db, lotId)).toMatchObject({ code: 'has-moved' });
    expect(await leftOf(db, lotId)).toBe(0);
  });

  test('a lot with a price asks for the price of what comes to it', async () => {
    const db = await makeDb();
    const lotId = await shopWithSpool(db);
    const more = { key: newKey(), milli: 1_000_000, priceMinor: null, reason: '' };
    expect(await receiveStock(db, lotId, more, BY)).toMatchObject({ code: 'no-price', field: 'priceMinor' });
    await receiveStock(db, lotId, { ...more, priceMinor: 350 }, BY);
    expect(await findLot(db, lotId)).toMatchObject({ priceMinor: 1250, left: 4000 });
    const fault = await issueStock(db, lotId, take(1, { batchId: 'gone' }), BY);
    expect(fault).toMatchObject({ ok: false, code: 'no-batch' });
    expect(await issueStock(db, 'gone', take(1), BY)).toMatchObject({ ok: false, code: 'no-lot' });
  });

  test('a data sheet is kept once by its content, and only what is one', async () => {
    const db = await makeDb();
    const lotId = await shopWithSpool(db);
    const folder = mkdtempSync(path.join(tmpdir(), 'sheets-'));
    const pdf = { name: '../wire sheet.pdf', bytes: new TextEncoder().encode('%PDF-1.7 wire'), issuedOn: '2025-11-01' };
    expect(await saveLotSheet(db, folder, lotId, pdf)).toEqual({ ok: true });
    expect(await saveLotSheet(db, folder, lotId, { ...pdf, name: 'wire sheet.pdf' })).toEqual({ ok: true });
    expect(readdirSync(path.join(folder, 'data-sheets'))).toHaveLength(1);
    expect(await findLot(db, lotId)).toMatchObject({ sheetName: 'wire sheet.pdf', sheetOn: '2025-11-01' });
    const script = { ...pdf, bytes: new TextEncoder().encode('<script>') };
    expect(await saveLotSheet(db, folder, lotId, script)).toMatchObject({ ok: false, code: 'wrong-kind' });
    const long = { ...pdf, bytes: new Uint8Array(11 * 1024 * 1024) };
    expect(await saveLotSheet(db, folder, lotId, long)).toMatchObject({ ok: false, code: 'too-long' });
    expect(await saveLotSheet(db, folder, 'gone', pdf)).toMatchObject({ ok: false, code: 'no-lot' });
    rmSync(folder, { recursive: true });
  });

  test('the books follow the cups of a batch: taken, corrected, taken back', async () => {
    const db = await makeDb();
    await shopWithSpool(db);
    const figures = { ...TEST_SHEET, ratio: { partsA: 2, partsB: 1, basis: 'mass' } };
    await db.material.update({ where: { id: 'glue' }, data: { figures: JSON.parse(JSON.stringify(figures)) } });
    for (const [part, quantity] of [
      ['resin', 100],
      ['hardener', 3],
    ] as const) {
      const data = { code: 'G', quantityUnit: 'g', receivedOn: '2026-01-05', supplierNote: '' };
      const place = { id: part, materialId: 'glue', createdAt: new Date(EVENING) };
      await db.lot.create({ data: { ...data, ...place, part, quantity } });
    }
    await openTestBatch(db);
    const lefts = async () => [await leftOf(db, 'resin'), await leftOf(db, 'hardener')];
    const mix = { kind: 'mix-started', mixId: 'cup-1', operationId: 'rev-glue', materialId: 'glue' } as const;
    const cup = (massG: number) => ({ ...mix, massG, temperatureC: 25, lotIds: ['resin', 'hardener'] });
    expect(await send(db, { kind: 'work-done', operationId: 'rev-shape', pieces: [1, 2] })).toMatchObject({ ok: true });
    expect(await send(db, cup(90))).toMatchObject({ ok: true });
    // The hardener's book held 3 g, and 30 were poured: it says so and ends at nothing.
    expect(await lefts()).toEqual([40, 0]);
    const correction = { kind: 'corrected', seq: 3, reason: 'the scale said 9.0' } as const;
    const replacement = { at: EVENING, action: cup(9) };
    expect(await send(db, { ...correction, replacement })).toMatchObject({ ok: true });
    expect(await lefts()).toEqual([94, 27]);
    const ofCup = await db.stockMovement.groupBy({
      by: ['lotId'],
      where: { mixId: 'cup-1' },
      _sum: { quantityMilli: true },
    });
    expect(Object.fromEntries(ofCup.map((row) => [row.lotId, Number(row._sum.quantityMilli)]))).toEqual({
      resin: -6000,
      hardener: -3000,
    });
    expect(await send(db, { ...cup(3), mixId: 'cup-2' })).toMatchObject({ ok: true });
    expect(await lefts()).toEqual([92, 26]);
    const taken = { kind: 'corrected', seq: 5, reason: 'that cup was never mixed', replacement: null } as const;
    expect(await send(db, taken)).toMatchObject({ ok: true });
    expect(await lefts()).toEqual([94, 27]);
  });
});

async function openTestBatch(db: Db): Promise<void> {
  const batch = { batchId: 'batch-stock', revisionId: 'rev', quantity: 2, dueOn: null, orderNote: '', personId: null };
  expect(await openBatch(db, { ...batch, now: EVENING })).toMatchObject({ ok: true });
}

function send(db: Db, action: BatchAction) {
  return recordEvent(db, {
    batchId: 'batch-stock',
    input: { key: newKey(), seenSeq: 1, action },
    personId: 'ada',
    now: EVENING,
  });
}
