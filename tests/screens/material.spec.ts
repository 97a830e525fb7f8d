import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { openBatch } from '@/app/_commands/open-batch';
import type { BatchAction } from '@/lib/contracts/batch-action';
import { HOUR_MS } from '@/lib/units/instant';
import { createDb } from '@/prisma/client';
import { migrateToNewest } from '@/prisma/ops/migrate';
import { ANCHORS, insertTestWorkshop, TEST_SHEET } from '../app/test-workshop';
import { expect, test } from './workshop';

/*
 * Material for a batch from the shelf to the buyer: wire runs short and more is bought, cups take from their lots, the
 * batch is finished and paid, and a bad lot of hardener is traced to the pieces that hold it.
 */

const BATCH = 'batch-of-material';
const PIECES = [1, 2, 3, 4];

/** A shop with a two-part glue, a nearly empty spool of wire, and a batch of four. */
async function prepareShop(url: string): Promise<void> {
  await migrateToNewest(url);
  const db = await createDb(url);
  await insertTestWorkshop(db);
  const figures = { ...TEST_SHEET, ratio: { partsA: 2, partsB: 1, basis: 'mass' } };
  await db.material.update({ where: { id: 'glue' }, data: { figures: JSON.parse(JSON.stringify(figures)) } });
  const createdAt = new Date();
  const wire = { id: 'wire', kind: 'wire', name: 'Soft wire', sheetRevision: '', note: '', createdAt };
  await db.material.create({ data: { ...wire, updatedAt: createdAt } });
  const rest = { receivedOn: '2026-01-05', supplierNote: '', createdAt };
  for (const [id, materialId, code, part, quantity, quantityUnit, priceMinor] of [
    ['resin', 'glue', 'R-1', 'resin', 200, 'g', 2000],
    ['hardener', 'glue', 'H-1', 'hardener', 100, 'g', 1500],
    ['spool-1', 'wire', 'Spool 1', 'whole', 300, 'mm', 90],
  ] as const) {
    await db.lot.create({ data: { id, materialId, code, part, quantity, quantityUnit, priceMinor, ...rest } });
  }
  const eye = { kind: 'twisted-wire', wireMaterialId: 'wire', wireDiameterMm: 0.9, twistPitchMm: 6, eyeInsideMm: 3 };
  const hole = { bitDiameterMm: 2.5, drillDepthMm: 25, embedmentMm: 25 };
  await db.anchor.updateMany({ where: { revisionId: 'rev' }, data: { ...eye, ...hole } });
  // Shape and glue are all there is to it.
  await db.routeOperation.deleteMany({ where: { NOT: { id: { in: ['rev-shape', 'rev-glue'] } } } });
  const line = { revisionId: 'rev', position: 11, materialId: 'wire', quantity: 250, quantityUnit: 'mm', note: '' };
  await db.billLine.create({ data: line });
  const form = {
    batchId: BATCH,
    revisionId: 'rev',
    quantity: PIECES.length,
    dueOn: null,
    orderNote: '',
    personId: null,
  };
  await openBatch(db, { ...form, now: Date.now() - 3 * HOUR_MS });
  await db.$disconnect();
}

const dialog = (page: Page) => page.locator('dialog[open]');

test('wire runs short, more comes in, the batch is paid, and a bad lot of hardener is found again', async ({
  page,
  startWorkshop,
}) => {
  test.setTimeout(300_000);
  const folder = mkdtempSync(path.join(tmpdir(), 'material-'));
  const databaseUrl = `file:${path.join(folder, 'workshop.db')}`;
  await prepareShop(databaseUrl);
  const { url } = await startWorkshop({ databaseUrl, startsEmpty: true });
  let key = 0;
  const send = async (action: BatchAction) => {
    key += 1;
    const data = { key: `material-key-${key}`, seenSeq: 1, action };
    const answer = await page.request.post(`${url}/api/v1/batches/${BATCH}/events`, { headers: { origin: url }, data });
    expect(answer.status(), await answer.text()).toBe(201);
  };

  // Before the glue-up: two mixes that share the joints, doses ticked off to stay, and too little wire for the eyes.
  await page.goto(`${url}/batches/${BATCH}/prepare`);
  await page.getByRole('button', { name: 'Prepare', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Mix 2' })).toBeVisible();
  await expect(page.getByText('6.2 g', { exact: true })).toHaveCount(2);
  await expect(page.getByText(/^Short of wire: at least \d+ mm more is needed/)).toBeVisible();
  await page.getByRole('button', { name: 'Poured: Resin A, mix 1' }).click();
  await expect(page.getByRole('button', { name: 'Take back: Poured: Resin A, mix 1' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('button', { name: 'Take back: Poured: Resin A, mix 1' })).toBeVisible();
  await page.getByRole('link', { name: 'Traveler' }).click();
  await expect(page.getByRole('img', { name: 'Code that opens the batch on a phone' })).toBeVisible();

  // One metre of wire is needed and 300 mm lie there.
  await page.goto(`${url}/stock/shortages`);
  await expect(page.getByRole('row', { name: /^Soft wire/ })).toContainText('700 mm');
  await page.goto(`${url}/batches/${BATCH}/used`);
  await expect(page.getByRole('row', { name: /^Soft wire/ })).toContainText('700 mm short');
  await page
    .getByRole('row', { name: /^Soft wire/ })
    .getByRole('button', { name: 'Take' })
    .click();
  await dialog(page).getByLabel('Taken from Spool 1').fill('1 m');
  await dialog(page).getByRole('button', { name: 'Take from Spool 1' }).click();
  await expect(dialog(page)).toContainText('By the book only 300 mm is left of lot Spool 1: 700 mm too little.');
  await dialog(page).getByLabel('Taken from Spool 1').fill('300');
  await dialog(page).getByRole('button', { name: 'Take from Spool 1' }).click();
  await expect(page.getByRole('row', { name: /^Soft wire/ })).toContainText('no lot');

  // A new spool comes in, and the rest is taken from it.
  await page.goto(`${url}/stock/wire/lots/new`);
  await page.getByLabel('Lot code').fill('Spool 2');
  await page.locator('[name="quantity"]').fill('5 m');
  await page.locator('[name="unit"]').selectOption('mm');
  await page.getByLabel('Paid for it').fill('€2.00');
  await page.getByRole('button', { name: 'Add the lot' }).click();
  await expect(page.getByRole('row', { name: /Spool 2/ })).toContainText('5000 mm');
  await page.goto(`${url}/batches/${BATCH}/used`);
  await page
    .getByRole('row', { name: /^Soft wire/ })
    .getByRole('button', { name: 'Take' })
    .click();
  await expect(dialog(page).getByLabel('Taken from Spool 2')).toHaveValue('700');
  await dialog(page).getByRole('button', { name: 'Take from Spool 2' }).click();
  await expect(page.getByRole('row', { name: /^Soft wire/ })).toContainText('Done');

  // A length ticked off as cut leaves its spool, and is given back: it was for trying only.
  await page.goto(`${url}/batches/${BATCH}/prepare`);
  await expect(page.getByText(/^Counted with 1.5 times what geometry asks for, the usual figure/)).toBeVisible();
  await page.getByRole('button', { name: 'Prepare anew' }).click();
  await page.getByRole('button', { name: 'Cut: length 1' }).click();
  await expect(page.getByRole('button', { name: 'Take back: Cut: length 1' })).toBeVisible();
  await page.getByText('Weigh what is left').click();
  await page.getByLabel('Left in cups and on sticks, g').fill('99');
  await page.getByRole('button', { name: 'Keep the weighing' }).click();
  await expect(page.getByText('No more can be left than was mixed.')).toBeVisible();
  await page.getByLabel('Left in cups and on sticks, g').fill('10.5');
  await page.getByRole('button', { name: 'Keep the weighing' }).click();
  await expect(page.getByText('10.5 g were left')).toBeVisible();
  await page.getByRole('button', { name: 'Take back: Cut: length 1' }).click();
  await expect(page.getByRole('button', { name: 'Cut: length 1', exact: true })).toBeVisible();

  // Two cups: the first of the lots at hand, the second noted without lots.
  await send({ kind: 'work-done', operationId: 'rev-shape', pieces: PIECES });
  const cup = { operationId: 'rev-glue', materialId: 'glue', massG: 9, temperatureC: 25 };
  const joints = (pieces: readonly number[]) =>
    pieces.flatMap((piece) => ANCHORS.map((anchor) => ({ piece, anchorId: `rev-${anchor}` })));
  await send({ kind: 'mix-started', mixId: 'cup-1', ...cup, lotIds: ['resin', 'hardener'] });
  await send({ kind: 'joints-set', mixId: 'cup-1', joints: joints([1, 2]) });
  await send({ kind: 'mix-closed', mixId: 'cup-1' });
  await send({ kind: 'mix-started', mixId: 'cup-2', ...cup, lotIds: [] });
  await send({ kind: 'joints-set', mixId: 'cup-2', joints: joints([3]) });
  await send({ kind: 'mix-closed', mixId: 'cup-2' });
  await send({ kind: 'pieces-scrapped', pieces: [4], reason: 'Split.' });
  await page.goto(`${url}/stock/glue/lots/hardener`);
  await expect(page.getByRole('heading', { name: '97.0 g left' })).toBeVisible();
  await expect(page.getByRole('row', { name: /1\. Taken/ })).toContainText('Mix 1');

  // Finished: 6 g of resin at 0.10, 3 g of hardener at 0.15, 300 mm of wire at 0.90 and 700 mm at 0.04 the 100.
  await send({ kind: 'batch-finished' });
  await page.goto(`${url}/batches/${BATCH}/used`);
  await page.getByLabel('Buyer’s order number').fill('PO-77');
  await page.getByLabel('Pieces of another order').fill('2 PO-78');
  await page.getByRole('button', { name: 'Save the orders' }).click();
  await expect(page.getByText('Saved.')).toBeVisible();
  await expect(page.getByText('2.23 EUR', { exact: true })).toBeVisible();
  await expect(page.getByText('0.74 EUR for each of 3 good pieces')).toBeVisible();

  // The hardener turns out bad: two pieces of two orders hold it, in one step and as a file.
  await page.goto(`${url}/stock/trace?q=H-1`);
  await page.getByRole('link', { name: /H-1/ }).click();
  await expect(page.getByText('1 mix, 6 joints, 2 pieces, 0 pulls.')).toBeVisible();
  await expect(page.getByText('PO-77, PO-78')).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save as CSV' }).click();
  const lines = readFileSync(await (await download).path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(lines).toHaveLength(3);
  expect(lines[2]).toContain('H-1,hardener,Test glue,1,2,Test lure rev,A,PO-78,');
  await page.getByRole('link', { name: '1-2' }).click();
  await expect(page.getByRole('row', { name: /^belly/ })).toContainText('lot R-1 resin, lot H-1 hardener');
  rmSync(folder, { recursive: true, force: true });
});
