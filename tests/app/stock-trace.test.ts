import { expect, test } from 'vitest';
import { importStockList, planStockList } from '@/app/_commands/import-stock-list';
import { issueStock } from '@/app/_commands/issue-stock';
import { openBatch } from '@/app/_commands/open-batch';
import { recordEvent } from '@/app/_commands/record-event';
import { saveCostRates } from '@/app/_commands/save-cost-rates';
import { saveOrderNumbers } from '@/app/_commands/save-order-numbers';
import { loadBatchCost } from '@/app/_server/batch-cost';
import { modelCost } from '@/app/_server/model-cost';
import { loadPiece } from '@/app/_server/piece-page';
import { recallOfLot } from '@/app/_server/recall';
import { stockOutlook } from '@/app/_server/stock-outlook';
import type { BatchAction } from '@/lib/contracts/batch-action';
import { readStockFile } from '@/lib/exchange/stock-file';
import { type Db, isPostgresDb, writeTx } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';
import { listPieceOrders } from '@/prisma/data/piece-orders';
import { insertAcceptedPlan } from '@/prisma/data/plans';
import { findRevision } from '@/prisma/data/revisions';
import { describeBothDatabases } from '../prisma/both-databases';
import { ANCHORS, EVENING, insertTestWorkshop } from './test-workshop';

const BY = { personId: 'ada', nowAt: EVENING };
const BATCH = 'batch-traced';
let keys = 0;
const newKey = () => `trace-key-${++keys}`;

/** A batch of three, shaped, the first two glued from "glue-lot", and 500 mm of a wire of 3 m for 9.00 taken. */
async function workshop(db: Db): Promise<void> {
  await insertTestWorkshop(db);
  const at = new Date(EVENING);
  const wire = { id: 'wire', kind: 'wire', name: 'Wire', sheetRevision: '', note: '', createdAt: at, updatedAt: at };
  await db.material.create({ data: wire });
  const lot = { id: 'spool', materialId: 'wire', code: 'S', part: 'whole', quantity: 3000, quantityUnit: 'mm' };
  const rest = { receivedOn: '2026-01-05', supplierNote: '', priceMinor: 900, createdAt: at };
  await db.lot.create({ data: { ...lot, ...rest } });
  await db.lot.update({ where: { id: 'glue-lot' }, data: { priceMinor: 5000 } });
  const line = { revisionId: 'rev', note: '' };
  await db.billLine.create({ data: { ...line, position: 11, materialId: 'wire', quantity: 1200, quantityUnit: 'mm' } });
  await db.billLine.create({ data: { ...line, position: 12, materialId: 'glue', quantity: 3, quantityUnit: 'g' } });
  const batch = { batchId: BATCH, revisionId: 'rev', quantity: 3, dueOn: '2026-03-20', orderNote: '', personId: null };
  expect(await openBatch(db, { ...batch, now: EVENING })).toMatchObject({ ok: true });
  await send(db, { kind: 'work-done', operationId: 'rev-shape', pieces: [1, 2, 3] });
  const cup = { operationId: 'rev-glue', materialId: 'glue', massG: 10, temperatureC: 25, lotIds: ['glue-lot'] };
  await send(db, { kind: 'mix-started', mixId: 'cup-1', ...cup });
  const joints = [1, 2].flatMap((piece) => ANCHORS.map((anchor) => ({ piece, anchorId: `rev-${anchor}` })));
  await send(db, { kind: 'joints-set', mixId: 'cup-1', joints });
  const form = { key: newKey(), milli: 500_000, foundLeftMilli: null, batchId: BATCH, reason: '' };
  expect(await issueStock(db, 'spool', form, BY)).toMatchObject({ ok: true });
}

async function send(db: Db, action: BatchAction): Promise<void> {
  const input = { key: newKey(), seenSeq: 1, action };
  expect(await recordEvent(db, { batchId: BATCH, input, personId: 'ada', now: EVENING })).toMatchObject({ ok: true });
}

const lotOf = async (db: Db, id: string) => {
  const lot = await findLot(db, id);
  if (lot === null) throw new Error(`no lot ${id}`);
  return lot;
};

describeBothDatabases('tracing and cost', (makeDb) => {
  test('from a bad lot of glue to its joints, pieces and orders, and from a piece to its lots', async () => {
    const db = await makeDb();
    await workshop(db);
    const orders = { orderNumber: 'PO-1', pieces: [{ from: 2, to: 2, orderNumber: 'PO-2' }] };
    expect(await saveOrderNumbers(db, BATCH, orders)).toEqual({ ok: true });
    const beyond = { orderNumber: '', pieces: [{ from: 1, to: 4, orderNumber: 'X' }] };
    expect(await saveOrderNumbers(db, BATCH, beyond)).toMatchObject({ code: 'no-piece', field: 'pieces' });
    expect(await listPieceOrders(db, BATCH)).toEqual({ orderNumber: 'PO-1', lines: ['2 PO-2'] });
    const recall = await recallOfLot(db, await lotOf(db, 'glue-lot'));
    expect(recall).toMatchObject({ jointCount: 6, orderNumbers: ['PO-1', 'PO-2'], mixes: [{ mixId: 'cup-1' }] });
    expect(recall.pieces.map((piece) => [piece.number, piece.places.length])).toEqual([
      [1, 3],
      [2, 3],
    ]);
    // Wire was taken for the whole batch: it may be in any piece.
    const wire = await recallOfLot(db, await lotOf(db, 'spool'));
    expect(wire.pieces.map((piece) => [piece.number, piece.places])).toEqual([
      [1, []],
      [2, []],
      [3, []],
    ]);
    const piece = await loadPiece(db, BATCH, 2);
    expect(piece?.places.flatMap((place) => place.lots.map((lot) => lot.id))).toEqual([
      'glue-lot',
      'glue-lot',
      'glue-lot',
    ]);
    expect(piece?.batchLots).toMatchObject([{ lot: { id: 'spool' }, taken: 500 }]);
    expect(piece?.orderNumber).toBe('PO-2');
    expect(await loadPiece(db, BATCH, 4)).toBeNull();
  });

  test('what a batch took is paid at the price of its lots, and carried by the good pieces', async () => {
    const db = await makeDb();
    await workshop(db);
    await saveCostRates(db, { labourPerHourMinor: 3000, marginShare: 0.4 }, EVENING);
    await send(db, { kind: 'pieces-scrapped', pieces: [3], reason: 'split' });
    const cost = await loadBatchCost(db, BATCH);
    // 10 g of 500 g for 50.00, 500 mm of 3 m for 9.00.
    expect(cost?.uses.map((use) => [use.lot.id, use.taken, use.costMinor])).toEqual([
      ['glue-lot', 10, 100],
      ['spool', 500, 150],
    ]);
    expect(cost?.cost.materialsMinor).toBe(250);
    expect(cost?.cost.perGoodPieceMinor).toBe(Math.round((cost?.cost.totalMinor ?? 0) / 2));
    expect(cost?.bill.map((line) => [line.materialId, line.missing])).toEqual([
      ['wire', 1900],
      ['glue', 0],
    ]);
  });

  test('standard cost comes from packs and newest lots, and grows with what is spoilt', async () => {
    const db = await makeDb();
    await workshop(db);
    await db.material.update({
      where: { id: 'wire' },
      data: { stockUnit: 'mm', packQuantity: 10_000, packPriceMinor: 2000 },
    });
    const revision = await findRevision(db, 'rev');
    if (revision === null) throw new Error('no revision');
    const asked = (scrapShare: number, scrapAt = new Map<string, number>()) =>
      modelCost(db, revision, { goodPieces: 10, scrapShare, scrapAt, labourPerHourMinor: null });
    // 1200 mm at 0.2 and 3 g at 10 each: 270 a piece.
    expect((await asked(0)).cost).toMatchObject({ totalMinor: 2700, perGoodPieceMinor: 270 });
    expect((await asked(0.5)).cost).toMatchObject({ totalMinor: 5400, perGoodPieceMinor: 540 });
    expect((await asked(0)).parts.map((part) => part.minor)).toContain(null);
    // Half are spoilt at the last step, which no material goes into: all of it was in them.
    const [last] = revision.operations.slice(-1);
    expect((await asked(0, new Map([[last?.id ?? '', 0.5]]))).cost.totalMinor).toBe(5400);
    // Spoilt at the first: 20 pieces have taken wire, and only the 10 that went on have taken glue.
    expect((await asked(0, new Map([['rev-shape', 0.5]]))).cost.totalMinor).toBe(10 * 2 * 240 + 10 * 30);
  });

  test('a batch reserves its bill less what it took, and a shortage bites on its day', async () => {
    const db = await makeDb();
    await workshop(db);
    const wire = (await stockOutlook(db, '2026-03-10')).find((line) => line.material.id === 'wire');
    // 3 pieces of 1.2 m less the 0.5 m taken; 2.5 m are left.
    expect(wire?.outlook).toMatchObject({
      leftMilli: 2_500_000,
      reservedMilli: 3_100_000,
      shortage: { bitesOn: '2026-03-20', shortMilli: 600_000, first: { batchNumber: 1 } },
    });
    await send(db, { kind: 'pieces-scrapped', pieces: [3], reason: 'split' });
    const after = (await stockOutlook(db, '2026-03-10')).find((line) => line.material.id === 'wire');
    expect(after?.outlook).toMatchObject({ reservedMilli: 1_900_000, shortage: null });
  });

  test('with an accepted plan a shortage bites at the next visit to the bench', async () => {
    const db = await makeDb();
    await workshop(db);
    const [startAt, finishAt] = [Date.UTC(2026, 2, 12, 18), Date.UTC(2026, 2, 12, 19)];
    const visit = {
      key: 'v',
      batchId: BATCH,
      batchNumber: 1,
      modelName: 'Test lure rev',
      operationId: 'rev-glue',
      taskKey: 'rev-glue.1',
      operationName: 'glue',
      kind: 'glue' as const,
      materialName: null,
      pieces: [3],
      state: 'open' as const,
      personId: null,
      startAt,
      finishAt,
      stretches: [{ startAt, endAt: finishAt }],
      setUpMinutes: 0,
      remedies: [],
      curedAt: null,
      closesAt: null,
      waitsFor: null,
      holds: [],
    };
    const value = {
      conflicts: 0,
      weightedLateMinutes: 0,
      closedWindows: 0,
      sessions: 1,
      setUps: 1,
      makespanMinute: 60,
    };
    const rest = {
      unplaced: [],
      pinClashes: [],
      batches: [],
      value,
      unavoidableLateMinutes: null,
      isProvedBest: false,
    };
    const timetable = { visits: [visit], ...rest, moved: [], whatIf: [] };
    const plan = { fromOn: '2026-03-10', toOn: '2026-03-24', timetable };
    await writeTx(db, (tx) => insertAcceptedPlan(tx, isPostgresDb(db), plan, EVENING));
    const wire = (await stockOutlook(db, '2026-03-10')).find((line) => line.material.id === 'wire');
    expect(wire?.outlook?.shortage).toMatchObject({ bitesOn: '2026-03-12', shortMilli: 600_000 });
  });

  test('a list of stock is taken in once, next to what is there', async () => {
    const db = await makeDb();
    await insertTestWorkshop(db);
    const file = [
      'material,lot,part,quantity,price',
      'TEST GLUE,L1,,500 g,',
      'Test glue,L2,resin,250 g,12.50',
      'Alder,,,3 m,',
      'alder,,,2 m,',
      'Alder,X,resin,2 m,',
    ].join('\n');
    const read = readStockFile(new TextEncoder().encode(file), 'EUR', null);
    const rows = read.state === 'read' ? read.rows : [];
    const plan = await planStockList(db, rows);
    expect(plan.rows.map((row) => row.line)).toEqual([3, 4]);
    expect(plan).toMatchObject({ newMaterials: ['Alder'], knownLines: [2, 5], wrongParts: [6] });
    expect(await importStockList(db, rows, EVENING)).toEqual({ lots: 2, materials: 1 });
    expect(await importStockList(db, rows, EVENING)).toEqual({ lots: 0, materials: 0 });
    const lots = await db.lot.findMany({ where: { code: 'L2' } });
    expect(lots).toMatchObject([{ part: 'resin', quantity: 250, priceMinor: 1250, receivedOn: '2026-03-10' }]);
  });
});
