import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { generateClients } from './generate';
import { ROOT } from './schema-text';
import { StartRefusal } from './start-refusal';

/** Everything the built pages depend on. */
const SOURCES = [
  'app',
  'lib',
  'prisma',
  'public',
  'next.config.mjs',
  'postcss.config.mjs',
  'proxy.ts',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
];
const NOT_SOURCES = new Set(['generated', 'migrations', 'ops', '.DS_Store']);

const STAMP = path.join(ROOT, '.next', 'source-hash');

/** Builds the pages unless the ones there were built from these very sources. True when it had to. */
export async function buildIfNeeded(report: (line: string) => void): Promise<boolean> {
  await generateClients();
  const wanted = sourceHash();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted) return false;
  report('Building the pages. This is done once for each version and takes about a minute.');
  rmSync(STAMP, { force: true }); // a build cut short must not pass for a whole one
  await runNextBuild();
  writeFileSync(STAMP, wanted);
  return true;
}

function sourceHash(): string {
  const hash = createHash('sha256').update(process.version);
  const add = (relative: string): void => {
    const file = path.join(ROOT, relative);
    const found = statSync(file, { throwIfNoEntry: false });
    if (found?.isDirectory()) {
      for (const name of readdirSync(file).sort()) if (!NOT_SOURCES.has(name)) add(path.join(relative, name));
    } else if (found !== undefined) {
      hash.update(`${relative}\n`).update(readFileSync(file));
    }
  };
  for (const source of SOURCES) add(source);
  return hash.digest('hex');
}

/** Runs `next build`; its output is shown only when it fails. */
async function runNextBuild(): Promise<void> {
  const command = path.join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next');
  const child = spawn(process.execPath, [command, 'build'], {
    cwd: ROOT,
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1', CHECKPOINT_DISABLE: '1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const killWithUs = () => void child.kill();
  process.once('exit', killWithUs);
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (data) => {
      output += data;
    });
  }
  const [code] = await once(child, 'close');
  process.off('exit', killWithUs);
  if (code === 0) return;
  throw new StartRefusal(`The pages could not be built (code ${code}):\n${output.trim()}`);
}
