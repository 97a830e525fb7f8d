import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Instant } from '@/lib/units/instant';
import { createDb, writeTx } from '../client';
import { openSqlite, sqliteFile } from '../sqlite-adapter';
import { engineOf } from './migrate';
import { ROOT } from './schema-text';

/** Version of the app, from package.json. */
export function appVersion(): string {
  const parsed: unknown = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8'));
  const version = typeof parsed === 'object' && parsed !== null && 'version' in parsed ? parsed.version : null;
  return typeof version === 'string' ? version : 'unknown';
}

/** Notes that a run of the server begins, and returns its id. A run without an end is one that was cut off. */
export async function beginRun(databaseUrl: string, nowAt: Instant): Promise<string> {
  const db = await createDb(databaseUrl);
  try {
    const data = { startedAt: new Date(nowAt), version: appVersion() };
    const run = await writeTx(db, (tx) => tx.serverRun.create({ data }));
    return run.id;
  } finally {
    await db.$disconnect();
  }
}

/** Notes that a run ended as it should and, on SQLite, brings everything from the write-ahead log into the file. */
export async function endRun(databaseUrl: string, runId: string, nowAt: Instant): Promise<void> {
  const db = await createDb(databaseUrl);
  try {
    await writeTx(db, (tx) => tx.serverRun.update({ where: { id: runId }, data: { endedAt: new Date(nowAt) } }));
  } finally {
    await db.$disconnect();
  }
  if (engineOf(databaseUrl) !== 'sqlite') return;
  const connection = openSqlite(sqliteFile(databaseUrl));
  try {
    connection.prepare('PRAGMA wal_checkpoint(TRUNCATE)').all();
  } finally {
    connection.close();
  }
}
