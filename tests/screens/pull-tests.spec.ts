import type { Page } from '@playwright/test';
import { expect, test } from './workshop';

/*
 * Five depths in three mixes on a phone: the plan, the card, fifteen readings at the scale (one topped out, one
 * specimen pulled twice, one mix that reads low), what they say, and the model that is judged otherwise once accepted.
 */

const DEPTHS = ['1/4"', '3/8"', '1/2"', '5/8"', '3/4"'];
/** By mix, lbf. The third cup reads low. */
const LOADS: { readonly [mix: string]: readonly number[] } = {
  A: [62, 95, 121, 158, 181],
  B: [58, 88, 130, 149, 189],
  C: [47, 79, 104, 122, 151],
};

test.use({ viewport: { width: 360, height: 740 } });

/** An evening so many days ago, as a field for day and time takes it. */
function evening(daysAgo: number, clock: string): string {
  return `${new Date(Date.now() - daysAgo * 86_400_000).toISOString().slice(0, 10)}T${clock}`;
}

async function writeDown(page: Page, load: string, how: string): Promise<void> {
  await page.getByLabel('Greatest load').fill(load);
  await page.getByLabel(how, { exact: true }).check();
  await page.getByRole('button', { name: 'Write it down' }).click();
}

test('a series is planned, printed, pulled, read and accepted, and a model is judged by it', async ({
  page,
  startWorkshop,
}) => {
  test.setTimeout(240_000);
  const { url } = await startWorkshop();

  await page.goto(`${url}/pull-tests/new`);
  await expect(page.getByText(/takes 4 mixes, in nine of ten 5 mixes/)).toBeVisible();
  await page.getByLabel('Name').fill('Basswood by depth');
  await page.getByLabel('Wood', { exact: false }).first().selectOption({ label: 'Basswood' });
  await page.locator('[name="adhesiveMaterialId"]').selectOption({ label: 'Demo epoxy, 30 minutes' });
  await page.locator('[name="wireMaterialId"]').selectOption({ label: 'Stainless wire 1.0 mm, soft' });
  await page.getByLabel('Diameter of the wire').fill('1 mm');
  await page.getByLabel('Load the joint shall carry').fill('60');
  await page.getByRole('button', { name: 'Make the series' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Basswood by depth');
  const series = page.url();

  // Before the hours of its mix are written down nobody knows whether a specimen has cured.
  await expect(page.getByText('Not known whether it has cured').first()).toBeVisible();
  for (const [index, mix] of ['A', 'B', 'C'].entries()) {
    await page.getByRole('button', { name: 'Hours' }).nth(index).click();
    const dialog = page.getByRole('dialog', { name: `Mix ${mix}` });
    await dialog.getByLabel('Mixed').fill(evening(9, `19:0${index}`));
    await dialog.getByLabel('Last specimen set').fill(evening(9, `19:2${index}`));
    await dialog.getByLabel('Lot of the glue').fill('E30-A-0412');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await expect(dialog.getByText('Saved.')).toBeVisible();
    await dialog.getByRole('button', { name: 'Close' }).click();
  }
  await expect(page.getByText('Cured: pull it')).toHaveCount(15);

  await page.goto(`${series}/card`);
  await expect(page.getByRole('button', { name: 'Print' })).toBeVisible();
  const order = await page.locator('table tbody th').allTextContents();
  expect(order).toHaveLength(15);
  const map = page.getByRole('img', { name: /From left to right/ });
  for (const code of order) await expect(map.getByText(code, { exact: true })).toHaveCount(1);

  await page.goto(series);
  await page.getByRole('link', { name: `Pull ${order[0]} next` }).click();
  for (const [index, code] of order.entries()) {
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(`Specimen ${code}`);
    const facts = await page.locator('main dd').allTextContents();
    const [depth = '', mix = ''] = facts;
    const load = LOADS[mix]?.[DEPTHS.indexOf(depth)] ?? 0;
    if (index === 0) {
      await page.getByRole('button', { name: 'Write it down' }).click();
      await expect(page.locator('[id$="-error"]').first()).toBeVisible();
    }
    if (code === 'B-5') await page.getByLabel('At least this: I stopped, or the scale was at its end').check();
    await writeDown(page, String(load), depth === '1/4"' ? 'Slid out clean' : 'Wood came with it');
    await expect(page.getByText(/is written down, and counts/)).toBeVisible();
  }
  await expect(page.getByText(/15 of 15 specimens pulled/)).toBeVisible();

  // One of them once more: refused first, then written down as what it is.
  await page.getByRole('link', { name: /\. A-3$/ }).click();
  await writeDown(page, '70', 'Wood came with it');
  await expect(page.locator('[id$="-error"]')).toHaveText(/gave way in an earlier pull/);
  await page.getByLabel('It gave way before and was pulled again').check();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText(/70\.0 lbf is written down, and does not count: broken or damaged/)).toBeVisible();

  await page.goto(`${series}/analysis`);
  await expect(page.getByText(/deep is enough for 60\.0 lbf\. With 75 % confidence at least 95 %/)).toBeVisible();
  await expect(page.getByText(/Mix C reads 1\d % low against the others/)).toBeVisible();
  await expect(page.getByText(/1 pull stopped before the joint failed/)).toBeVisible();
  await expect(page.getByText(/Not counted: 1 pull, broken or damaged by an earlier pull/)).toBeVisible();
  await expect(page.getByRole('img', { name: /^16 readings from 47\.0 lbf to 189\.0 lbf/ })).toBeVisible();

  await page.getByRole('link', { name: 'Accept…' }).click();
  await expect(page.getByText('Models judged otherwise')).toBeVisible();
  await expect(page.getByText(/The estimate rests on the shop's own, fresh pulls/).first()).toBeVisible();
  const changed = await page.getByRole('link', { name: 'Sawhorse lipless' }).getAttribute('href');
  await page.getByRole('button', { name: 'Accept as calibration' }).click();
  await expect(page.getByText(/Models of this wood, glue and wire are judged by it from now on/)).toBeVisible();
  await page.goto(`${url}${changed}`);
  // It holds, so that it stands folded away among what holds.
  await expect(page.getByText(/Lot E30-A-0412 was pulled/).first()).toBeAttached();
});
