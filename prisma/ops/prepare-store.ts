import path from 'node:path';
import { sqliteFile } from '../sqlite-adapter';
import { backupSqlite, checkSqlite } from './backup';
import type { Environment } from './environment';
import { schemaDifferences } from './expected-schema';
import type { MigrationSession } from './migrate';
import {
  applyMigrations,
  engineOf,
  hasTable,
  openMigrationSession,
  readMigrationState,
  refuseForeignState,
} from './migrate';
import type { Migration } from './migrations';
import { readMigrations } from './migrations';
import { StartRefusal } from './start-refusal';

/** Oldest Postgres that the app's statements were tried on. */
const LEAST_POSTGRES = 14;

export interface PrepareOptions {
  readonly nowAt: number;
  /** Told in one line what is being done. */
  readonly report: (line: string) => void;
  /** Migrations of this version; others only in tests. */
  readonly known?: readonly Migration[];
}

/**
 * Brings a database to where this version can use it: opens it, refuses what it does not know, makes a backup before
 * it changes anything, migrates, and proves that the tables are the expected ones and, after an unclean end, whole.
 * Throws a StartRefusal with what to do when it cannot.
 */
export async function prepareStore(
  environment: Pick<Environment, 'databaseUrl' | 'dataDir'>,
  options: PrepareOptions,
): Promise<void> {
  const session = await openOrRefuse(environment.databaseUrl);
  try {
    await checkServerVersion(session);
    const known = options.known ?? readMigrations(session.engine);
    const state = await readMigrationState(session, known);
    await refuseForeignState(session, state);
    if (state.pending.length > 0) {
      if (state.isNew) await refuseForeignTables(session);
      const backup = state.isNew ? null : makeBackup(environment, known, state.pending, options);
      await migrateOrRefuse(session, state.pending, backup);
      options.report(
        state.isNew ? 'Made a new database.' : `Brought the database up to date (${state.pending.length}).`,
      );
    }
    await refuseDifferences(session);
    if (session.engine === 'sqlite' && (await endedUncleanly(session))) {
      options.report('The last run did not end cleanly: checking the database.');
      refuseDamage(sqliteFile(environment.databaseUrl));
    }
  } finally {
    await session.close();
  }
}

async function openOrRefuse(url: string): Promise<MigrationSession> {
  try {
    return await openMigrationSession(url);
  } catch (error) {
    const what =
      engineOf(url) === 'sqlite'
        ? `The database file ${sqliteFile(url)} cannot be opened`
        : `The Postgres server at ${new URL(url).host} cannot be used`;
    throw new StartRefusal(
      `${what}: ${messageOf(error)}. Check DATABASE_URL, that the place is there, and that you may use it.`,
    );
  }
}

async function checkServerVersion(session: MigrationSession): Promise<void> {
  if (session.engine === 'sqlite') return;
  const [row] = await session.all('SHOW server_version_num');
  const major = Math.floor(Number(row?.server_version_num) / 10_000);
  if (major >= LEAST_POSTGRES) return;
  throw new StartRefusal(`This Postgres server is version ${major}; version ${LEAST_POSTGRES} or newer is needed.`);
}

/** A database without our list of migrations must be empty, else it belongs to something else. */
async function refuseForeignTables(session: MigrationSession): Promise<void> {
  const rows = await session.all(
    session.engine === 'sqlite'
      ? "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> '_prisma_migrations'"
      : "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = current_schema() AND table_name <> '_prisma_migrations'",
  );
  if (rows.length === 0) return;
  const names = rows.slice(0, 5).map((row) => row.name);
  throw new StartRefusal(
    `The database already has tables that are not this app's (${names.join(', ')}). Nothing was changed. Name an empty database in DATABASE_URL.`,
  );
}

function makeBackup(
  { databaseUrl, dataDir }: Pick<Environment, 'databaseUrl' | 'dataDir'>,
  known: readonly Migration[],
  pending: readonly Migration[],
  { nowAt, report }: PrepareOptions,
): string | null {
  if (engineOf(databaseUrl) === 'postgres') {
    report('Changing the tables. On Postgres no backup is made here: keep your own with pg_dump.');
    return null;
  }
  const newest = known.filter((migration) => !pending.includes(migration)).at(-1)?.name ?? 'unknown';
  try {
    const backup = backupSqlite(sqliteFile(databaseUrl), path.join(dataDir, 'backups'), newest, nowAt);
    report(`Backup before changing the tables: ${backup}`);
    return backup;
  } catch (error) {
    throw new StartRefusal(
      `The tables have to be changed, but the backup before that failed: ${messageOf(error)}. Nothing was changed. Make room or give write access in ${dataDir} and start again.`,
    );
  }
}

async function migrateOrRefuse(
  session: MigrationSession,
  pending: readonly Migration[],
  backup: string | null,
): Promise<void> {
  try {
    await applyMigrations(session, pending);
  } catch (error) {
    const copy = backup === null ? '' : ` A backup from before is ${backup}.`;
    throw new StartRefusal(
      `Changing the tables failed: ${messageOf(error)}. The change was undone and your data are as they were.${copy} Start the version you used before, and report this.`,
    );
  }
}

async function refuseDifferences(session: MigrationSession): Promise<void> {
  const differences = await schemaDifferences(session);
  if (differences.length === 0) return;
  const shown = differences.slice(0, 5).map((line) => `  ${line}`);
  throw new StartRefusal(
    `The tables are not the ones this version expects; somebody or something else changed them:\n${shown.join('\n')}\nNothing was changed. Restore a backup: see README, Restore.`,
  );
}

async function endedUncleanly(session: MigrationSession): Promise<boolean> {
  if (!(await hasTable(session, 'ServerRun'))) return false;
  const rows = await session.all('SELECT "endedAt" FROM "ServerRun" ORDER BY "startedAt" DESC LIMIT 1');
  return rows.some((row) => row.endedAt === null);
}

function refuseDamage(file: string): void {
  const faults = checkSqlite(file, 'quick_check');
  if (faults.length === 0) return;
  throw new StartRefusal(
    `The database file ${file} is damaged (${faults.join('; ').replaceAll('\n', '; ')}). Nothing was changed. Restore the newest backup: see README, Restore.`,
  );
}

function messageOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  // Connection errors of several addresses carry no message of their own.
  if (error.message === '' && 'code' in error) return String(error.code);
  return error.message.replace(/\.$/, '');
}
