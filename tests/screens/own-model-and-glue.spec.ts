import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './workshop';

/*
 * What a maker sets up before the first batch: a model from nothing to a frozen revision, on a phone; and the data
 * sheet of their own glue, on a desk. Every form keeps what was typed and says beside the field what is wrong.
 */

const WCAG_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function expectNoAxeViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).withTags(WCAG_TAGS).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}

const fill = (page: Page, name: string, text: string) => page.locator(`[name="${name}"]`).fill(text);
const pick = (page: Page, name: string, value: string | { index: number }) =>
  page.locator(`[name="${name}"]`).selectOption(value);
const errors = (page: Page) => page.locator('[id$="-error"]');

test.describe('on a phone', () => {
  test.use({ viewport: { width: 360, height: 740 } });

  test('a model is made, drawn, given anchors, a route and a bill, frozen and revised', async ({
    page,
    startWorkshop,
  }) => {
    test.setTimeout(240_000);
    const { url } = await startWorkshop({ startsEmpty: true });

    await page.goto(`${url}/models/new`);
    await page.getByLabel('Name').fill('Reed runner');
    await page.getByLabel('Length of the body').fill('7 furlongs');
    await page.getByRole('button', { name: 'Make the model' }).click();
    await expect(errors(page)).toHaveText(['The unit "furlongs" does not belong here. Use one of mm, cm, m, in, ft.']);
    await expect(page.getByLabel('Length of the body')).toBeFocused();
    await expect(page.getByLabel('Name')).toHaveValue('Reed runner');
    await page.getByLabel('Length of the body').fill('2 3/4"');
    await page.getByRole('button', { name: 'Make the model' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Reed runner');
    const model = page.url();

    await page.goto(`${model}/body`);
    await page.getByText('Paste points from a sheet').click();
    await page.getByLabel('One station a line').fill('x;height;width\n0;1/4";1/4"\n30 mm;1/2";3/8"\n2 3/4";1/8";1/8"');
    await page.getByRole('button', { name: 'Put them into the table' }).click();
    await fill(page, 'stations.1.x', '3"');
    await page.getByRole('button', { name: 'Save the body' }).click();
    await expect(errors(page)).toHaveText(/further from the nose than the one before/);
    await fill(page, 'stations.1.x', '30');
    await expectNoAxeViolations(page);
    await page.getByRole('button', { name: 'Save the body' }).click();
    await expect(page.getByRole('img', { name: /Side view and top view to scale/ })).toBeVisible();

    await page.goto(`${model}/anchors`);
    await page.getByRole('button', { name: 'Add an anchor' }).click();
    await fill(page, 'anchors.0.name', 'Line tie');
    await page.getByRole('button', { name: 'Add an anchor' }).click();
    await fill(page, 'anchors.1.name', 'Belly hanger');
    await fill(page, 'anchors.1.x', '32');
    await fill(page, 'anchors.1.wireDiameter', '.041"');
    await page.getByRole('button', { name: 'Move Anchor 2 up' }).press('Enter');
    await expect(page.locator('[name="anchors.0.name"]')).toHaveValue('Belly hanger');
    await expect(page.getByRole('button', { name: 'Move Anchor 1 down' })).toBeFocused();
    await expectNoAxeViolations(page);
    await page.getByRole('button', { name: 'Save the anchors' }).click();
    await expect(page).toHaveURL(model);

    await page.goto(`${model}/route`);
    for (const [index, [name, kind]] of [
      ['Shape', 'work'],
      ['Set anchors', 'glue'],
      ['Sand', 'work'],
    ].entries()) {
      await page.getByRole('button', { name: 'Add a step' }).click();
      await fill(page, `operations.${index}.name`, name ?? '');
      await fill(page, `operations.${index}.minutes`, '2.5');
      await pick(page, `operations.${index}.kind`, kind ?? '');
    }
    await pick(page, 'operations.2.needs.0.wait', 'sand');
    await page.getByRole('button', { name: 'Save the route' }).click();
    await expect(errors(page)).toHaveText(['Choose the adhesive.']);
    await pick(page, 'operations.1.materialId', { index: 1 });
    await expectNoAxeViolations(page);
    await page.getByRole('button', { name: 'Save the route' }).click();
    await expect(page.getByText('Waits until “Set anchors” is hard enough to sand.')).toBeVisible();

    await page.goto(`${model}/bill`);
    await page.getByRole('button', { name: 'Add a line' }).click();
    await pick(page, 'lines.0.materialId', { index: 1 });
    await pick(page, 'lines.0.unit', 'mm');
    await fill(page, 'lines.0.quantity', '3 1/2"');
    await expectNoAxeViolations(page);
    await page.getByRole('button', { name: 'Save the bill' }).click();
    await expect(page.getByText('88.9 mm')).toBeVisible();

    await page.getByRole('button', { name: 'Freeze revision A' }).click();
    await page.getByRole('button', { name: 'Freeze it' }).click();
    await page.getByRole('button', { name: 'Revise: make the next letter' }).click();
    await expect(page.getByRole('link', { name: 'New batch of B' })).toBeVisible();
    await page.getByRole('link', { name: 'A Frozen' }).click();
    await expect(page.getByRole('link', { name: 'New batch of A' })).toBeVisible();
    await expect(page.getByRole('link', { name: 'Change' })).toHaveCount(0);
  });
});

test.describe('on a desk', () => {
  test.use({ viewport: { width: 1440, height: 900 }, expectedErrors: [/net::ERR_FAILED/] });

  test('a data sheet at two temperatures gives the activation energy and the hours that follow', async ({
    page,
    startWorkshop,
  }) => {
    test.setTimeout(180_000);
    const { url } = await startWorkshop({ startsEmpty: true });
    await page.goto(`${url}/stock/new`);
    await page.getByLabel('Kind').selectOption('adhesive');
    await page.getByLabel('Name').fill('Slow glue');
    await page.getByRole('button', { name: 'Add to Stock' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Data sheet of Slow glue');
    await fill(page, 'source.text', 'Sheet 12, page 2');
    await fill(page, 'referenceC', '25');
    await fill(page, 'minCureC', '55 F');
    await fill(page, 'milestoneHours.handle', '24');
    for (const [name, text] of [
      ['firstC', '20'],
      ['firstTime', '45 min'],
      ['secondC', '30'],
      ['secondTime', '22 min'],
    ] as const) {
      await fill(page, `rate.${name}`, text);
    }
    // 45 min at 20 degC and 22 min at 30 degC: Ea = R ln(45/22) / (1/293.15 - 1/303.15) = 52.88 kJ/mol.
    await expect(page.getByText('Activation energy 52.9 kJ/mol, taken as 47.9 to 57.9.')).toBeVisible();
    await fill(page, 'potLife.0.minutes', '30');
    await fill(page, 'potLife.0.massG', '100');
    await fill(page, 'potLife.0.temperatureC', '25');

    // The server is out of reach: nothing that was typed is lost.
    await page.route('**/*', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()));
    await page.getByRole('button', { name: 'Save the data sheet' }).click();
    await expect(page.getByText('The server did not answer')).toBeVisible();
    await expect(page.locator('[name="milestoneHours.handle"]')).toHaveValue('24');
    await page.unroute('**/*');

    await page.getByRole('button', { name: 'Save the data sheet' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Slow glue');
    // 24 h at 25 degC and 52.88 kJ/mol take 24 exp(Ea/R (1/288.15 - 1/298.15)) = 50.35 h at 15 degC.
    await expect(page.getByRole('row', { name: /^Handle/ }).first()).toContainText('about 2 d 2 h');
    await expectNoAxeViolations(page);
  });

  test('without scripts a form comes back with its faults and with what was typed', async ({
    browser,
    startWorkshop,
  }) => {
    test.setTimeout(120_000);
    const { url } = await startWorkshop({ startsEmpty: true });
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(`${url}/models/new`);
    await page.getByLabel('Name').fill('No script');
    await page.getByLabel('Length of the body').fill('70 parsecs');
    await page.getByRole('button', { name: 'Make the model' }).click();
    await expect(errors(page)).toHaveText(/does not belong here/);
    await expect(page.getByLabel('Name')).toHaveValue('No script');
    await page.getByLabel('Length of the body').fill('70 mm');
    await page.getByRole('button', { name: 'Make the model' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('No script');
    await context.close();
  });
});
