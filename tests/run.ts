/**
 * `npm test`: everything that can be tested, with whatever that needs brought along. Each part runs even when one
 * before it failed; the last line counts all of them. `--soak` runs the long versions of the tests that have one.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildIfNeeded } from '@/prisma/ops/app-build';
import { generateClients } from '@/prisma/ops/generate';
import { StartRefusal } from '@/prisma/ops/start-refusal';
import type { Counts } from './test-counts';
import { countPlaywright, countVitest } from './test-counts';

interface Part extends Counts {
  readonly name: string;
  readonly seconds: number;
}

const scratch = mkdtempSync(path.join(tmpdir(), 'test-report-'));
const environment = {
  ...process.env,
  NEXT_TELEMETRY_DISABLED: '1',
  CHECKPOINT_DISABLE: '1',
  ...(process.argv.includes('--soak') ? { SOAK: '1' } : {}),
};

async function runCommand(args: readonly string[], extra: Readonly<Record<string, string>> = {}): Promise<number> {
  const child = spawn(process.execPath, args, { stdio: 'inherit', env: { ...environment, ...extra } });
  const [code] = await once(child, 'exit');
  return typeof code === 'number' ? code : 1;
}

const binary = (...parts: string[]) => path.join('node_modules', ...parts);

async function vitestPart(...projects: string[]): Promise<Counts> {
  const file = path.join(scratch, `${projects.join('-')}.json`);
  const chosen = projects.flatMap((project) => ['--project', project]);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const code = await runCommand([binary('vitest', 'vitest.mjs'), 'run', ...chosen, ...reporters]);
  return countVitest(file, code);
}

async function browserPart(): Promise<Counts> {
  const file = path.join(scratch, 'browser.json');
  const code = await runCommand(
    [binary('@playwright', 'test', 'cli.js'), 'test', '--reporter=list,json', '--pass-with-no-tests'],
    { PLAYWRIGHT_JSON_OUTPUT_NAME: file },
  );
  return countPlaywright(file, code);
}

/** A step that is no test: it counts only when it fails. */
async function step(act: () => Promise<unknown>): Promise<Counts> {
  try {
    await act();
    return { passed: 0, failed: 0, skipped: 0, notes: [] };
  } catch (error) {
    console.error(error instanceof StartRefusal ? error.message : error);
    return { passed: 0, failed: 1, skipped: 0, notes: ['it did not get through'] };
  }
}

const parts: Part[] = [];
async function part(name: string, run: () => Promise<Counts>): Promise<void> {
  console.log(`\n=== ${name}`);
  const startedAt = performance.now();
  const counts = await run();
  parts.push({ name, ...counts, seconds: (performance.now() - startedAt) / 1000 });
}

await part('database clients', () => step(generateClients));
await part('lib, outside checks, layers', () => vitestPart('lib'));
await part('store and commands on SQLite and Postgres', () => vitestPart('store'));
await part('production build', () => step(() => buildIfNeeded(console.log)));
await part('the running server', () => vitestPart('server'));
await part('browser', browserPart);
rmSync(scratch, { recursive: true, force: true });

console.log('\n=== Summary');
for (const { name, passed, failed, skipped, notes, seconds } of parts) {
  const skippedText = skipped > 0 ? `, ${skipped} skipped` : '';
  console.log(
    `${failed > 0 ? 'FAILED' : 'ok    '} ${name}: ${passed} passed, ${failed} failed${skippedText} (${seconds.toFixed(0)} s)`,
  );
  for (const note of notes) console.log(`         ${note}`);
}
const total = (key: 'passed' | 'failed' | 'skipped') => parts.reduce((sum, counts) => sum + counts[key], 0);
const skipped = total('skipped') > 0 ? `, ${total('skipped')} skipped` : '';
console.log(`${total('passed')} passed, ${total('failed')} failed${skipped}`);
process.exitCode = total('failed') > 0 ? 1 : 0;
