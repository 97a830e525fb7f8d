import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { ROOT } from '@/prisma/ops/schema-text';
import type { Workshop } from '../app/serve-workshop';

const seenSchema = z.object({
  /** Stretches of work of more than 5 ms in which the main thread did nothing else, longest first, processor ms. */
  stretchesMs: z.array(z.number()),
  /** How late a timer came, in true time: counts whatever else the computer does. */
  delayMs: z.object({ median: z.number(), p95: z.number(), most: z.number() }),
  memoryMb: z.number(),
});
export type SeenLoop = z.infer<typeof seenSchema>;

/** Settings with which a served app watches its event loop and tells into `file`. */
export function watchedLoop(file: string): Readonly<Record<string, string>> {
  const watch = path.join(ROOT, 'tests', 'bench', 'loop-watch.mjs');
  return { LOOP_WATCH_FILE: file, NODE_OPTIONS: `--import ${watch}` };
}

/** What the app saw since it was asked last. */
export async function seenLoop({ process: app }: Workshop, file: string): Promise<SeenLoop> {
  rmSync(file, { force: true });
  app.kill('SIGUSR2');
  while (!existsSync(file)) await new Promise((resolve) => setTimeout(resolve, 20));
  return seenSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}
