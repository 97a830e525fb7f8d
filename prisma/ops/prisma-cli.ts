import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Engine } from './schema-text';
import { ROOT } from './schema-text';

/**
 * Runs Prisma's command line for one engine, quietly and without any call home. It looks at the generator of
 * `schemaFile` before anything else: without one it would try to download an engine.
 * Resolves with what it printed; rejects with all of its output when it fails.
 */
export function prismaCli(engine: Engine, args: readonly string[], schemaFile: string): Promise<string> {
  const packageFile = createRequire(path.join(ROOT, 'package.json')).resolve('prisma/package.json');
  const command = path.join(path.dirname(packageFile), 'build', 'index.js');
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [command, ...args], {
      cwd: ROOT,
      env: {
        ...process.env,
        PRISMA_VARIANT: engine,
        PRISMA_SCHEMA: schemaFile,
        CHECKPOINT_DISABLE: '1',
        PRISMA_HIDE_UPDATE_MESSAGE: '1',
        NO_COLOR: '1',
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    let all = '';
    child.stdout.on('data', (data) => {
      out += data;
      all += data;
    });
    child.stderr.on('data', (data) => {
      all += data;
    });
    child.once('error', reject);
    child.once('close', (code) => {
      if (code === 0) resolve(out);
      else reject(new Error(`prisma ${args.join(' ')} (${engine}) failed with code ${code}:\n${all.trim()}`));
    });
  });
}
