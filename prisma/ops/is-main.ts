import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Whether a file is the one Node was started with, and not imported by another. */
export function isMain(moduleUrl: string): boolean {
  const started = process.argv[1];
  return started !== undefined && realpathSync(started) === realpathSync(fileURLToPath(moduleUrl));
}
