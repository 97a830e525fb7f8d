import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './workshop';

/*
 * The rules of a spec as a maker meets them: a popper that is too short of wood for its line, the first change that is
 * suggested, a short that is accepted in writing, and what becomes of that with the next revision.
 */

const WCAG_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function expectNoAxeViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).withTags(WCAG_TAGS).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}

const fill = (page: Page, name: string, text: string) => page.locator(`[name="${name}"]`).fill(text);
const pick = (page: Page, name: string, label: string) => page.locator(`[name="${name}"]`).selectOption({ label });

interface TypedAnchor {
  readonly name: string;
  readonly role: string;
  readonly face: string;
  readonly place: { readonly field: 'x' | 'z'; readonly text: string };
  readonly angle: string;
}

async function addAnchor(page: Page, index: number, anchor: TypedAnchor): Promise<void> {
  await page.getByRole('button', { name: 'Add an anchor' }).click();
  const at = (field: string) => `anchors.${index}.${field}`;
  await fill(page, at('name'), anchor.name);
  await pick(page, at('role'), anchor.role);
  await pick(page, at('face'), anchor.face);
  await fill(page, at(anchor.place.field), anchor.place.text);
  await fill(page, at('angle'), anchor.angle);
  await fill(page, at('loadAngle'), '0');
  await pick(page, at('wireMaterialId'), 'Stainless spring wire .041 in, hard drawn');
  await fill(page, at('wireDiameter'), '.041 in');
  await fill(page, at('twist'), '7');
  await fill(page, at('eyeInside'), '4');
  await pick(page, at('eye'), 'closed: wound, welded or brazed shut');
  await fill(page, at('bitDiameter'), '3/32 in');
  await fill(page, at('drillDepth'), '1/4 in');
  await fill(page, at('embedment'), '1/4 in');
  await pick(page, at('adhesiveMaterialId'), '30-minute epoxy (general)');
}

test.use({ actionTimeout: 8_000, viewport: { width: 1440, height: 1000 } });

test('a popper is short, holds by the first fix, and a waiver lapses with the next revision', async ({
  page,
  startWorkshop,
}) => {
  test.setTimeout(180_000);
  const { url } = await startWorkshop({ startsEmpty: true });
  await page.goto(`${url}/shop`);
  await page.getByLabel('Add somebody').fill('Ida');
  await page.getByLabel('Add somebody').press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ida');

  await page.goto(`${url}/models/new`);
  await page.getByLabel('Name').fill('Thimble popper');
  await page.getByLabel('Wood').selectOption({ label: 'Yellow-poplar' });
  await page.getByLabel('Length of the body').fill('42');
  await page.getByRole('button', { name: 'Make the model' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Thimble popper');
  const model = page.url();

  await page.goto(`${model}/body`);
  await fill(page, 'lineLabel', '30 lb');
  await pick(page, 'lineType', 'monofilament');
  await page.getByLabel('There is no ballast in it').check();
  await page.getByText('Begin from a plain shape').click();
  await page.getByLabel('Greatest height').fill('20');
  await page.getByLabel('Greatest width').fill('20');
  await page.getByRole('button', { name: 'Fill the table' }).click();
  await expect(page.getByText('17 stations of a popper shape')).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole('button', { name: 'Save the body' }).click();
  await expect(page).toHaveURL(model);

  await page.goto(`${model}/anchors`);
  const nose = { face: 'nose', place: { field: 'z', text: '0' }, angle: '0' } as const;
  await addAnchor(page, 0, { name: 'Line tie', role: 'line tie', ...nose });
  const belly = { face: 'belly', place: { field: 'x', text: '24' }, angle: '90' } as const;
  await addAnchor(page, 1, { name: 'Belly hanger', role: 'belly hanger', ...belly });
  await expectNoAxeViolations(page);
  await page.getByRole('button', { name: 'Save the anchors' }).click();
  await expect(page).toHaveURL(model);

  const findings = page.locator('#findings');
  const found = (name: string, rule: RegExp) =>
    findings.getByRole('listitem').filter({ hasText: name }).filter({ hasText: rule });
  const strength = found('Line tie', /carries what its line can ask/);
  const depth = found('Line tie', /goes in deep enough/);
  await expect(strength).toContainText('Short');
  await expect(strength).toContainText('asked × 1.95');
  await expect(depth).toContainText('Short');
  await strength.getByText('Why?').click();
  await expect(strength.getByText('Formula')).toBeVisible();
  await expectNoAxeViolations(page);

  await page.locator('#tryout').scrollIntoViewIfNeeded();
  const firstFix = page.getByRole('button', { name: /^Try: / }).first();
  await expect(firstFix).toHaveAccessibleName(/^Try: Glue it .* deep\.$/);
  await firstFix.click();
  await page.getByRole('button', { name: 'Save these changes' }).click();
  await expect(strength.filter({ hasText: 'Short' })).toHaveCount(0);
  await findings.getByText(/^\d+ hold$/).click();
  await expect(strength).toContainText('Holds');
  await expect(depth).toContainText('Short');

  await depth.getByRole('button', { name: 'Waive' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Waive it' }).click();
  await expect(dialog.locator('[id$="-error"]')).toHaveCount(2);
  await dialog.getByLabel('Why it is accepted').fill('Three pulled by hand, all of them held.');
  await dialog.getByLabel('Who accepts it').selectOption({ label: 'Ida' });
  await dialog.getByRole('button', { name: 'Waive it' }).click();
  await expect(depth).toContainText('Waived');
  await expect(depth).toContainText('Accepted by Ida: “Three pulled by hand, all of them held.”');

  await page.goto(`${url}/rules`);
  const rule = page.getByRole('row', { name: /Every glued shank goes in deep enough/ });
  await expect(rule.getByRole('link', { name: 'Thimble popper A' })).toHaveCount(2);
  await expectNoAxeViolations(page);

  await page.goto(model);
  await page.getByRole('button', { name: 'Freeze revision A' }).click();
  await page.getByRole('button', { name: 'Freeze it' }).click();
  await page.getByRole('button', { name: 'Revise: make the next letter' }).click();
  await expect(page.getByRole('link', { name: 'New batch of B' })).toBeVisible();
  await expect(depth).toContainText('Short');
  await expect(findings.getByText('Revision A: Every glued shank goes in deep enough.')).toBeVisible();

  await page.getByRole('link', { name: 'Compare revisions' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Thimble popper, A and B');
  const change = page.getByRole('listitem').filter({ hasText: 'Line tie: Every glued shank goes in deep enough' });
  await expect(change).toContainText(/Waived.*Short/);
  await expectNoAxeViolations(page);
});
