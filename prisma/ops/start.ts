/** `npm start`: makes the database ready, builds what is to be built, and serves the app until it is stopped. */
import { db } from '../client';
import { buildIfNeeded } from './app-build';
import { refuseTakenPort, serveApp } from './app-server';
import { lockFile, takeDataLock } from './data-lock';
import { exportEnvironment, readEnvironment } from './environment';
import { generateClients } from './generate';
import { prepareStore } from './prepare-store';
import { StartRefusal } from './start-refusal';

function report(line: string): void {
  console.log(line);
}

async function start(): Promise<void> {
  const environment = readEnvironment();
  exportEnvironment(environment);
  const { databaseUrl, host, port } = environment;
  const lock = takeDataLock(lockFile(environment));
  process.once('exit', () => lock.release());
  if (lock.wasTakenOver) report('The last run was cut off; its lock was taken over.');
  await refuseTakenPort(host, port);

  await prepareStore(environment, { nowAt: Date.now(), report });
  await generateClients();
  // What needs the generated clients is loaded only now: on a fresh copy they were not there before.
  const { seedIfNew } = await import('./seed-new');
  const { beginRun, endRun } = await import('./server-run');
  if (await seedIfNew(environment, Date.now())) report('The database is new: put in what a workshop begins with.');
  await buildIfNeeded(report);

  const runId = await beginRun(databaseUrl, Date.now());
  const server = await serveApp(host, port);
  act = (signal) =>
    void stop(signal, async () => {
      await server.stop();
      await (await db()).$disconnect();
      await endRun(databaseUrl, runId, Date.now());
      lock.release();
    });
  report(`Lurewright is ready: ${server.address}`);
}

/** What a stop signal does at the moment: before it serves there is nothing to finish. */
let act: (signal: NodeJS.Signals) => void = () => process.exit(130);

async function stop(signal: NodeJS.Signals, finish: () => Promise<void>): Promise<void> {
  act = () => {}; // once is enough
  report(`${signal}: stopping.`);
  try {
    await finish();
    report('Stopped. Everything is written.');
    process.exit(0);
  } catch (error) {
    fail(error);
  }
}

function fail(error: unknown): never {
  console.error(error instanceof StartRefusal ? error.message : error);
  process.exit(1);
}

// Next reads it when it is loaded: this command always serves what was built for production.
Object.assign(process.env, { NODE_ENV: 'production' });
// One listener for good: a signal that comes while listeners are changed would be lost.
for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, () => act(signal));
await start().catch(fail);
