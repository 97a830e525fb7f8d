import 'server-only';
import { readFileSync } from 'node:fs';
import type { Instant } from '@/lib/units/instant';

/**
 * The instant of this request: the only clock of the app, everything below is told the time. A test may let it run
 * ahead by writing milliseconds into the file that TEST_CLOCK_FILE names; nobody else sets that.
 */
export async function serverNow(): Promise<Instant> {
  const now = Date.now();
  const file = process.env.TEST_CLOCK_FILE;
  if (file === undefined) return now;
  const aheadMs = Number(readFileSync(file, 'utf8'));
  return Number.isSafeInteger(aheadMs) ? now + aheadMs : now;
}
