import { randomUUID } from 'node:crypto';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, describe, inject } from 'vitest';
import type { Db } from '@/prisma/client';
import { createDb } from '@/prisma/client';
import type { Engine } from '@/prisma/ops/schema-text';
import { ENGINES } from '@/prisma/ops/schema-text';
import { runOnServer, withDatabase } from './postgres-server';

/** Makes fresh databases of one engine, migrated and empty. All of them are closed and gone after each test. */
export interface MakeDb {
  /** A new database, opened. */
  (): Promise<Db>;
  readonly engine: Engine;
  /** Address of a new database that nobody has open yet. */
  url(): Promise<string>;
  /** One more client of a database that is already there, as a second server or device would have. */
  open(url: string): Promise<Db>;
}

/** Runs the same tests on SQLite and on Postgres. */
export function describeBothDatabases(name: string, body: (makeDb: MakeDb) => void): void {
  describe.each(ENGINES)(`${name} on %s`, (engine) => {
    const open: Db[] = [];
    const cleanups: (() => Promise<void>)[] = [];
    afterEach(async () => {
      for (const db of open.splice(0)) await db.$disconnect();
      for (const cleanup of cleanups.splice(0)) await cleanup();
    });
    const url = async () => {
      const made = engine === 'sqlite' ? copySqliteBase() : await copyPostgresTemplate();
      cleanups.push(made.remove);
      return made.url;
    };
    const openUrl = async (address: string) => {
      const db = await createDb(address);
      open.push(db);
      return db;
    };
    body(Object.assign(async () => openUrl(await url()), { engine, url, open: openUrl }));
  });
}

interface MadeDatabase {
  readonly url: string;
  readonly remove: () => Promise<void>;
}

function copySqliteBase(): MadeDatabase {
  const folder = mkdtempSync(path.join(tmpdir(), 'store-test-'));
  const file = path.join(folder, 'workshop.db');
  copyFileSync(inject('sqliteBase'), file); // closed and checkpointed, so the one file is all of it
  return { url: `file:${file}`, remove: async () => rmSync(folder, { recursive: true, force: true }) };
}

async function copyPostgresTemplate(): Promise<MadeDatabase> {
  const server = inject('postgresUrl');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await runOnServer(server, `CREATE DATABASE ${name} TEMPLATE ${inject('postgresTemplate')}`);
  return {
    url: withDatabase(server, name),
    remove: () => runOnServer(server, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`),
  };
}
