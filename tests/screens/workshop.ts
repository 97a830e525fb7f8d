import { test as base } from '@playwright/test';
import type { Workshop, WorkshopOptions } from '../app/serve-workshop';
import { serveWorkshop } from '../app/serve-workshop';

export { expect } from '@playwright/test';

interface OwnFixtures {
  /** Starts a workshop for this test alone; it ends with the test. */
  startWorkshop: (options?: WorkshopOptions) => Promise<Workshop>;
}

interface Options {
  /** Console errors that a test brings about on purpose, such as the browser's own line about a refused request. */
  expectedErrors: readonly RegExp[];
}

interface SharedFixtures {
  /** The demo workshop as a new user sees it. One server for all tests: leave its clock and its records alone. */
  demo: Workshop;
}

/**
 * Playwright's `test` with the app to test. A console error, an uncaught error of a page or a breach of the content
 * policy fails the test in which it happens.
 */
export const test = base.extend<OwnFixtures & Options & { quietConsole: undefined }, SharedFixtures>({
  expectedErrors: [[], { option: true }],
  demo: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright demands a pattern here
    async ({}, use) => {
      const workshop = await serveWorkshop();
      await use(workshop);
      await workshop.stop();
    },
    { scope: 'worker', timeout: 300_000 },
  ],
  startWorkshop: async ({ context }, use) => {
    const started: Workshop[] = [];
    await use(async (options) => {
      const workshop = await serveWorkshop(options);
      started.push(workshop);
      return workshop;
    });
    // A page that is still open when its server ends may ask it for the icon, and report that it is gone.
    for (const page of context.pages()) await page.close();
    for (const workshop of started) await workshop.stop();
  },
  quietConsole: [
    async ({ context, expectedErrors }, use) => {
      const faults: string[] = [];
      context.on('console', (message) => {
        if (message.type() === 'error') faults.push(`${message.text()} (${message.location().url})`);
      });
      context.on('weberror', (error) => faults.push(String(error.error())));
      await use(undefined);
      const unexpected = faults.filter((fault) => !expectedErrors.some((pattern) => pattern.test(fault)));
      base.expect(unexpected, 'errors in the browser console').toEqual([]);
    },
    { auto: true },
  ],
});
