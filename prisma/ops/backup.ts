import { chmodSync, closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import Database from 'libsql';
import { openSqlite } from '../sqlite-adapter';

/**
 * Copies a SQLite database, also while it is open, into `backupDir` and returns the copy's path. The copy is whole:
 * it gets its name only after SQLite itself found nothing wrong with it and it reached the disk.
 * `schemaName` is the newest migration in it and becomes part of the name. Throws when the copy cannot be made.
 */
export function backupSqlite(file: string, backupDir: string, schemaName: string, nowAt: number): string {
  mkdirSync(backupDir, { recursive: true });
  const stamp = new Date(nowAt)
    .toISOString()
    .replace(/\.\d+Z$/, 'Z')
    .replaceAll(':', '');
  const target = path.join(backupDir, `${stamp}-${schemaName}.db`);
  const part = `${target}.part`;
  rmSync(part, { force: true });
  try {
    const connection = openSqlite(file);
    try {
      connection.prepare('VACUUM INTO ?').run(part);
    } finally {
      connection.close();
    }
    const faults = checkSqlite(part, 'integrity_check');
    if (faults.length > 0) throw new Error(`the backup of ${file} is not whole: ${faults.join('; ')}`);
    chmodSync(part, 0o600);
    syncToDisk(part);
    renameSync(part, target);
    syncToDisk(backupDir);
    return target;
  } finally {
    rmSync(part, { force: true });
  }
}

/** What SQLite finds wrong with a database file; empty when it is whole. The quick check leaves the indexes out. */
export function checkSqlite(file: string, check: 'integrity_check' | 'quick_check'): string[] {
  const connection = new Database(file);
  try {
    const rows: unknown[] = connection.prepare(`PRAGMA ${check}(20)`).raw(true).all();
    return rows.map((row) => String(Array.isArray(row) ? row[0] : row)).filter((line) => line !== 'ok');
  } catch (error) {
    return [error instanceof Error ? error.message : String(error)];
  } finally {
    connection.close();
  }
}

function syncToDisk(fileOrFolder: string): void {
  if (process.platform === 'win32') return; // folders cannot be opened there, and files are flushed at close
  const handle = openSync(fileOrFolder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
