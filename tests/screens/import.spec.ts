import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './workshop';

/*
 * A log that leaves things open, as it comes from an old logger: no unit, dates that can be read both ways, values that
 * are missing. The page asks, keeps what was answered, and takes in nothing before it is told to.
 */

const OPEN_LOG = [
  'Logger;Old one',
  'Date;Time;Value',
  '03/04/2026;10:00;64,4',
  '03/04/2026;10:15;--',
  '03/04/2026;10:30;63,5',
  '03/04/2026;10:30;63,9',
].join('\r\n');

async function choose(page: Page, name: string, text: string): Promise<void> {
  await page
    .getByLabel(/ile of (the|a) logger/)
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

async function expectNoAxeViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wider, 'pixels wider than the screen').toBeLessThanOrEqual(0);
}

test.use({ expectedErrors: [/status of 422/] });

test('a log that leaves things open, on a phone and on a desk', async ({ page, startWorkshop }) => {
  test.setTimeout(240_000);
  const workshop = await startWorkshop({ startsEmpty: true });
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(`${workshop.url}/shop/temperature/import`);
  await expectNoAxeViolations(page);

  await test.step('asks what the file does not tell', async () => {
    await choose(page, 'old-logger.csv', OPEN_LOG);
    await expect(page.getByText('Something has to be answered')).toBeVisible();
    await page.getByRole('button', { name: 'Read the file with this' }).click();
    await expect(page.getByText('This has to be answered: the file does not tell.')).toHaveCount(2);
    await expectNoAxeViolations(page);
    await expectNoSidewaysScroll(page);
    await page.getByLabel('Day first').check();
    await page.getByRole('button', { name: 'Read the file with this' }).click();
    await expect(page.getByText('This has to be answered: the file does not tell.')).toHaveCount(1);
    await expect(page.getByLabel('Day first')).toBeChecked();
    await page.getByLabel('°F').check();
    await page.getByRole('button', { name: 'Read the file with this' }).click();
  });

  await test.step('shows what it understood, and what it refused and why', async () => {
    await expect(page.getByText('2 readings can be taken in. Nothing is kept yet.')).toBeVisible();
    await expect(page.getByText('Fri 3 Apr 2026 10:00').first()).toBeVisible();
    await expect(page.getByText('18.0 °C').first()).toBeVisible();
    await page.getByText('Show them').click();
    await expect(page.getByText('03/04/2026;10:15;--')).toBeVisible();
    await expectNoAxeViolations(page);
    await expectNoSidewaysScroll(page);
    await page.setViewportSize({ width: 1440, height: 900 });
    await expectNoAxeViolations(page);
  });

  await test.step('can be read differently', async () => {
    await page.getByText('Read the file differently').click();
    await page.getByLabel('Time zone of the logger').fill('Mars/Olympus');
    await page.getByRole('button', { name: 'Read the file with this' }).click();
    await expect(page.getByText('Write the zone as region/city')).toBeVisible();
    await page.getByLabel('Time zone of the logger').fill('Europe/Oslo');
    await page.getByLabel('Month first').check();
    await page.getByRole('button', { name: 'Read the file with this' }).click();
    await expect(page.getByText('Europe/Oslo, where a row names no zone')).toBeVisible();
    await expect(page.getByText('month first (as you said)')).toBeVisible();
    await expect(page.getByText('°F (as you said)')).toBeVisible();
  });

  await test.step('wants to know the sensor, and takes the log in', async () => {
    await page.getByRole('button', { name: 'Take in these readings' }).click();
    await expect(page.getByText('write something here')).toBeVisible();
    await page.getByLabel('Name of the new sensor').fill('Old logger');
    await page.getByRole('button', { name: 'Take in these readings' }).click();
    await expect(
      page.getByText('2 readings of Old logger were taken in. Every clock is read anew with them.'),
    ).toBeVisible();
    await expectNoAxeViolations(page);
  });

  await test.step('the same file once more is known', async () => {
    await page.reload();
    await choose(page, 'old-logger.csv', OPEN_LOG);
    await page.getByLabel('Month first').check();
    await page.getByLabel('°F').check();
    await page.getByRole('button', { name: 'Read the file with this' }).click();
    await expect(page.getByText('This very file was taken in for Old logger')).toBeVisible();
  });

  await test.step('a file that is none says so, and another can be chosen at once', async () => {
    await page.getByRole('button', { name: 'Choose another file' }).click();
    await choose(page, 'picture.csv', 'not a log at all');
    await expect(page.getByText('No rows with a time and a temperature were found.')).toBeVisible();
    await choose(page, 'empty.csv', '');
    await expect(page.getByText('This file is empty.')).toBeVisible();
  });
});
