import { createReadStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parse } from 'csv-parse';
import { createDb } from '@/prisma/client';
import { migrateToNewest } from '@/prisma/ops/migrate';
import { startPostgres } from '../prisma/postgres-server';
import { importLog, readLogAlone } from './import-log';
import { writeLongLog } from './long-log';

/*
 * A log of 500,000 one-minute readings: the parser library alone, our reading alone, and all of an import into both
 * databases. The target of issue 2: at most three times what the library takes alone in the same run.
 */

const ROWS = 500_000;
const REPEATS = 5;
const MOST_TIMES = 3;

/** What csv-parse needs to hand out every record, alone and as plain as it goes. */
async function csvParseAlone(file: string): Promise<number> {
  let records = 0;
  const parser = createReadStream(file, { highWaterMark: 256 * 1024 }).pipe(parse());
  parser.on('data', () => {
    records += 1;
  });
  await new Promise((resolve, reject) => parser.on('end', resolve).on('error', reject));
  return records - 1;
}

interface Timed {
  readonly ms: number;
  /** Most memory that the work added, MB. */
  readonly addedMb: number;
}

async function timed(work: () => Promise<number>): Promise<Timed> {
  global.gc?.();
  const before = process.memoryUsage().rss;
  let peak = before;
  const sampler = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage().rss);
  }, 10);
  const start = performance.now();
  const rows = await work();
  const ms = performance.now() - start;
  clearInterval(sampler);
  if (rows !== ROWS) throw new Error(`${rows} rows came through instead of ${ROWS}`);
  return { ms, addedMb: (Math.max(peak, process.memoryUsage().rss) - before) / 1e6 };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

function print(name: string, runs: readonly Timed[], alone: number | null): number {
  const ms = median(runs.map((run) => run.ms));
  const rate = Math.round(ROWS / ms);
  const times = alone === null ? '' : `, ${(ms / alone).toFixed(2)} times the library alone`;
  console.log(
    `${name}: ${ms.toFixed(0)} ms, ${rate},000 rows/s${times}, at most ${Math.max(...runs.map((run) => run.addedMb)).toFixed(0)} MB more memory`,
  );
  return ms;
}

/** Prints the figures; false when the target is missed. */
export async function run(): Promise<boolean> {
  const folder = mkdtempSync(path.join(tmpdir(), 'csv-import-'));
  process.env.DATA_DIR = folder;
  const file = path.join(folder, 'long-log.csv');
  writeLongLog(file, ROWS);
  console.log(
    `import of a log: ${ROWS} rows, ${(statSync(file).size / 1e6).toFixed(1)} MB; medians of ${REPEATS}, taking turns`,
  );
  const url = `file:${path.join(folder, 'workshop.db')}`;
  await migrateToNewest(url);
  const db = await createDb(url);
  await importLog(db, file, 'warm-up');

  const runs = { library: [] as Timed[], reading: [] as Timed[], import: [] as Timed[] };
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    runs.library.push(await timed(() => csvParseAlone(file)));
    runs.reading.push(await timed(() => readLogAlone(file)));
    await db.reading.deleteMany();
    runs.import.push(await timed(() => importLog(db, file, `run ${repeat}`)));
  }
  await db.$disconnect();
  const alone = print('csv-parse alone', runs.library, null);
  print('our reading alone', runs.reading, alone);
  const whole = print('the whole import into SQLite', runs.import, alone);
  console.log(`most memory of this process: ${(process.resourceUsage().maxRSS / 1000).toFixed(0)} MB`);

  const server = await startPostgres();
  await migrateToNewest(server.url);
  const postgres = await createDb(server.url);
  await importLog(postgres, file, 'warm-up');
  await postgres.reading.deleteMany();
  print('the whole import into Postgres', [await timed(() => importLog(postgres, file, 'run'))], alone);
  await postgres.$disconnect();
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
  return whole <= MOST_TIMES * alone;
}
