import AxeBuilder from '@axe-core/playwright';
import type { APIRequestContext, Page } from '@playwright/test';
import ICAL from 'ical.js';
import { expect, test } from './workshop';

/*
 * A week is planned, and a better plan looked for once more; a task is pinned by dragging; the nights turn colder than expected, so the plan is in conflict and
 * is made anew; what moved names the cure; what is pinned stays; a warmer shop is compared and accepted; and the
 * calendar follows with higher numbers.
 */

const WCAG_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

interface FeedEntry {
  readonly startAt: number;
  readonly sequence: number;
}

async function readFeed(request: APIRequestContext, address: string): Promise<ReadonlyMap<string, FeedEntry>> {
  const answer = await request.get(address);
  expect(answer.status()).toBe(200);
  expect(answer.headers()['content-type']).toBe('text/calendar; charset=utf-8');
  const again = await request.get(address, { headers: { 'if-none-match': answer.headers().etag ?? '' } });
  expect(again.status()).toBe(304);
  const events = new ICAL.Component(ICAL.parse(await answer.text())).getAllSubcomponents('vevent');
  return new Map(
    events.map((component) => {
      const event = new ICAL.Event(component);
      return [event.uid, { startAt: event.startDate.toJSDate().getTime(), sequence: event.sequence }];
    }),
  );
}

/** Waits for the search that was begun, and makes its plan the one that holds. */
async function acceptFound(page: Page): Promise<void> {
  await expect(page.getByText('The search is over.')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Accept this plan' }).click();
  await expect(page).toHaveURL(/\/plan$/);
  await expect(page.getByText(/^As accepted/)).toBeVisible();
}

/** Drags the first bar in view that may still be moved a little to the right, and gives its key and its new hour. */
async function pinByDrag(page: Page): Promise<{ readonly key: string; readonly clock: string }> {
  await page.getByRole('button', { name: 'Closer' }).click();
  const bars = page.locator('[data-visit].cursor-grab');
  const drawing = await page.locator('svg[aria-label^="Plan over time"]').locator('xpath=../..').boundingBox();
  for (const bar of await bars.all()) {
    const box = await bar.locator('rect').first().boundingBox();
    if (box === null || drawing === null || box.x < drawing.x + 5 || box.x > drawing.x + drawing.width - 80) continue;
    const key = (await bar.getAttribute('data-visit')) ?? '';
    await page.mouse.move(box.x + Math.min(3, box.width / 2), box.y + 12);
    await page.mouse.down();
    await page.mouse.move(box.x + 9, box.y + 12, { steps: 4 });
    await page.mouse.up();
    const clock = (await page.getByLabel('Begins').inputValue()).slice(11);
    // What stands against it is said before anything is pressed.
    await expect(
      page
        .getByText('Nothing stands against it.')
        .or(page.getByText(/^(It cannot be kept there|What it costs)$/))
        .first(),
    ).toBeVisible();
    await page.getByRole('button', { name: /^Pin it (here|all the same)$/ }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    return { key, clock };
  }
  throw new Error('no bar in view can be moved');
}

test('a week is planned, pinned, slips in the cold, is planned anew, compared and followed by the calendar', async ({
  page,
  request,
  startWorkshop,
}) => {
  test.setTimeout(240_000);
  const { url } = await startWorkshop();

  await page.goto(`${url}/shop/access`);
  await page.getByLabel('Name').fill('Phone');
  await page.getByLabel('read the calendar').check();
  await page.getByRole('button', { name: 'Make the token' }).click();
  const feed = (await page.locator('code.select-all').textContent()) ?? '';
  expect(feed).toMatch(/\/api\/v1\/calendar\/lw_.*\.ics$/);

  await page.goto(`${url}/plan`);
  await page.getByRole('button', { name: 'Make a plan' }).click();
  await expect(page.getByText('The search is over.')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: /^Try harder/ }).click();
  await expect(page.getByText(/^Trying harder for a better plan/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Stop looking' })).toBeVisible();
  await expect(page.getByText(/A better plan was found\.|Nothing better was found\./)).toBeVisible({ timeout: 90_000 });
  await acceptFound(page);
  const first = await readFeed(request, feed);
  expect([...first.keys()].some((uid) => uid.startsWith('visit-'))).toBe(true);
  const { violations } = await new AxeBuilder({ page }).withTags(WCAG_TAGS).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);

  const pinned = await pinByDrag(page);
  await page.goto(`${url}/shop/temperature`);
  for (const field of await page.locator('[name="otherwiseC"], [name$=".temperatureC"]').all()) {
    await field.fill(String(Number.parseFloat(await field.inputValue()) - 5));
  }
  await page.getByRole('button', { name: 'Save the usual week' }).click();
  await expect(page.getByText('Saved', { exact: false }).first()).toBeVisible();

  await page.goto(`${url}/plan`);
  await expect(page.getByRole('heading', { name: 'In conflict' })).toBeVisible();
  await expect(page.getByText(/is ready for it from/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Plan anew' }).click();
  await acceptFound(page);
  await expect(page.getByText(/the cure of .* lasts until .*, longer than planned/).first()).toBeVisible();
  const label = await page.locator(`[data-visit="${pinned.key}"]`).first().getAttribute('aria-label');
  expect(label).toContain(pinned.clock);

  await page.getByLabel('The shop is').selectOption('4');
  await page.getByRole('button', { name: 'Try it' }).click();
  await expect(page.getByRole('heading', { name: /^What if: the shop .* warmer than expected$/ })).toBeVisible();
  await expect(page.getByText('The search is over.')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('columnheader', { name: 'Plan that holds' })).toBeVisible();
  await expect(page.getByRole('columnheader', { name: /warmer than expected$/ })).toBeVisible();
  await acceptFound(page);

  const second = await readFeed(request, feed);
  const moved = [...second].filter(([uid, entry]) => (first.get(uid)?.startAt ?? entry.startAt) !== entry.startAt);
  expect(moved.length).toBeGreaterThan(0);
  for (const [uid, { sequence }] of moved) expect(sequence, uid).toBeGreaterThan(first.get(uid)?.sequence ?? 0);

  await page.goto(`${url}/`);
  await expect(page.getByRole('heading', { name: /^(This|Next) session/ })).toBeVisible();
  await page.goto(`${url}/plan/print`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(' to ');
});
