import { randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import Database from 'libsql';
import pg from 'pg';
import { isPostgres } from '../client';
import { openSqlite, sqliteFile } from '../sqlite-adapter';
import type { AppliedMigration, Migration, MigrationState } from './migrations';
import { migrationState, readMigrations } from './migrations';
import type { Engine } from './schema-text';
import { StartRefusal } from './start-refusal';

/** What the runner needs from a database; one connection, held by nobody else who migrates. */
export interface MigrationSession {
  readonly engine: Engine;
  all(sql: string): Promise<Record<string, unknown>[]>;
  /** Runs many statements. */
  script(sql: string): Promise<void>;
  /** Runs `work` in one transaction. */
  transaction(work: () => Promise<void>): Promise<void>;
  close(): Promise<void>;
}

/** Engine behind an address. */
export function engineOf(url: string): Engine {
  return isPostgres(url) ? 'postgres' : 'sqlite';
}

/** Opens a database for the runner. Foreign keys are off on SQLite: see `applyMigrations`. */
export async function openMigrationSession(url: string): Promise<MigrationSession> {
  return isPostgres(url) ? openPostgresSession(url) : openSqliteSession(sqliteFile(url));
}

function openSqliteSession(file: string): MigrationSession {
  if (file !== ':memory:') mkdirSync(path.dirname(path.resolve(file)), { recursive: true });
  const connection = file === ':memory:' ? new Database(file) : openSqlite(file);
  connection.prepare('PRAGMA foreign_keys = OFF').all();
  return {
    engine: 'sqlite',
    all: async (sql) => connection.prepare(sql).all().map(plainRow),
    script: async (sql) => {
      connection.exec(sql);
    },
    transaction: async (work) => {
      connection.exec('BEGIN IMMEDIATE');
      try {
        await work();
        connection.exec('COMMIT');
      } catch (error) {
        if (connection.inTransaction) connection.exec('ROLLBACK');
        throw error;
      }
    },
    close: async () => {
      // Closing alone may leave the last writes in the -wal file beside it.
      connection.prepare('PRAGMA wal_checkpoint(TRUNCATE)').all();
      connection.close();
    },
  };
}

/** Lock number that Prisma's own tools take while they migrate, so that neither disturbs the other. */
const MIGRATION_LOCK = 72707369;

async function openPostgresSession(url: string): Promise<MigrationSession> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(`SELECT pg_advisory_lock(${MIGRATION_LOCK})`); // given back when the connection ends
  return {
    engine: 'postgres',
    all: async (sql) => (await client.query(sql)).rows.map(plainRow),
    script: async (sql) => {
      await client.query(sql); // without parameters many statements may go at once
    },
    transaction: async (work) => {
      await client.query('BEGIN');
      try {
        await work();
        await client.query('COMMIT');
      } catch (error) {
        await client.query('ROLLBACK');
        throw error;
      }
    },
    close: () => client.end(),
  };
}

function plainRow(row: unknown): Record<string, unknown> {
  return typeof row === 'object' && row !== null ? { ...row } : {};
}

/** Reads where a database stands. Changes nothing. */
export async function readMigrationState(
  session: MigrationSession,
  known: readonly Migration[] = readMigrations(session.engine),
): Promise<MigrationState> {
  return migrationState(known, await readApplied(session));
}

async function readApplied(session: MigrationSession): Promise<AppliedMigration[]> {
  if (!(await hasTable(session, '_prisma_migrations'))) return [];
  const rows = await session.all(
    'SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL ORDER BY started_at, migration_name',
  );
  return rows.map((row) => ({
    name: String(row.migration_name),
    checksum: String(row.checksum),
    isFinished: row.finished_at !== null,
  }));
}

/** Whether a table is there. */
export async function hasTable(session: MigrationSession, table: string): Promise<boolean> {
  const sql =
    session.engine === 'sqlite'
      ? `SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = '${table}'`
      : `SELECT 1 FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = '${table}'`;
  return (await session.all(sql)).length > 0;
}

/** Throws a `StartRefusal` unless everything applied is known, unchanged and finished. */
export async function refuseForeignState(session: MigrationSession, state: MigrationState): Promise<void> {
  if (state.unknown.length > 0) {
    const version = await lastVersion(session);
    const maker = version === null ? 'a newer version of the app' : `version ${version} of the app`;
    throw new StartRefusal(
      `This database was last used by ${maker} and has changes this version does not know (${state.unknown.join(', ')}). Nothing was changed. Start that version again, or restore a backup made by this one.`,
    );
  }
  if (state.failed.length > 0) {
    throw new StartRefusal(
      `A change of the tables was begun and never finished (${state.failed.join(', ')}). Nothing was changed now. Restore the backup made before it: see README, Restore.`,
    );
  }
  if (state.changed.length > 0) {
    throw new StartRefusal(
      `The tables were made from another text of ${state.changed.join(', ')} than this version has. Nothing was changed. Use the version that made the database, or restore a backup made by this one.`,
    );
  }
}

async function lastVersion(session: MigrationSession): Promise<string | null> {
  if (!(await hasTable(session, 'ServerRun'))) return null;
  const [run] = await session.all('SELECT version FROM "ServerRun" ORDER BY "startedAt" DESC LIMIT 1');
  return typeof run?.version === 'string' ? run.version : null;
}

const tableSql = (instantType: string) => `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" VARCHAR(36) PRIMARY KEY NOT NULL,
  "checksum" VARCHAR(64) NOT NULL,
  "finished_at" ${instantType},
  "migration_name" VARCHAR(255) NOT NULL,
  "logs" TEXT,
  "rolled_back_at" ${instantType},
  "started_at" ${instantType} NOT NULL DEFAULT CURRENT_TIMESTAMP,
  "applied_steps_count" INTEGER NOT NULL DEFAULT 0
)`;

/**
 * Applies migrations in order, each in one transaction together with its row, so that a migration is there wholly or
 * not at all, also after a crash. On SQLite the session has foreign keys off, because a table is rebuilt by dropping
 * the old one, which would delete its children; they are checked before each commit instead.
 * https://www.sqlite.org/lang_altertable.html section 7
 */
export async function applyMigrations(session: MigrationSession, pending: readonly Migration[]): Promise<void> {
  await session.script(tableSql(session.engine === 'sqlite' ? 'DATETIME' : 'TIMESTAMPTZ'));
  for (const migration of pending) {
    await session.transaction(async () => {
      await session.script(migration.sql);
      if (session.engine === 'sqlite') await checkForeignKeys(session, migration.name);
      await session.script(recordSql(session.engine, migration));
    });
  }
}

async function checkForeignKeys(session: MigrationSession, name: string): Promise<void> {
  const broken = await session.all('PRAGMA foreign_key_check');
  if (broken.length === 0) return;
  const tables = [...new Set(broken.map((row) => String(row.table)))].join(', ');
  throw new Error(`migration ${name} leaves ${broken.length} rows without the row they point to, in ${tables}`);
}

function recordSql(engine: Engine, migration: Migration): string {
  if (!/^[A-Za-z0-9_]+$/.test(migration.name)) throw new RangeError(`not a migration's name: ${migration.name}`);
  const now = engine === 'sqlite' ? String(Date.now()) : 'now()';
  return `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
    VALUES ('${randomUUID()}', '${migration.checksum}', '${migration.name}', ${now}, ${now}, 1)`;
}

/** Brings a database to the newest migration. For tests and development; `npm start` makes a backup in between. */
export async function migrateToNewest(url: string): Promise<MigrationState> {
  const session = await openMigrationSession(url);
  try {
    const state = await readMigrationState(session);
    await refuseForeignState(session, state);
    await applyMigrations(session, state.pending);
    return state;
  } finally {
    await session.close();
  }
}
