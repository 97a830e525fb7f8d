import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { LONGEST_FILE_BYTES, receiveReadingFile } from '@/app/_commands/receive-reading-file';
import { importViewOf } from '@/app/_import/import-view-of';
import { startConfirm, startPreview } from '@/app/_server/reading-import-steps';
import { forgetImportJob, type ReadingImportJob, startImportJob } from '@/app/_server/reading-imports';
import type { LayoutAnswers } from '@/lib/exchange/reading-layout';
import type { Db } from '@/prisma/client';
import { loadReadingSeries } from '@/prisma/data/cure-temperatures';
import { getShop } from '@/prisma/data/shop';
import { describeBothDatabases } from '../prisma/both-databases';
import { insertTestWorkshop } from './test-workshop';

const NOW = Date.UTC(2026, 2, 11, 8);
const COLD_NIGHT =
  'Time;Temp [°C]\n2026-03-10 22:00;18,5\n2026-03-11 00:00;9,0\n2026-03-11 02:00;--\n2026-03-11 04:00;7,5\n2026-03-11 04:00;7,7\n';

const folder = mkdtempSync(path.join(tmpdir(), 'imports-'));
beforeAll(() => vi.stubEnv('DATA_DIR', folder));
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

async function* pieces(text: string, size = 11): AsyncGenerator<Uint8Array> {
  const bytes = new TextEncoder().encode(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function previewed(db: Db, text: string, answers: LayoutAnswers = {}): Promise<ReadingImportJob> {
  const job = startImportJob('night.csv', NOW);
  expect(await receiveReadingFile(job, pieces(text))).toEqual({ ok: true });
  startPreview(db, job, answers);
  await job.running;
  return job;
}

async function confirmed(db: Db, job: ReadingImportJob, name = 'Bench'): Promise<ReadingImportJob['stage']> {
  const sensor = await db.sensor.findUnique({ where: { name } });
  const started = startConfirm(db, job, sensor === null ? { newSensor: { name, place: '' } } : { sensorId: sensor.id });
  expect(started).toEqual({ ok: true });
  await job.running;
  return job.stage;
}

describeBothDatabases('import of a log', (makeDb) => {
  async function shop(): Promise<Db> {
    const db = await makeDb();
    await insertTestWorkshop(db);
    return db;
  }

  it('shows what it understood and keeps nothing before it is confirmed', async () => {
    const db = await shop();
    const job = await previewed(db, COLD_NIGHT);
    const view = importViewOf(job, await getShop(db), NOW);
    expect(view).toMatchObject({ stage: 'ready', message: '3 readings can be taken in. Nothing is kept yet.' });
    expect(view.preview?.firstRows[0]).toEqual({
      line: 2,
      text: '2026-03-10 22:00;18,5',
      at: 'Tue 10 Mar 2026 22:00',
      temperature: '18.5 °C',
    });
    expect(view.preview?.refused).toEqual([{ line: 4, reason: 'no temperature', text: '2026-03-11 02:00;--' }]);
    expect(await db.reading.count()).toBe(0);
    expect(await db.sensor.count()).toBe(0);
  });

  it('takes in what was shown, makes the sensor, and lets the first one rule the clocks', async () => {
    const db = await shop();
    const stage = await confirmed(db, await previewed(db, COLD_NIGHT));
    expect(stage).toMatchObject({ name: 'done', outcome: { added: 3, known: 0, conflicts: 0, rulesClocks: true } });
    const { cureSensorId } = await getShop(db);
    const series = await loadReadingSeries(db, cureSensorId ?? '', 0);
    expect(Array.from(series.temperatureC)).toEqual([18.5, 9, 7.6]);
    expect(await db.readingImport.findMany()).toMatchObject([
      {
        fileName: 'night.csv',
        rowsAccepted: 3,
        rowsDuplicate: 1,
        rowsRefused: 1,
        fileHash: expect.stringMatching(/^[0-9a-f]{64}$/),
      },
    ]);
  });

  it('the same file again does no harm and says so, before and after', async () => {
    const db = await shop();
    await confirmed(db, await previewed(db, COLD_NIGHT));
    const again = await previewed(db, COLD_NIGHT);
    expect(importViewOf(again, await getShop(db), NOW).message).toMatch(/^This very file was taken in for Bench/);
    expect(await confirmed(db, again)).toMatchObject({ name: 'done', outcome: { added: 0, known: 3, conflicts: 0 } });
    expect(importViewOf(again, await getShop(db), NOW).message).toBe('Nothing new: all of it was there already.');
    expect([await db.reading.count(), await db.readingImport.count()]).toEqual([3, 1]);
  });

  it('a file that overlaps adds what is new and lists what differs', async () => {
    const db = await shop();
    await confirmed(db, await previewed(db, COLD_NIGHT));
    const stage = await confirmed(
      db,
      await previewed(db, 'Time;Temp [°C]\n2026-03-11 00:00;9,4\n2026-03-11 06:00;8,0\n'),
    );
    expect(stage).toMatchObject({
      outcome: {
        added: 1,
        known: 0,
        conflicts: 1,
        firstConflicts: [{ at: Date.UTC(2026, 2, 11), keptC: 9, sentC: 9.4 }],
      },
    });
  });

  it('asks what the file does not tell, and cannot be confirmed before it is answered', async () => {
    const db = await shop();
    const file = '03/04/2026 10:00;18,0\n03/04/2026 10:15;18,0\n';
    const job = await previewed(db, file);
    expect(importViewOf(job, await getShop(db), NOW).questions.map(({ name }) => name)).toEqual(['dayOrder']);
    expect(startConfirm(db, job, { newSensor: { name: 'Bench', place: '' } })).toMatchObject({ ok: false });
    startPreview(db, job, { dayOrder: 'month-first' });
    await job.running;
    expect(job.stage).toMatchObject({ name: 'ready', report: { notes: { firstAt: Date.UTC(2026, 2, 4, 10) } } });
  });

  it('a sensor that is gone or a name that is taken is said beside the field, and the file stays ready', async () => {
    const db = await shop();
    const job = await previewed(db, COLD_NIGHT);
    await db.sensor.create({ data: { id: 'shelf', name: 'Shelf', place: '', createdAt: new Date(NOW) } });
    startConfirm(db, job, { newSensor: { name: 'shelf', place: '' } });
    await job.running;
    expect(importViewOf(job, await getShop(db), NOW)).toMatchObject({
      stage: 'ready',
      fieldErrors: { 'newSensor.name': 'Another sensor has this name.' },
    });
    startConfirm(db, job, { sensorId: 'nobody' });
    await job.running;
    expect(job.stage).toMatchObject({ name: 'ready', refusal: { field: 'sensorId' } });
    expect(await confirmed(db, job, 'Shelf')).toMatchObject({ name: 'done', outcome: { added: 3 } });
  });

  it('reads the file once more when its readings were let go in the meantime', async () => {
    const db = await shop();
    const first = await previewed(db, COLD_NIGHT);
    for (let other = 0; other < 3; other += 1) await previewed(db, `time;temp C\n2026-03-1${other} 10:00;18\n`);
    expect(first.readings).toBeNull();
    expect(await confirmed(db, first)).toMatchObject({ name: 'done', outcome: { added: 3 } });
  });

  it('says why a file cannot be read, and shows how it begins', async () => {
    const db = await shop();
    const job = await previewed(db, 'PK\u0003\u0004 a spreadsheet, not its text\nsecond line\n');
    const view = importViewOf(job, await getShop(db), NOW);
    expect(view).toMatchObject({
      stage: 'unreadable',
      lines: [expect.stringContaining('a spreadsheet'), 'second line'],
    });
    expect(view.message).toMatch(/^No rows with a time and a temperature were found/);
  });
});

it('keeps nothing of a file that is too long', async () => {
  const job = startImportJob('long.csv', NOW);
  async function* endless(): AsyncGenerator<Uint8Array> {
    const piece = new Uint8Array(8 * 1024 * 1024);
    for (;;) yield piece;
  }
  expect(await receiveReadingFile(job, endless())).toEqual({ ok: false, code: 'too-long' });
  expect(job.fileBytes).toBeGreaterThan(LONGEST_FILE_BYTES);
  forgetImportJob(job.id);
  expect(existsSync(job.filePath)).toBe(false);
});

it('keeps the files of the newest imports only', async () => {
  for (let count = 0; count < 20; count += 1) {
    const job = startImportJob('some.csv', NOW);
    await receiveReadingFile(job, pieces('x'));
    job.stage = { name: 'failed', message: '' };
  }
  expect(readdirSync(path.join(folder, 'imports')).length).toBeLessThanOrEqual(8);
});
