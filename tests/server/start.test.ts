import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { createDb } from '@/prisma/client';
import { sqliteFile } from '@/prisma/sqlite-adapter';
import type { Workshop, WorkshopOptions } from '../app/serve-workshop';
import { serveWorkshop } from '../app/serve-workshop';
import { describeBothDatabases } from '../prisma/both-databases';

const running: Workshop[] = [];
const folders: string[] = [];
afterEach(async () => {
  for (const workshop of running.splice(0)) await workshop.stop();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

async function serve(options: WorkshopOptions = {}): Promise<Workshop> {
  const workshop = await serveWorkshop(options);
  running.push(workshop);
  return workshop;
}

function newFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'start-'));
  folders.push(folder);
  return folder;
}

/** Runs an op to its end. */
async function runOp(name: string, env: Readonly<Record<string, string>>): Promise<{ code: unknown; output: string }> {
  const child = spawn(process.execPath, ['--import', 'tsx', path.join('prisma', 'ops', `${name}.ts`)], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (data) => {
      output += data;
    });
  }
  const [code] = await once(child, 'close');
  return { code, output };
}

async function countRuns(url: string) {
  const db = await createDb(url);
  try {
    return {
      runs: await db.serverRun.count(),
      unended: await db.serverRun.count({ where: { endedAt: null } }),
      models: await db.model.count(),
    };
  } finally {
    await db.$disconnect();
  }
}

describeBothDatabases('npm start', (makeDb) => {
  it('serves every screen, ends cleanly, and puts the demo in only once', async () => {
    const databaseUrl = await makeDb.url();
    const folder = newFolder();
    const workshop = await serve({ databaseUrl, folder });
    expect(workshop.output()).toContain(`Lurewright is ready: ${workshop.url}`);
    for (const page of ['/', '/models', '/shop']) {
      const response = await fetch(workshop.url + page);
      expect([page, response.status]).toEqual([page, 200]);
      expect(response.headers.get('content-security-policy')).toContain("script-src 'self' 'nonce-");
    }
    // A browser asks for this name by itself when it leaves a page before it has read the page's head.
    const icon = await fetch(`${workshop.url}/favicon.ico`);
    expect([icon.status, icon.headers.get('content-type')]).toEqual([200, 'image/x-icon']);
    expect(await workshop.end()).toBe(0);
    expect(workshop.output()).toContain('Everything is written.');
    const after = await countRuns(databaseUrl);
    expect([after.runs, after.unended, after.models > 0]).toEqual([1, 0, true]);

    const db = await makeDb.open(databaseUrl);
    await db.batch.deleteMany();
    await db.$disconnect();
    await (await serve({ databaseUrl, folder })).end();
    const again = await makeDb.open(databaseUrl);
    expect(await again.batch.count(), 'what a maker deleted stays deleted').toBe(0);
  });

  it('begins without the demo when asked to', async () => {
    const databaseUrl = await makeDb.url();
    const workshop = await serve({ databaseUrl, startsEmpty: true });
    expect((await fetch(workshop.url)).status).toBe(200);
    await workshop.end();
    expect((await countRuns(databaseUrl)).models).toBe(0);
  });

  it('lets a running request end before it stops, and takes no new one', async () => {
    const workshop = await serve({ databaseUrl: await makeDb.url(), startsEmpty: true });
    await fetch(workshop.url);
    const { port } = new URL(workshop.url);
    const path = '/api/v1/batches/none/events';
    const headers = { origin: workshop.url, 'content-type': 'application/json', 'content-length': '2' };
    const half = request({ host: '127.0.0.1', port, path, method: 'POST', headers });
    half.write('{');
    await new Promise((resolve) => setTimeout(resolve, 200));
    const startedAt = performance.now();
    const ended = workshop.end();
    await expect.poll(() => workshop.output()).toContain('SIGTERM: stopping.');
    await expect(fetch(workshop.url)).rejects.toThrow();
    half.end('}');
    const [answer]: { statusCode?: number }[] = await once(half, 'response');
    expect(answer?.statusCode).toBe(400);
    expect(await ended).toBe(0);
    expect(performance.now() - startedAt).toBeLessThan(5_000);
  });
});

it('cuts off after ten seconds what does not end by itself', async () => {
  const workshop = await serve({ startsEmpty: true });
  const { port } = new URL(workshop.url);
  const headers = { origin: workshop.url, 'content-type': 'application/json', 'content-length': '2' };
  const half = request({ host: '127.0.0.1', port, path: '/api/v1/batches/none/events', method: 'POST', headers });
  half.write('{');
  const cutOff = once(half, 'error');
  await new Promise((resolve) => setTimeout(resolve, 200));
  const startedAt = performance.now();
  expect(await workshop.end()).toBe(0);
  await cutOff;
  expect(performance.now() - startedAt).toBeGreaterThan(9_000);
  expect(performance.now() - startedAt).toBeLessThan(13_000);
});

it('leaves one file after a clean end: the log is empty and the lock is gone', async () => {
  const workshop = await serve({ folder: newFolder() });
  await fetch(workshop.url);
  await workshop.end();
  const file = sqliteFile(workshop.databaseUrl);
  expect(existsSync(`${file}.lock`)).toBe(false);
  expect(existsSync(`${file}-wal`) ? statSync(`${file}-wal`).size : 0).toBe(0);
});

it('notices a run that was cut off', async () => {
  const folder = newFolder();
  await (await serve({ folder })).kill();
  const again = await serve({ folder });
  expect(again.output()).toContain('The last run was cut off; its lock was taken over.');
  expect(again.output()).toContain('did not end cleanly: checking the database');
});

it('a second one on the same data is refused, and the first goes on', async () => {
  const first = await serve({ startsEmpty: true });
  await expect(serveWorkshop({ databaseUrl: first.databaseUrl, folder: newFolder() })).rejects.toThrow(
    /code 1:[\s\S]*already running with these data, as process \d+\. Stop it first/,
  );
  expect((await fetch(first.url)).status).toBe(200);
});

it('says that a port is taken before it changes anything', async () => {
  const folder = newFolder();
  const other = createServer().listen(0, '127.0.0.1');
  await once(other, 'listening');
  const address = other.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const databaseUrl = `file:${path.join(folder, 'workshop.db')}`;
  const { code, output } = await runOp('start', { PORT: String(port), DATABASE_URL: databaseUrl, DATA_DIR: folder });
  other.close();
  expect(code).toBe(1);
  expect(output).toContain(`Port ${port} on 127.0.0.1 is already taken by another program.`);
  expect(existsSync(path.join(folder, 'workshop.db'))).toBe(false);
});

it('lists what is wrong with the settings', async () => {
  const { code, output } = await runOp('start', { PORT: 'front', DATABASE_URL: 'oracle:x' });
  expect(code).toBe(1);
  expect(output).toMatch(/Some settings cannot be used:\n {2}DATABASE_URL must[\s\S]*\n {2}PORT must/);
  expect(output).not.toContain('    at ');
});

it('npm run demo fills an empty database, and no other', async () => {
  const folder = newFolder();
  const env = { DATABASE_URL: `file:${path.join(folder, 'demo.db')}`, DATA_DIR: folder };
  const first = await runOp('load-demo', env);
  expect([first.code, first.output]).toEqual([0, expect.stringContaining('The demo workshop is in.')]);
  const second = await runOp('load-demo', env);
  expect([second.code, second.output]).toEqual([1, expect.stringContaining('Nothing was changed.')]);
});

it('a letter in place of the database is left as it is', async () => {
  const folder = newFolder();
  const file = path.join(folder, 'letter.db');
  writeFileSync(file, 'Dear workshop, '.repeat(400));
  const { code, output } = await runOp('start', { DATABASE_URL: `file:${file}`, DATA_DIR: folder, PORT: '39127' });
  expect([code, output]).toEqual([1, expect.stringContaining('cannot be opened')]);
  expect(statSync(file).size).toBe(6000);
});
