import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { isPostgres } from '../client';
import { sqliteFile } from '../sqlite-adapter';
import type { Environment } from './environment';
import { StartRefusal } from './start-refusal';

export interface DataLock {
  /** Whether a lock of a process that is gone was taken over. */
  readonly wasTakenOver: boolean;
  release(): void;
}

/** The lock file: beside a SQLite database, else in the data folder. */
export function lockFile({ databaseUrl, dataDir }: Pick<Environment, 'databaseUrl' | 'dataDir'>): string {
  return isPostgres(databaseUrl) ? path.join(dataDir, 'lurewright.lock') : `${sqliteFile(databaseUrl)}.lock`;
}

/**
 * Makes this process the only one that owns the data. A lock left by a process that is gone is taken over.
 * Throws a StartRefusal while the owner is alive.
 */
export function takeDataLock(file: string): DataLock {
  mkdirSync(path.dirname(file), { recursive: true });
  const mine = ownerText(process.pid);
  let wasTakenOver = false;
  for (let attempt = 0; attempt < 5; attempt += 1) {
    if (createExclusively(file, mine)) return { wasTakenOver, release: () => releaseLock(file, mine) };
    const found = readOrNull(file);
    if (found === null) continue; // given back this very moment
    if (isAlive(found)) break;
    wasTakenOver = removeDead(file, found);
  }
  const pid = readOrNull(file)?.split(' ')[0] ?? 'unknown';
  throw new StartRefusal(
    `Lurewright is already running with these data, as process ${pid}. Stop it first. If you are sure that it is not running, delete ${file}.`,
  );
}

/** The file appears with its text in it, so that nobody ever reads half of it. */
function createExclusively(file: string, text: string): boolean {
  const draft = `${file}.${process.pid}.new`;
  writeFileSync(draft, text, { mode: 0o600 });
  try {
    linkSync(draft, file);
    return true;
  } catch (error) {
    if (hasCode(error, 'EEXIST')) return false;
    throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}

/** Moves a dead lock away and looks at it again, so that of two that start at once only one takes it over. */
function removeDead(file: string, dead: string): boolean {
  const aside = `${file}.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return false;
    throw error;
  }
  const moved = readFileSync(aside, 'utf8');
  try {
    if (moved !== dead) linkSync(aside, file); // somebody else had just taken it over: put theirs back
  } finally {
    rmSync(aside, { force: true });
  }
  return moved === dead;
}

function releaseLock(file: string, mine: string): void {
  if (readOrNull(file) === mine) rmSync(file, { force: true });
}

function readOrNull(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return null;
    throw error;
  }
}

/**
 * "pid" and, where the system tells, which boot and which moment of it the process began at: after a crash the same
 * number may belong to quite another process, in a container nearly always.
 */
function ownerText(pid: number): string {
  return `${pid} ${processBirth(pid) ?? ''}`.trim();
}

function isAlive(owner: string): boolean {
  const [pidText, ...birth] = owner.trim().split(' ');
  const pid = Number(pidText);
  if (!Number.isInteger(pid) || pid <= 0) return false; // cut short while being written: its maker is gone
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (hasCode(error, 'ESRCH')) return false;
  }
  const birthNow = processBirth(pid);
  if (birthNow === null || birth.length === 0) return pid !== process.pid;
  return birth.join(' ') === birthNow;
}

/** Boot and start of a process on Linux; null elsewhere. Source: proc(5), /proc/pid/stat field 22. */
function processBirth(pid: number): string | null {
  if (process.platform !== 'linux') return null;
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const afterName = stat.slice(stat.lastIndexOf(')') + 2).split(' '); // the name, field 2, may hold spaces
    return `${boot} ${afterName[19] ?? ''}`;
  } catch {
    return null;
  }
}

function hasCode(error: unknown, code: string): boolean {
  return error instanceof Error && 'code' in error && error.code === code;
}
