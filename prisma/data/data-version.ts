import { type Db, isPostgresDb } from '@/prisma/client';

/**
 * A text that changes with everything that is committed to the database, whoever writes it: what was computed from the
 * database under it still holds while it is the same. Read it before what it is to stand for. It may change without
 * need, as by a write that was taken back.
 */
export async function dataVersion(database: Db): Promise<string> {
  const rows = isPostgresDb(database)
    ? await database.$queryRaw<{ version: string }[]>`SELECT pg_current_snapshot()::text AS "version"`
    : // Commits of others, and rows changed by this connection.
      await database.$queryRaw<{ version: string }[]>`
        SELECT (SELECT "data_version" FROM pragma_data_version) || ' ' || total_changes() AS "version"`;
  const version = rows[0]?.version;
  if (version === undefined) throw new Error('the database did not tell its version');
  return version;
}
