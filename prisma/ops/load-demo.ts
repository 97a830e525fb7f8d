/** `npm run demo`: puts the demo workshop into a database that is empty, and into no other. */
import { createDb } from '../client';
import { lockFile, takeDataLock } from './data-lock';
import { exportEnvironment, readEnvironment } from './environment';
import { generateClients } from './generate';
import { prepareStore } from './prepare-store';
import { StartRefusal } from './start-refusal';

async function loadDemoWorkshop(): Promise<void> {
  const environment = readEnvironment();
  exportEnvironment(environment);
  const lock = takeDataLock(lockFile(environment));
  process.once('exit', () => lock.release());
  await prepareStore(environment, { nowAt: Date.now(), report: console.log });
  await generateClients();
  const { loadDemo } = await import('../seed/load-demo');
  const db = await createDb(environment.databaseUrl);
  try {
    const loaded = await loadDemo(db, Date.now());
    if (!loaded.ok) {
      throw new StartRefusal(
        `${loaded.message} To see the demo, name another database: DATABASE_URL=file:./data/demo.db npm run demo`,
      );
    }
    console.log('The demo workshop is in. Start the app with npm start; it can be removed in Shop.');
  } finally {
    await db.$disconnect();
  }
}

try {
  await loadDemoWorkshop();
} catch (error) {
  console.error(error instanceof StartRefusal ? error.message : error);
  process.exit(1);
}
