import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { schemaDifferences } from '@/prisma/ops/expected-schema';
import type { MigrationSession } from '@/prisma/ops/migrate';
import {
  applyMigrations,
  migrateToNewest,
  openMigrationSession,
  readMigrationState,
  refuseForeignState,
} from '@/prisma/ops/migrate';
import type { Migration } from '@/prisma/ops/migrations';
import { readMigrations } from '@/prisma/ops/migrations';
import { ENGINES, prismaPath, schemaText } from '@/prisma/ops/schema-text';
import { StartRefusal } from '@/prisma/ops/start-refusal';
import { describeBothDatabases } from '../both-databases';

function migration(name: string, sql: string): Migration {
  return { name, sql, checksum: name.padEnd(64, '0') };
}

async function withSession<T>(url: string, work: (session: MigrationSession) => Promise<T>): Promise<T> {
  const session = await openMigrationSession(url);
  try {
    return await work(session);
  } finally {
    await session.close();
  }
}

describe('the migrations in the project', () => {
  it.each(ENGINES)('lead to the models of today on %s: else run make-migration.ts', (engine) => {
    expect(readFileSync(prismaPath(engine, 'schema.prisma'), 'utf8')).toBe(schemaText(engine));
  });

  it('are the same for both engines, by name', () => {
    const [sqlite, postgres] = ENGINES.map((engine) => readdirSync(prismaPath(engine, 'migrations')).sort());
    expect(sqlite).toEqual(postgres);
    expect(sqlite?.length).toBeGreaterThan(0);
  });
});

describeBothDatabases('the migration runner', (makeDb) => {
  const addColumn = migration('9001_column', 'ALTER TABLE "Person" ADD COLUMN "hat" TEXT;');

  it('makes the expected tables from nothing, and does nothing the second time', async () => {
    const url = await makeDb.url();
    await withSession(url, async (session) => {
      expect(await schemaDifferences(session)).toEqual([]);
      const state = await readMigrationState(session);
      expect(state).toEqual({ isNew: false, pending: [], unknown: [], changed: [], failed: [] });
    });
    expect((await migrateToNewest(url)).pending).toEqual([]);
  });

  it('applies what is new, in order, and remembers it', async () => {
    const url = await makeDb.url();
    const fill = migration('9002_fill', `UPDATE "Person" SET "hat" = 'none';`);
    const known = [...readMigrations(makeDb.engine), addColumn, fill];
    const db = await makeDb.open(url);
    await db.person.create({ data: { name: 'Ada', skills: [], createdAt: new Date(0) } });
    await db.$disconnect();
    await withSession(url, async (session) => {
      const before = await readMigrationState(session, known);
      expect(before.pending.map((one) => one.name)).toEqual(['9001_column', '9002_fill']);
      await applyMigrations(session, before.pending);
      expect(await session.all('SELECT hat FROM "Person"')).toEqual([{ hat: 'none' }]);
      expect((await readMigrationState(session, known)).pending).toEqual([]);
    });
  });

  it('undoes a migration that fails in the middle, rows and all, and keeps those before it', async () => {
    const url = await makeDb.url();
    const bad = migration('9002_bad', 'DELETE FROM "Person"; ALTER TABLE "Nowhere" ADD COLUMN "x" TEXT;');
    const db = await makeDb.open(url);
    await db.person.create({ data: { name: 'Ada', skills: [], createdAt: new Date(0) } });
    await db.$disconnect();
    await withSession(url, async (session) => {
      await expect(applyMigrations(session, [addColumn, bad])).rejects.toThrow(/Nowhere/);
      expect(await session.all('SELECT name, hat FROM "Person"')).toEqual([{ name: 'Ada', hat: null }]);
      const state = await readMigrationState(session, [...readMigrations(makeDb.engine), addColumn, bad]);
      expect([state.pending.map((one) => one.name), state.failed]).toEqual([['9002_bad'], []]);
    });
  });

  it('keeps the children when it rebuilds their parent', async () => {
    const url = await makeDb.url();
    const db = await makeDb.open(url);
    const benchHours = { create: { weekday: 1, fromMinute: 0, toMinute: 60 } };
    await db.person.create({ data: { name: 'Ada', skills: [], createdAt: new Date(0), benchHours } });
    await db.$disconnect();
    // The way Prisma writes a change that SQLite's ALTER TABLE cannot do; elsewhere a plain one.
    const rebuild =
      makeDb.engine === 'sqlite'
        ? `CREATE TABLE "new_Person" ("id" TEXT NOT NULL PRIMARY KEY, "name" TEXT NOT NULL, "skills" JSONB NOT NULL,
             "isActive" BOOLEAN NOT NULL DEFAULT true, "createdAt" DATETIME NOT NULL, "hat" TEXT);
           INSERT INTO "new_Person" ("id", "name", "skills", "isActive", "createdAt")
             SELECT "id", "name", "skills", "isActive", "createdAt" FROM "Person";
           DROP TABLE "Person";
           ALTER TABLE "new_Person" RENAME TO "Person";`
        : addColumn.sql;
    await withSession(url, (session) => applyMigrations(session, [migration('9001_rebuild', rebuild)]));
    const again = await makeDb.open(url);
    expect(await again.benchHours.count()).toBe(1);
  });

  it('refuses on SQLite a migration that would leave rows without their parent', async () => {
    if (makeDb.engine === 'postgres') return; // the server itself refuses
    const url = await makeDb.url();
    const db = await makeDb.open(url);
    const benchHours = { create: { weekday: 1, fromMinute: 0, toMinute: 60 } };
    await db.person.create({ data: { name: 'Ada', skills: [], createdAt: new Date(0), benchHours } });
    await db.$disconnect();
    await withSession(url, async (session) => {
      const attempt = applyMigrations(session, [migration('9001_orphan', 'DELETE FROM "Person";')]);
      await expect(attempt).rejects.toThrow('leaves 1 rows without the row they point to, in BenchHours');
      expect(await session.all('SELECT name FROM "Person"')).toEqual([{ name: 'Ada' }]);
    });
  });

  it.each([
    [
      'a migration of a newer version',
      `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, finished_at) VALUES ('x', 'y', '9999_future', CURRENT_TIMESTAMP)`,
      /last used by a newer version .*9999_future/,
    ],
    [
      'a migration that was begun and never finished',
      `INSERT INTO "_prisma_migrations" (id, checksum, migration_name) VALUES ('x', 'y', '0001_first')`,
      /begun and never finished \(0001_first\)/,
    ],
    ['a migration whose text was another', `UPDATE "_prisma_migrations" SET checksum = 'other'`, /another text/],
  ])('refuses %s', async (_what, sql, message) => {
    const url = await makeDb.url();
    await withSession(url, async (session) => {
      await session.script(sql);
      const state = await readMigrationState(session);
      await expect(refuseForeignState(session, state)).rejects.toThrow(message);
      await expect(refuseForeignState(session, state)).rejects.toBeInstanceOf(StartRefusal);
    });
  });

  it('names the version that used a database last', async () => {
    const url = await makeDb.url();
    const db = await makeDb.open(url);
    await db.serverRun.create({ data: { startedAt: new Date(1000), version: '9.8.7' } });
    await db.serverRun.create({ data: { startedAt: new Date(0), version: '0.0.1' } });
    await db.$disconnect();
    await withSession(url, async (session) => {
      const state = { isNew: false, pending: [], unknown: ['9999_future'], changed: [], failed: [] };
      await expect(refuseForeignState(session, state)).rejects.toThrow('version 9.8.7 of the app');
    });
  });

  it.each([
    ['a column more', 'ALTER TABLE "Person" ADD COLUMN "hat" TEXT', /not expected: .*hat/],
    ['a missing index', 'DROP INDEX "BatchEvent_batchId_seq_key"', /missing: .*BatchEvent_batchId_seq_key/],
    ['a table more', 'CREATE TABLE "Other" ("id" TEXT)', /not expected: .*Other/],
  ])('sees %s', async (_what, sql, line) => {
    const url = await makeDb.url();
    await withSession(url, async (session) => {
      await session.script(sql);
      expect((await schemaDifferences(session)).join('\n')).toMatch(line);
    });
  });
});
