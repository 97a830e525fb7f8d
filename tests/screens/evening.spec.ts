import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { createDb } from '@/prisma/client';
import { migrateToNewest } from '@/prisma/ops/migrate';
import { insertTestWorkshop } from '../app/test-workshop';
import { expect, test } from './workshop';

/*
 * An evening at the bench and the day after it, as a maker lives it. The shop of the tests holds 25 degC all week, at
 * which its glue may be painted after 24 hours; one night is colder than anybody thought.
 */

const SIZES = [
  { name: 'a phone', width: 360, height: 740 },
  { name: 'a desk', width: 1440, height: 900 },
] as const;

/** An empty workshop with one model, two materials, and a logger that has not said anything yet. */
async function prepareShop(url: string): Promise<void> {
  await migrateToNewest(url);
  const db = await createDb(url);
  await insertTestWorkshop(db);
  const createdAt = new Date();
  await db.sensor.create({ data: { id: 'shelf', name: 'Shelf logger', place: 'over the bench', createdAt } });
  await db.shop.updateMany({ data: { cureSensorId: 'shelf' } });
  await db.$disconnect();
}

/** Ten-minute readings of 12 degC between two instants, as a logger writes them. */
function coldNight(fromMs: number, toMs: number): string {
  const lines = ['time,temperature_C'];
  for (let at = fromMs; at <= toMs; at += 10 * MINUTE_MS) lines.push(`${new Date(at).toISOString()},12.0`);
  return lines.join('\n');
}

/** From an instant to the next noon of UTC. */
function untilNoonUtcMs(atMs: number): number {
  const dayMs = 24 * HOUR_MS;
  return (((12 * HOUR_MS - atMs) % dayMs) + dayMs) % dayMs;
}

async function expectNoAxeViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}

const saved = (page: Page) => page.getByRole('status').getByText('Saved:');

for (const { name, width, height } of SIZES) {
  test.describe(`on ${name}`, () => {
    test.use({ viewport: { width, height } });

    test('an evening: a batch of 24, two mixes, a pot life that runs out, a cold night, paint the day after', async ({
      page,
      startWorkshop,
    }) => {
      test.setTimeout(240_000);
      const folder = mkdtempSync(path.join(tmpdir(), 'evening-'));
      const databaseUrl = `file:${path.join(folder, 'workshop.db')}`;
      await prepareShop(databaseUrl);
      const workshop = await startWorkshop({ databaseUrl, startsEmpty: true });
      // At seven or six in the morning of the shop, whenever the tests run: what is said of hours names days otherwise.
      const morningMs = untilNoonUtcMs(Date.now());
      const setClockAhead = (ms: number) => workshop.setClockAhead(morningMs + ms);
      setClockAhead(0);
      const goTo = (to: string) => page.goto(`${workshop.url}${to}`);

      await test.step('opens a batch of 24, which freezes the draft', async () => {
        await goTo('/');
        await expect(page.getByText('No batch is open')).toBeVisible();
        await page.getByRole('link', { name: 'Open a batch' }).click();
        await page.getByRole('button', { name: 'Open the batch' }).click();
        await expect(page.getByText('Choose a model.')).toBeVisible();
        await page.getByLabel('Model').selectOption({ label: 'Test lure rev, revision A (draft)' });
        await page.getByLabel('Pieces').fill('24');
        await page.getByLabel('Order note').fill('Evening order');
        await page.getByRole('button', { name: 'Open the batch' }).click();
        await expect(page.getByRole('heading', { level: 1, name: 'Batch 1' })).toBeVisible();
        await expect(page.getByText('Revision A was a draft.')).toBeVisible();
      });
      const batchId = /\/batches\/([^?]+)/.exec(page.url())?.[1] ?? '';

      await test.step('shapes all pieces: two touches', async () => {
        await goTo('/');
        await page.getByRole('button', { name: 'Done', exact: true }).click();
        await page.getByRole('button', { name: 'Done on 24 pieces' }).click();
        await expect(saved(page)).toBeVisible();
      });

      await test.step('starts a mix with what is filled in: two touches', async () => {
        await page.getByRole('button', { name: 'Start a mix' }).click();
        await expect(page.getByText('Wear gloves made for epoxy')).toBeVisible();
        await expect(page.getByText('Use it within 34 min of mixing')).toBeVisible();
        await page.getByRole('button', { name: 'Start the mix now' }).click();
        await expect(page.getByRole('heading', { name: 'Mix 1, batch 1' })).toBeVisible();
        await expect(page.getByRole('timer')).toHaveText(/^3[23]:\d\d$/);
      });

      await test.step('the countdown survives a reload', async () => {
        await page.reload();
        await expect(page.getByRole('timer')).toHaveText(/^3[23]:\d\d$/);
        await expectNoAxeViolations(page);
      });

      await test.step('sets six pieces in two touches', async () => {
        await page.getByRole('button', { name: 'Set joints' }).first().click();
        await page.getByRole('button', { name: 'Set 18 joints' }).click();
        await expect(saved(page)).toBeVisible();
        await expect(page.getByText('18 joints so far')).toBeVisible();
      });

      await test.step('the pot life runs out unheard: expired, and what is set now is late', async () => {
        setClockAhead(40 * MINUTE_MS);
        await page.reload();
        await expect(page.getByRole('timer')).toHaveText('Expired');
        await expect(page.getByText('Treat what is left in the cup as expired')).toBeVisible();
        await page.getByRole('button', { name: 'Set joints' }).first().click();
        await page.getByRole('button', { name: 'Set 18 joints' }).click();
        await expect(page.getByText('Recorded as late')).toBeVisible();
        await page.getByRole('button', { name: 'Understood' }).click();
        await page.getByRole('button', { name: 'Close mix' }).click();
        await expect(page.getByRole('heading', { name: 'Mix 1, batch 1' })).toBeHidden();
      });

      await test.step('a second mix for the rest; closed by mistake, taken back, closed again', async () => {
        await page.getByRole('button', { name: 'Start a mix' }).click();
        await page.getByRole('button', { name: 'Start the mix now' }).click();
        await page.getByRole('button', { name: 'Set joints' }).first().click();
        await page.getByRole('button', { name: 'All', exact: true }).click();
        await page.getByRole('button', { name: 'Set 36 joints' }).click();
        await expect(page.getByText('36 joints so far')).toBeVisible();
        await page.getByRole('button', { name: 'Close mix' }).click();
        await expect(page.getByRole('timer')).toBeHidden();
        await page.getByRole('button', { name: 'Undo' }).click();
        await expect(page.getByRole('timer')).toBeVisible();
        await page.getByRole('button', { name: 'Close mix' }).click();
        await expect(page.getByRole('timer')).toBeHidden();
      });

      await test.step('the batch shows the late joints, its clocks and its history', async () => {
        await goTo(`/batches/${batchId}`);
        await expect(page.getByText('set after the pot life')).toBeVisible();
        await expect(page.getByText('18 late')).toBeVisible();
        await expect(page.getByRole('img', { name: /Mixes and cures over time/ })).toBeVisible();
        await expect(page.getByText('Entry 9 taken back: Taken back at once')).toBeVisible();
        await expectNoAxeViolations(page);
      });

      const paint = { kind: 'work-done', operationId: 'rev-paint', pieces: [1, 2, 3] };
      const tryToPaint = (key: string) =>
        page.request.post(`${workshop.url}/api/v1/batches/${batchId}/events`, {
          headers: { origin: workshop.url },
          data: { key, seenSeq: 99, action: paint },
        });
      const mixedMs = Date.now() + morningMs;

      await test.step('by the usual week the paint may go on 28 hours after the mix', async () => {
        setClockAhead(28 * HOUR_MS);
        await goTo('/');
        await expect(page.getByRole('button', { name: 'Done', exact: true })).toHaveCount(1);
        await expect(page.getByText(/not yet at paint after glue/)).toHaveCount(0);
      });

      await test.step('a cold night arrives as a file', async () => {
        setClockAhead(12 * HOUR_MS);
        await goTo('/shop/temperature/import');
        await page.getByLabel('File of the logger').setInputFiles({
          name: 'night.csv',
          mimeType: 'text/csv',
          buffer: Buffer.from(coldNight(mixedMs + HOUR_MS, mixedMs + 11 * HOUR_MS)),
        });
        await keepImport(page);
      });

      await test.step('it moves the hour of paint: 28 hours after the mix it is refused, and the answer says until when', async () => {
        setClockAhead(28 * HOUR_MS);
        await goTo('/');
        // Both mixes are held, each with its own pieces.
        await expect(page.getByText(/pieces 1-12 not yet at paint after glue: from \d/)).toBeVisible();
        await expect(page.getByText(/pieces 13-24 not yet at paint after glue: from \d/)).toBeVisible();
        await expect(page.getByRole('button', { name: 'Done', exact: true })).toHaveCount(0);
        const refused = await tryToPaint('paint-too-early-1');
        expect(refused.status()).toBe(409);
        expect((await refused.json()).message).toMatch(/^3 pieces \(1-3\) not yet at paint after glue: from \d/);
      });

      await test.step('a day later it is allowed', async () => {
        setClockAhead(49 * HOUR_MS);
        await goTo('/');
        await page.getByRole('button', { name: 'Done', exact: true }).first().click();
        await expect(page.getByText('flames and sparks')).toBeVisible();
        await page.getByRole('button', { name: 'Done on 24 pieces' }).click();
        await expect(saved(page)).toBeVisible();
        await expect(page.getByRole('heading', { name: 'coat-1' })).toBeVisible();
      });
      rmSync(folder, { recursive: true, force: true });
    });
  });
}

/** Takes in what was read from the file; the only logger is chosen already. */
async function keepImport(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Take in these readings' }).click();
  await expect(page.getByRole('link', { name: 'See the temperature' })).toBeVisible();
}
