import type { MigrationSession } from './migrate';
import { applyMigrations, openMigrationSession } from './migrate';
import { readMigrations } from './migrations';

/**
 * Differences between the tables a database has and those that our migrations make, one line each; empty when they
 * are the same. The expected ones are made anew, in memory on SQLite and as temporary tables on Postgres.
 */
export async function schemaDifferences(session: MigrationSession): Promise<string[]> {
  const [expected, found] =
    session.engine === 'sqlite'
      ? [await freshSqliteSchema(), await describeSqlite(session)]
      : [await freshPostgresSchema(session), await describePostgres(session, 'current_schema()')];
  return [
    ...[...expected].filter((line) => !found.has(line)).map((line) => `missing: ${line}`),
    ...[...found].filter((line) => !expected.has(line)).map((line) => `not expected: ${line}`),
  ];
}

async function freshSqliteSchema(): Promise<Set<string>> {
  const fresh = await openMigrationSession('file::memory:');
  try {
    await applyMigrations(fresh, readMigrations('sqlite'));
    return await describeSqlite(fresh);
  } finally {
    await fresh.close();
  }
}

async function describeSqlite(session: MigrationSession): Promise<Set<string>> {
  const rows = await session.all(
    `SELECT type, name, sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_prisma\\_%' ESCAPE '\\'`,
  );
  return new Set(rows.map((row) => `${row.type} ${row.name}: ${String(row.sql).replace(/\s+/g, ' ')}`));
}

async function freshPostgresSchema(session: MigrationSession): Promise<Set<string>> {
  let description = new Set<string>();
  const undo = new Error('only looked');
  await session
    .transaction(async () => {
      await session.script('SET LOCAL search_path TO pg_temp');
      for (const migration of readMigrations('postgres')) await session.script(migration.sql);
      const [row] = await session.all('SELECT nspname FROM pg_namespace WHERE oid = pg_my_temp_schema()');
      description = await describePostgres(session, `'${String(row?.nspname)}'`);
      throw undo; // roll back: nothing of this stays
    })
    .catch((error: unknown) => {
      if (error !== undo) throw error;
    });
  return description;
}

/** Columns, indexes and constraints of one schema, without the schema's name. */
async function describePostgres(session: MigrationSession, schema: string): Promise<Set<string>> {
  const own = `table_name NOT LIKE '\\_prisma\\_%'`;
  const columns = await session.all(
    `SELECT table_name, column_name, data_type, datetime_precision, is_nullable, column_default
     FROM information_schema.columns WHERE table_schema = ${schema} AND ${own}`,
  );
  const indexes = await session.all(
    `SELECT schemaname, indexdef FROM pg_indexes WHERE schemaname = ${schema} AND tablename NOT LIKE '\\_prisma\\_%'`,
  );
  const constraints = await session.all(
    `SELECT n.nspname, t.relname, c.conname, pg_get_constraintdef(c.oid) AS definition
     FROM pg_constraint c JOIN pg_class t ON t.oid = c.conrelid JOIN pg_namespace n ON n.oid = t.relnamespace
     WHERE n.nspname = ${schema} AND c.contype <> 'n' AND t.relname NOT LIKE '\\_prisma\\_%'`,
  );
  return new Set([
    ...columns.map(
      (row) =>
        `column ${row.table_name}.${row.column_name}: ${row.data_type}(${row.datetime_precision ?? ''}) nullable ${row.is_nullable} default ${row.column_default}`,
    ),
    ...indexes.map((row) => `index: ${withoutSchema(row.indexdef, row.schemaname)}`),
    ...constraints.map(
      (row) => `constraint ${row.relname}.${row.conname}: ${withoutSchema(row.definition, row.nspname)}`,
    ),
  ]);
}

/** Postgres writes the schema of temporary tables as pg_temp, whatever its name. */
function withoutSchema(definition: unknown, schema: unknown): string {
  return String(definition).replaceAll(`${schema}.`, '').replaceAll('pg_temp.', '');
}
