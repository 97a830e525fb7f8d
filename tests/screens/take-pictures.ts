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

const PICTURES = [
  { file: 'bench-1440-light', address: '/', width: 1440, colorScheme: 'light' },
  { file: 'bench-360-dark', address: '/', width: 360, colorScheme: 'dark' },
  { file: 'batch-1440-light', address: '/batches/demo-batch-24', width: 1440, colorScheme: 'light' },
  { file: 'model-1440-light', address: '/models/demo-model-plumbline', width: 1440, colorScheme: 'light' },
  { file: 'stock-1440-light', address: '/stock/demo-epoxy-30', width: 1440, colorScheme: 'light' },
  { file: 'shop-1440-dark', address: '/shop/temperature', width: 1440, colorScheme: 'dark' },
] as const;

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
  for (const { file, address, width, colorScheme } of PICTURES) {
    workshop.setClockAhead(EVENING_AT - Date.now());
    const page = await browser.newPage({ viewport: { width, height: width < 600 ? 780 : 1300 }, colorScheme });
    // Sound is allowed after a touch only; a maker's screen was touched before.
    await page.goto(`${workshop.url}${address}`, { waitUntil: 'networkidle' });
    await page.mouse.click(2, 2);
    await page.screenshot({ path: path.join(folder, `${file}.png`) });
    await page.close();
  }
} finally {
  await browser.close();
  await workshop.stop();
  rmSync(scratch, { recursive: true, force: true });
}
