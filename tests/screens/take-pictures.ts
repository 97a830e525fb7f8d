/**
 * `npm run pictures`: takes the README's pictures of the demo workshop, as it stands on a Tuesday evening.
 * The demo is told from that hour on, and the app's clock is set to it, so that the pictures come out alike each time.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from '@playwright/test';
import { generateClients } from '@/prisma/ops/generate';
import { serveWorkshop } from '../app/serve-workshop';
import { findBrowser } from './find-browser';

/** Tuesday 2026-11-24 19:20 in America/Chicago, the demo's zone. */
const EVENING_AT = Date.parse('2026-11-25T01:20:00Z');

interface Picture {
  readonly file: string;
  readonly address: string;
  readonly width: number;
  readonly colorScheme: 'light' | 'dark';
  /** A button to press first, and what is on the screen when its work is done. */
  readonly press?: readonly [button: string, done: string];
  /** The heading to begin at. */
  readonly from?: string;
}

const PICTURES: readonly Picture[] = [
  { file: 'bench-1440-light', address: '/', width: 1440, colorScheme: 'light' },
  { file: 'bench-360-dark', address: '/', width: 360, colorScheme: 'dark' },
  { file: 'batch-1440-light', address: '/batches/demo-batch-24', width: 1440, colorScheme: 'light' },
  { file: 'model-1440-light', address: '/models/demo-model-plumbline', width: 1440, colorScheme: 'light' },
  {
    file: 'try-it-1440-light',
    address: '/models/demo-model-plumbline',
    width: 1440,
    colorScheme: 'light',
    from: 'Try it',
  },
  {
    file: 'pull-tests-1440-light',
    address: '/pull-tests/demo-pull-series/analysis',
    width: 1440,
    colorScheme: 'light',
  },
  {
    file: 'plan-1440-light',
    address: '/plan',
    width: 1440,
    colorScheme: 'light',
    press: ['Make a plan', 'The search is over.'],
  },
  {
    file: 'prepare-1440-light',
    address: '/batches/demo-batch-26/prepare',
    width: 1440,
    colorScheme: 'light',
    press: ['Prepare', 'Mix 1'],
    from: 'Mixes',
  },
  { file: 'rules-1440-dark', address: '/rules', width: 1440, colorScheme: 'dark' },
  { file: 'stock-1440-light', address: '/stock/demo-epoxy-30', width: 1440, colorScheme: 'light' },
  { file: 'shop-1440-dark', address: '/shop/temperature', width: 1440, colorScheme: 'dark' },
];

const folder = path.join('public', 'screens');
mkdirSync(folder, { recursive: true });
const scratch = mkdtempSync(path.join(tmpdir(), 'pictures-'));
const databaseUrl = `file:${path.join(scratch, 'workshop.db')}`;
await generateClients();
const { migrateToNewest } = await import('@/prisma/ops/migrate');
const { createDb } = await import('@/prisma/client');
const { loadDemo } = await import('@/prisma/seed/load-demo');
await migrateToNewest(databaseUrl);
const db = await createDb(databaseUrl);
await loadDemo(db, EVENING_AT);
await db.$disconnect();

const workshop = await serveWorkshop({ databaseUrl });
const { executablePath, env } = findBrowser();
const browser = await chromium.launch({ executablePath, env, args: ['--no-sandbox', '--disable-gpu'] });
try {
  for (const { file, address, width, colorScheme, press, from } of PICTURES) {
    workshop.setClockAhead(EVENING_AT - Date.now());
    const page = await browser.newPage({ viewport: { width, height: width < 600 ? 780 : 1300 }, colorScheme });
    // Sound is allowed after a touch only; a maker's screen was touched before.
    await page.goto(`${workshop.url}${address}`, { waitUntil: 'networkidle' });
    await page.mouse.click(2, 2);
    if (press !== undefined) {
      const [button, done] = press;
      await page.getByRole('button', { name: button, exact: true }).click();
      await page.getByText(done).first().waitFor();
    }
    if (from !== undefined) {
      const heading = page.getByRole('heading', { name: from, exact: true });
      await heading.evaluate((element) => scrollTo(0, element.getBoundingClientRect().top + scrollY - 90));
      await page.waitForLoadState('networkidle');
    }
    await page.screenshot({ path: path.join(folder, `${file}.png`) });
    await page.close();
  }
} finally {
  await browser.close();
  await workshop.stop();
  rmSync(scratch, { recursive: true, force: true });
}
