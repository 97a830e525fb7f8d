/** `npm run dev`: like `npm start`, but pages are built as they are asked for and change as their sources do. */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { refuseTakenPort } from './app-server';
import { lockFile, takeDataLock } from './data-lock';
import { exportEnvironment, readEnvironment } from './environment';
import { generateClients } from './generate';
import { prepareStore } from './prepare-store';
import { ROOT } from './schema-text';
import { StartRefusal } from './start-refusal';

try {
  const environment = readEnvironment();
  exportEnvironment(environment);
  const lock = takeDataLock(lockFile(environment));
  process.once('exit', () => lock.release());
  await refuseTakenPort(environment.host, environment.port);
  await prepareStore(environment, { nowAt: Date.now(), report: console.log });
  await generateClients();
  const { seedIfNew } = await import('./seed-new');
  await seedIfNew(environment, Date.now());

  const command = path.join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next');
  const args = [command, 'dev', '--hostname', environment.host, '--port', String(environment.port)];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, () => child.kill(signal));
  child.once('exit', (code) => process.exit(code ?? 0));
} catch (error) {
  console.error(error instanceof StartRefusal ? error.message : error);
  process.exit(1);
}
