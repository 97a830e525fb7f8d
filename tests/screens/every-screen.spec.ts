import AxeBuilder from '@axe-core/playwright';
import { everyScreen } from './every-screen';
import { expect, test } from './workshop';

/** Success criteria of WCAG 2.2, levels A and AA. */
const WCAG_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const PHONE = { width: 360, height: 800 };
const DESK = { width: 1440, height: 900 };

/** Each width and each colour scheme once; the other two pairs take as long again and are for `npm run soak`. */
const LOOKS = [
  { name: '360 px wide, light', viewport: PHONE, colorScheme: 'light' },
  { name: '1440 px wide, dark', viewport: DESK, colorScheme: 'dark' },
  ...(process.env.SOAK === '1'
    ? ([
        { name: '360 px wide, dark', viewport: PHONE, colorScheme: 'dark' },
        { name: '1440 px wide, light', viewport: DESK, colorScheme: 'light' },
      ] as const)
    : []),
] as const;

for (const { name, viewport, colorScheme } of LOOKS) {
  test.describe(`every screen, ${name}`, () => {
    test.use({ viewport, colorScheme, expectedErrors: [/status of 404/] });

    test('has no violation that axe finds, and no sideways scroll', async ({ page, demo }) => {
      test.setTimeout(240_000);
      for (const address of await everyScreen(page, demo.url)) {
        await test.step(address, async () => {
          await page.goto(`${demo.url}${address}`);
          const { violations } = await new AxeBuilder({ page }).withTags(WCAG_TAGS).analyze();
          const found = violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
          expect.soft(found, address).toEqual([]);
          const overhangPx = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
          expect.soft(overhangPx, `${address} is wider than the window`).toBeLessThanOrEqual(0);
        });
      }
    });
  });
}
