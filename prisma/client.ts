import { objectEnumValues } from '@prisma/client/runtime/client';
import type { PrismaClient } from '@/prisma/generated/sqlite/client';

/**
 * The database. Its types are those of the SQLite client; the Postgres client is made from the same models, and a
 * second type check (tsconfig.postgres.json) proves that what is written for one also holds for the other.
 */
export type Db = PrismaClient;

/** The database inside a transaction. Inside `writeTx` use nothing else: the outer client waits for its end. */
export type Tx = Parameters<Parameters<Db['$transaction']>[0]>[0];

/** Nothing in a column of JSON: written as this, since a plain null could also mean the JSON word. */
export const JSON_NULL = objectEnumValues.instances.DbNull;

/** What reads: the database itself or an open transaction. */
export type DbReader = Db | Tx;

/** Whether a DATABASE_URL names a Postgres server; everything else is a SQLite file. */
export function isPostgres(url: string): boolean {
  return /^postgres(ql)?:\/\//.test(url);
}

/** Longest a transaction may wait for its turn, and then last, in ms. */
const TRANSACTION_OPTIONS = { maxWait: 10_000, timeout: 20_000 };

// Next may load this module more than once in one process; what must be one is kept beside all of them.
const shared: typeof globalThis & { lurewrightDb?: Promise<Db>; lurewrightPostgres?: WeakSet<object> } = globalThis;
shared.lurewrightPostgres ??= new WeakSet();
const postgresClients = shared.lurewrightPostgres;

/** Opens a database. Several may be open at once; close each with `$disconnect()`. */
export async function createDb(url: string): Promise<Db> {
  if (!isPostgres(url)) {
    const [{ PrismaClient }, { SqliteAdapter }] = await Promise.all([
      import('@/prisma/generated/sqlite/client'),
      import('./sqlite-adapter'),
    ]);
    return new PrismaClient({ adapter: new SqliteAdapter(url), transactionOptions: TRANSACTION_OPTIONS });
  }
  const [{ PrismaClient }, { PrismaPg }] = await Promise.all([
    import('@/prisma/generated/postgres/client'),
    import('@prisma/adapter-pg'),
  ]);
  const adapter = new PrismaPg({ connectionString: url, max: 5 });
  const client = new PrismaClient({ adapter, transactionOptions: TRANSACTION_OPTIONS }) as unknown as Db;
  postgresClients.add(client);
  return client;
}

/** Whether this client talks to Postgres: for the few statements that are written for each engine. */
export function isPostgresDb(database: Db): boolean {
  return postgresClients.has(database);
}

/** The database of this process, opened at the first call. DATABASE_URL was checked at start. */
export function db(): Promise<Db> {
  shared.lurewrightDb ??= createDb(process.env.DATABASE_URL ?? 'file:./data/lurewright.db');
  return shared.lurewrightDb;
}

/** Number of the lock that makes writers on Postgres take turns, as they do on SQLite. Chosen. */
const WRITE_LOCK = 4711;

/** Waits between tries when another process holds the database, in ms. */
const RETRY_AFTER_MS = [50, 100, 200, 400, 800] as const;

/**
 * Runs `work` in one transaction while no other writer runs: all of it is kept, or nothing is.
 * The only way the app writes. Keep it short: no network and no long computation inside.
 * When the database is locked by another process `work` is run again from the start, up to 6 times in all, so it must
 * have no effect outside of `tx`. Every other error is thrown on at once.
 * `timeoutMs`: for the rare work that is long by nature, such as a logger's year of readings.
 */
export async function writeTx<T>(
  database: Db,
  work: (tx: Tx) => Promise<T>,
  { timeoutMs = TRANSACTION_OPTIONS.timeout }: { readonly timeoutMs?: number } = {},
): Promise<T> {
  const attempt = () =>
    database.$transaction(
      async (tx) => {
        if (postgresClients.has(database)) await tx.$executeRaw`SELECT pg_advisory_xact_lock(${WRITE_LOCK}::bigint)`;
        return work(tx);
      },
      { ...TRANSACTION_OPTIONS, timeout: timeoutMs },
    );
  for (const waitMs of RETRY_AFTER_MS) {
    try {
      return await attempt();
    } catch (error) {
      if (!isBusy(error)) throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, waitMs));
  }
  return attempt();
}

/**
 * Prisma's codes for "try again": P1008 is how the driver tells SQLITE_BUSY, P2034 a deadlock or a write conflict.
 * https://www.prisma.io/docs/orm/reference/error-reference
 */
const BUSY_CODES: ReadonlySet<unknown> = new Set(['P1008', 'P2034']);

function isBusy(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = 'code' in error ? error.code : undefined;
  return BUSY_CODES.has(code) || /database (table )?is locked|SQLITE_BUSY/.test(error.message);
}
