import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { writeTx } from '@/prisma/client';
import { checkSqlite } from '@/prisma/ops/backup';
import { openSqlite, pragmaValue, sqliteFile } from '@/prisma/sqlite-adapter';
import type { MakeDb } from './both-databases';
import { describeBothDatabases } from './both-databases';

const AT = new Date('2026-01-05T08:00:00.000Z');
const isSoak = process.env.SOAK === '1';

function startWorker(...args: string[]) {
  const script = path.join('tests', 'prisma', 'write-worker.ts');
  return spawn(process.execPath, ['--import', 'tsx', script, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
}

function openHandles(): number {
  return existsSync('/proc/self/fd') ? readdirSync('/proc/self/fd').length : 0;
}

async function withCounter(makeDb: MakeDb, url?: string) {
  const db = url === undefined ? await makeDb() : await makeDb.open(url);
  await db.sensor.create({ data: { id: 'counter', name: 'Counter', place: '', version: 0, createdAt: AT } });
  return db;
}

describeBothDatabases('the driver', (makeDb) => {
  it('lets nobody see a transaction before it is committed', async () => {
    const db = await makeDb();
    let seenInside = -1;
    let outside: Promise<number> | undefined;
    await writeTx(db, async (tx) => {
      await tx.person.create({ data: { name: 'Ada', skills: [], createdAt: AT } });
      outside = makeDb.engine === 'sqlite' ? db.person.count() : Promise.resolve(await db.person.count());
      await new Promise((resolve) => setTimeout(resolve, 100));
      seenInside = await tx.person.count();
    });
    expect(seenInside).toBe(1);
    // On SQLite the one outside waits for the end and sees all of it; on Postgres it saw the time before.
    expect(await outside).toBe(makeDb.engine === 'sqlite' ? 1 : 0);
  });

  it('keeps a write from outside while a transaction beside it is undone', async () => {
    const db = await makeDb();
    let outside: Promise<unknown> | undefined;
    const undone = writeTx(db, async (tx) => {
      await tx.person.create({ data: { name: 'Undone', skills: [], createdAt: AT } });
      outside = db.person.create({ data: { name: 'Kept', skills: [], createdAt: AT } });
      await new Promise((resolve) => setTimeout(resolve, 50));
      throw new Error('undo');
    });
    await expect(undone).rejects.toThrow('undo');
    await outside;
    expect((await db.person.findMany()).map((person) => person.name)).toEqual(['Kept']);
  });

  it('goes on answering while another process writes for a while', async () => {
    const url = await makeDb.url();
    const db = await withCounter(makeDb, url);
    const holder = await makeDb.open(url);
    let ticks = 0;
    const timer = setInterval(() => {
      ticks += 1;
    }, 10);
    let release = () => {};
    const held = writeTx(holder, () => new Promise<void>((resolve) => (release = resolve)));
    await new Promise((resolve) => setTimeout(resolve, 50));
    const waiting = writeTx(db, (tx) => tx.sensor.update({ where: { id: 'counter' }, data: { version: 7 } }));
    setTimeout(() => release(), 400);
    await Promise.all([held, waiting]);
    clearInterval(timer);
    expect(ticks).toBeGreaterThan(10);
    expect((await db.sensor.findUniqueOrThrow({ where: { id: 'counter' } })).version).toBe(7);
  });

  it(`leaks neither handles nor memory over ${isSoak ? 5000 : 400} transactions`, { timeout: 300_000 }, async () => {
    const db = await withCounter(makeDb);
    const transaction = () =>
      writeTx(db, (tx) => tx.sensor.update({ where: { id: 'counter' }, data: { version: { increment: 1 } } }));
    for (let warmUp = 0; warmUp < 50; warmUp += 1) await transaction();
    const handles = openHandles();
    const memory = process.memoryUsage().rss;
    for (let done = 0; done < (isSoak ? 5000 : 400); done += 1) await transaction();
    const grownMb = (process.memoryUsage().rss - memory) / 2 ** 20;
    console.log(`${makeDb.engine}: handles ${handles} -> ${openHandles()}, memory +${grownMb.toFixed(0)} MB`);
    expect(openHandles() - handles).toBeLessThanOrEqual(5);
    expect(grownMb).toBeLessThan(250);
  });

  it('counts right when two processes write at once', { timeout: 300_000 }, async () => {
    const url = await makeDb.url();
    const db = await withCounter(makeDb, url);
    const each = isSoak ? 600 : 60;
    const workers = [startWorker('count', url, String(each)), startWorker('count', url, String(each))];
    const codes = await Promise.all(workers.map(async (worker) => (await once(worker, 'exit'))[0]));
    expect(codes).toEqual([0, 0]);
    expect((await db.sensor.findUniqueOrThrow({ where: { id: 'counter' } })).version).toBe(2 * each);
  });

  it('loses no acknowledged pair and keeps no half of one when its process is killed', {
    timeout: 600_000,
  }, async () => {
    const url = await makeDb.url();
    await (await withCounter(makeDb, url)).$disconnect();
    const kills = isSoak ? 40 : 3;
    let acknowledged = 0;
    let next = 0;
    for (let kill = 0; kill < kills; kill += 1) {
      const worker = startWorker('pairs', url, String(next));
      const pairs: number[] = [];
      let rest = '';
      worker.stdout.on('data', (data) => {
        const lines = (rest + data).split('\n');
        rest = lines.pop() ?? '';
        pairs.push(...lines.map(Number));
        // Different each time, and always in the middle of writing: a pair takes about as long as this delay.
        if (pairs.length >= 3 + (kill % 5)) setTimeout(() => worker.kill('SIGKILL'), kill % 7);
      });
      await once(worker, 'close');
      const db = await makeDb.open(url);
      const found = new Set((await db.reading.findMany()).map((reading) => Number(reading.atMs)));
      for (const pair of pairs)
        expect([pair, found.has(2 * pair), found.has(2 * pair + 1)]).toEqual([pair, true, true]);
      for (const atMs of found) expect(found.has(atMs ^ 1), `the other half of ${atMs}`).toBe(true);
      acknowledged += pairs.length;
      next = Math.floor(Math.max(-1, ...found) / 2) + 1;
      await db.$disconnect();
    }
    if (makeDb.engine === 'sqlite') expect(checkSqlite(sqliteFile(url), 'integrity_check')).toEqual([]);
    console.log(`${makeDb.engine}: ${kills} kills, ${acknowledged} acknowledged pairs, all there`);
  });
});

describeBothDatabases('the settings', (makeDb) => {
  it('are read back as they were set, also after transactions', async () => {
    const db = await makeDb();
    if (makeDb.engine === 'postgres') {
      // The settings that keep an acknowledged event are the server's own; here it is only checked that we change none.
      const rows = await db.$queryRaw<{ source: string }[]>`SELECT source FROM pg_settings WHERE source = 'session'`;
      expect(rows).toEqual([]);
      return;
    }
    await writeTx(db, (tx) => tx.person.create({ data: { name: 'Ada', skills: [], createdAt: AT } }));
    const read = async (pragma: string) => {
      const [row] = await db.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${pragma}`);
      return String(Object.values(row ?? {})[0]);
    };
    expect({
      busy: await read('busy_timeout'),
      journal: await read('journal_mode'),
      synchronous: await read('synchronous'),
      foreignKeys: await read('foreign_keys'),
    }).toEqual({ busy: '5000', journal: 'wal', synchronous: '2', foreignKeys: '1' });
  });
});

it('a place that cannot keep a write-ahead log is refused with what to do', () => {
  expect(() => openSqlite(':memory:')).toThrow(/cannot use a write-ahead log.*local disk/);
});

it('every opening sets the log to full again', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'pragma-'));
  try {
    const file = path.join(folder, 'a.db');
    openSqlite(file).close();
    const again = openSqlite(file);
    expect(pragmaValue(again, 'synchronous')).toBe(2);
    again.close();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
