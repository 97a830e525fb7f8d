import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { openBatch } from '@/app/_commands/open-batch';
import type { BatchAction } from '@/lib/contracts/batch-action';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { createDb } from '@/prisma/client';
import { migrateToNewest } from '@/prisma/ops/migrate';
import type { Workshop } from '../app/serve-workshop';
import { insertTestWorkshop } from '../app/test-workshop';
import { expect, test } from './workshop';

/* What the Bench promises when the network fails, a phone sleeps, a sound is wanted, or a hand slips. */

const BATCH = 'batch-of-the-test';

test.use({ viewport: { width: 360, height: 740 } });

/** A shop with one batch of ten pieces. */
async function prepareShop(url: string): Promise<void> {
  await migrateToNewest(url);
  const db = await createDb(url);
  await insertTestWorkshop(db);
  const form = { batchId: BATCH, revisionId: 'rev', quantity: 10, dueOn: null, orderNote: '', personId: null };
  await openBatch(db, { ...form, now: Date.now() - 3 * HOUR_MS });
  await db.$disconnect();
}

/** Records an action as another device does. */
function sendFrom(page: Page, workshop: Workshop, key: string, action: BatchAction, more: object = {}) {
  return page.request.post(`${workshop.url}/api/v1/batches/${BATCH}/events`, {
    headers: { origin: workshop.url },
    data: { key, seenSeq: 3, action, ...more },
  });
}

type StartWorkshop = (options: { databaseUrl: string; startsEmpty: boolean }) => Promise<Workshop>;

/** The served shop with its pieces shaped and a mix that was started `minutesAgo`, and its Bench open. */
async function onBench(
  page: Page,
  startWorkshop: StartWorkshop,
  minutesAgo: number,
): Promise<{ workshop: Workshop; folder: string }> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-'));
  const databaseUrl = `file:${path.join(folder, 'workshop.db')}`;
  await prepareShop(databaseUrl);
  const workshop = await startWorkshop({ databaseUrl, startsEmpty: true });
  const shape: BatchAction = { kind: 'work-done', operationId: 'rev-shape', pieces: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] };
  const mix: BatchAction = {
    kind: 'mix-started',
    mixId: 'mix-of-the-test',
    operationId: 'rev-glue',
    materialId: 'glue',
    massG: 10,
    temperatureC: 25,
    lotIds: [],
  };
  const now = Date.now();
  expect((await sendFrom(page, workshop, 'prepared-shape', shape, { at: now - 2 * HOUR_MS })).status()).toBe(201);
  expect((await sendFrom(page, workshop, 'prepared-mix', mix, { at: now - minutesAgo * MINUTE_MS })).status()).toBe(
    201,
  );
  await page.goto(workshop.url);
  return { workshop, folder };
}

const timer = (page: Page) => page.getByRole('timer');

async function writeNote(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'Write a note' }).click();
  await page.getByLabel('Note', { exact: true }).fill(text);
  await page.getByRole('button', { name: 'Keep the note' }).click();
}

test.describe('without a network', () => {
  test.use({ expectedErrors: [/ERR_INTERNET_DISCONNECTED/] });

  test('what was done is kept, said to be unsaved, and sent once the network is back', async ({
    page,
    startWorkshop,
  }) => {
    const { workshop, folder } = await onBench(page, startWorkshop, 5);
    await page.context().setOffline(true);
    await writeNote(page, 'written in the cellar');
    await expect(page.getByText('Not saved yet:')).toBeVisible();
    await page.getByRole('button', { name: 'Set joints' }).first().click();
    await page.getByRole('button', { name: 'Set 18 joints' }).click();
    await expect(page.getByText(/Not saved yet:.*note.*18 joints/)).toBeVisible();

    // The phone is put away: the page goes, and what is unsent waits in the browser.
    const [context, second] = [page.context(), await page.context().newPage()];
    await page.close();
    await context.setOffline(false);
    await second.goto(workshop.url);
    await expect(second.getByText('18 joints so far')).toBeVisible();
    await expect(second.getByText('Note: written in the cellar')).toHaveCount(1);
    await expect(second.getByText('Not saved yet:')).toBeHidden();
    rmSync(folder, { recursive: true, force: true });
  });
});

test('a phone that slept shows the truth at the first look, without a reload', async ({ page, startWorkshop }) => {
  const { workshop, folder } = await onBench(page, startWorkshop, 5);
  await expect(timer(page)).toHaveText(/^2[89]:\d\d$/);
  workshop.setClockAhead(31 * MINUTE_MS);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect(timer(page)).toHaveText('Expired');
  await expect(page.getByText('Treat what is left in the cup as expired')).toBeVisible();
  rmSync(folder, { recursive: true, force: true });
});

test('the alarm says whether it can be heard, rings near the end, and stays silenced over a reload', async ({
  page,
  startWorkshop,
}) => {
  // Counts the tones the page asks the browser for.
  await page.addInitScript(() => {
    const start = OscillatorNode.prototype.start;
    OscillatorNode.prototype.start = function (...args) {
      document.documentElement.dataset.tones = String(Number(document.documentElement.dataset.tones ?? 0) + 1);
      start.apply(this, args);
    };
  });
  const { folder } = await onBench(page, startWorkshop, 31);
  await expect(timer(page)).toHaveText(/^[12]:\d\d$/);
  await expect(page.getByText('Closing', { exact: true })).toBeVisible();
  await page.getByRole('heading', { name: 'Bench' }).click();
  await expect(page.getByText('No sound until you touch this screen once.')).toBeHidden();
  await expect(page.locator('html')).toHaveAttribute('data-tones', '2');
  await page.getByRole('button', { name: 'Silence the alarm' }).click();
  await page.reload();
  await expect(page.getByRole('button', { name: 'Alarm silenced: switch on' })).toBeVisible();
  rmSync(folder, { recursive: true, force: true });
});

test('a slip is corrected from the Bench: another mass, and the countdown follows', async ({ page, startWorkshop }) => {
  const { folder } = await onBench(page, startWorkshop, 5);
  await page
    .getByRole('listitem')
    .filter({ hasText: 'Mix 1 started' })
    .getByRole('button', { name: 'Correct' })
    .click();
  await page.getByText('It happened otherwise').click();
  await page.getByLabel('Mass in the cup').fill('nine');
  await page.getByRole('button', { name: 'Put this in its place' }).click();
  await expect(page.getByText('This is no number.')).toBeVisible();
  await page.getByLabel('Mass in the cup').fill('100');
  await page.getByRole('button', { name: 'Put this in its place' }).click();
  // 30 minutes at 100 g and 25 degC, as the sheet says, five of which are gone.
  await expect(timer(page)).toHaveText(/^2[45]:\d\d$/);
  await expect(page.getByText(/100\.0 g of Test glue/).first()).toBeVisible();
  rmSync(folder, { recursive: true, force: true });
});

test.describe('with two phones', () => {
  // The browser itself notes the refused request.
  test.use({ expectedErrors: [/status of 409/] });

  test('the slower one is told who was faster, and keeps what it had picked', async ({ page, startWorkshop }) => {
    const { workshop, folder } = await onBench(page, startWorkshop, 5);
    await page.getByRole('button', { name: 'Set joints' }).first().click();
    await expect(page.getByRole('button', { name: 'Set 18 joints' })).toBeVisible();
    const joints = ['line-tie', 'belly', 'tail'].map((name) => ({ piece: 1, anchorId: `rev-${name}` }));
    const setByBen: BatchAction = { kind: 'joints-set', mixId: 'mix-of-the-test', joints };
    const other = await sendFrom(page, workshop, 'the-faster-phone', setByBen, { personId: 'ben' });
    expect(other.status()).toBe(201);
    await page.getByRole('button', { name: 'Set 18 joints' }).click();
    await expect(page.getByText(/Someone else just changed this\. Ben at/)).toBeVisible();
    await page.getByRole('button', { name: 'Piece 1', exact: true }).click();
    await page.getByRole('button', { name: 'Set 15 joints' }).click();
    await expect(page.getByText('18 joints so far')).toBeVisible();
    rmSync(folder, { recursive: true, force: true });
  });
});
