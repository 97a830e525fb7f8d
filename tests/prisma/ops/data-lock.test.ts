import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockFile, takeDataLock } from '@/prisma/ops/data-lock';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'lock-'));
  file = path.join(folder, 'deep', 'workshop.db.lock');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A process that takes the lock, says how it went, and holds it until it is killed. */
function startOwner() {
  const script = `
    import('./prisma/ops/data-lock.ts').then(({ takeDataLock }) => {
      try { console.log('owner ' + takeDataLock(${JSON.stringify(file)}).wasTakenOver); setInterval(() => {}, 1000); }
      catch (error) { console.log('refused ' + error.message); }
    });`;
  return spawn(process.execPath, ['--import', 'tsx', '-e', script], { stdio: ['ignore', 'pipe', 'inherit'] });
}

async function firstLine(child: ReturnType<typeof startOwner>): Promise<string> {
  const [data] = await once(child.stdout, 'data');
  return String(data).trim();
}

describe('the lock of the data', () => {
  it('is taken, given back, and taken again', () => {
    const lock = takeDataLock(file);
    expect([lock.wasTakenOver, existsSync(file)]).toEqual([false, true]);
    lock.release();
    expect(existsSync(file)).toBe(false);
    takeDataLock(file).release();
  });

  it('is refused while its owner lives, with the number of that process, and taken over after it was killed', async () => {
    const owner = startOwner();
    expect(await firstLine(owner)).toBe('owner false');
    expect(() => takeDataLock(file)).toThrow(`already running with these data, as process ${owner.pid}.`);
    owner.kill('SIGKILL');
    await once(owner, 'exit');
    const lock = takeDataLock(file);
    expect(lock.wasTakenOver).toBe(true);
    lock.release();
    expect(readdirSync(path.dirname(file))).toEqual([]);
  });

  it('is had by one of several that find a dead owner at the same moment', async () => {
    takeDataLock(file);
    writeFileSync(file, '4194999 some-boot 1'); // beyond the highest number of a process
    const starters = Array.from({ length: 4 }, startOwner);
    const lines = await Promise.all(starters.map(firstLine));
    expect(lines.filter((line) => line.startsWith('owner'))).toHaveLength(1);
    expect(lines.filter((line) => line.startsWith('refused'))).toHaveLength(3);
    const winner = starters[lines.findIndex((line) => line.startsWith('owner'))];
    expect(readFileSync(file, 'utf8')).toContain(`${winner?.pid} `);
    for (const starter of starters) starter.kill('SIGKILL');
  });

  it.skipIf(process.platform !== 'linux')('is taken over when its number now belongs to another process', () => {
    takeDataLock(file);
    writeFileSync(file, `${process.ppid} another-boot 12345`);
    const lock = takeDataLock(file);
    expect(lock.wasTakenOver).toBe(true);
    lock.release();
  });

  it.each(['', 'half', '0', '-5'])('is taken over when it says "%s", which no owner writes', (text) => {
    takeDataLock(file);
    writeFileSync(file, text);
    expect(takeDataLock(file).wasTakenOver).toBe(true);
  });

  it('does not take away a lock that another has by now', () => {
    const lock = takeDataLock(file);
    writeFileSync(file, 'of another');
    lock.release();
    expect(readFileSync(file, 'utf8')).toBe('of another');
  });

  it('lies beside an embedded database, and in the data folder for a server', () => {
    expect(lockFile({ databaseUrl: 'file:/a/b.db', dataDir: '/c' })).toBe('/a/b.db.lock');
    expect(lockFile({ databaseUrl: 'postgresql://x/y', dataDir: '/c' })).toBe(path.join('/c', 'lurewright.lock'));
  });
});
