import 'server-only';
import { readFileSync } from 'node:fs';
import type { Instant } from '@/lib/units/instant';

/**
 * The only place where the app asks what time it is. Everything below takes the instant as an argument.
 * A browser test that plays an evening in minutes names a file in TEST_CLOCK_FILE that holds how many milliseconds
 * the clock is to run ahead.
 */
export function now(): Instant {
  const file = process.env.TEST_CLOCK_FILE;
  return Date.now() + (file === undefined ? 0 : Number(readFileSync(file, 'utf8')));
}
