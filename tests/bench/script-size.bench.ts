import { gzipSync } from 'node:zlib';
import { chromium } from '@playwright/test';
import { serveWorkshop } from '../app/serve-workshop';
import { everyScreen } from '../screens/every-screen';
import { findBrowser } from '../screens/find-browser';

/** Most script that a screen may load at first, compressed, in kB of 1,000 bytes. */
const LIMIT_KB = 170;

/** Prints how much script each screen loads at first, compressed as gzip does it. False when one is over the limit. */
export async function run(): Promise<boolean> {
  const { executablePath, env } = findBrowser();
  const workshop = await serveWorkshop();
  const browser = await chromium.launch({ executablePath, env, args: ['--no-sandbox', '--disable-gpu'] });
  let isWithinLimit = true;
  try {
    const page = await browser.newPage({ viewport: { width: 360, height: 800 } });
    for (const address of await everyScreen(page, workshop.url)) {
      // A page of its own, so that nothing is in the browser's memory from the screen before.
      const context = await browser.newContext();
      const fresh = await context.newPage();
      const scripts: Promise<number>[] = [];
      fresh.on('response', (response) => {
        if (response.request().resourceType() !== 'script') return;
        scripts.push(response.body().then((body) => gzipSync(body).length));
      });
      await fresh.goto(`${workshop.url}${address}`, { waitUntil: 'networkidle' });
      const kB = (await Promise.all(scripts)).reduce((sum, bytes) => sum + bytes, 0) / 1000;
      isWithinLimit &&= kB < LIMIT_KB;
      console.log(`first script of ${address}: ${kB.toFixed(1)} kB in ${scripts.length} files (limit ${LIMIT_KB})`);
      await context.close();
    }
  } finally {
    await browser.close();
    await workshop.stop();
  }
  return isWithinLimit;
}
