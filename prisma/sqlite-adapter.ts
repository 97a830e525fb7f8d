import { PrismaLibSQL } from '@prisma/adapter-libsql';
import Database from 'libsql';

type Connection = InstanceType<typeof Database>;
type LibsqlClient = ReturnType<PrismaLibSQL['createClient']>;
type LibsqlTransaction = Awaited<ReturnType<LibsqlClient['transaction']>>;
type Statement = Parameters<LibsqlClient['execute']>[0];
type Result = Awaited<ReturnType<LibsqlClient['execute']>>;
type Value = Result['rows'][number][number];

/** Longest that a writer waits for another one. */
const BUSY_TIMEOUT_MS = 5_000;
const ASK_AGAIN_MS = 10;

/**
 * Set at every opening, in this order: busy_timeout first, so that the others wait for another process instead of
 * failing; synchronous=FULL because a reopened WAL file may come up with less, and an acknowledged event must survive
 * a power cut.
 */
export const SQLITE_PRAGMAS = [
  ['busy_timeout', String(BUSY_TIMEOUT_MS)],
  ['journal_mode', 'WAL'],
  ['synchronous', 'FULL'],
  ['foreign_keys', 'ON'],
  ['cache_size', '-16000'],
  ['temp_store', 'MEMORY'],
] as const;

/** Most prepared statements kept for reuse by one connection. Chosen: the app has fewer distinct statements. */
const CACHED_STATEMENTS = 300;

/** File of a `file:` address, as Prisma writes it; a relative one counts from the working folder. */
export function sqliteFile(url: string): string {
  return url.replace(/^file:/, '');
}

/** Opens one connection with our settings. Throws when the file's folder cannot keep a write-ahead log. */
export function openSqlite(file: string): Connection {
  const connection = new Database(file);
  for (const [name, value] of SQLITE_PRAGMAS) connection.prepare(`PRAGMA ${name} = ${value}`).all();
  const mode = pragmaValue(connection, 'journal_mode');
  if (mode !== 'wal') {
    connection.close();
    throw new Error(
      `The database ${file} cannot use a write-ahead log there (journal mode stays ${mode}). Keep it on a local disk.`,
    );
  }
  return connection;
}

/** Present value of a PRAGMA that answers with one row. */
export function pragmaValue(connection: Connection, name: string): unknown {
  const [row] = connection.prepare(`PRAGMA ${name}`).raw(true).all();
  return Array.isArray(row) ? row[0] : undefined;
}

/**
 * Prisma's SQLite driver over a single `libsql` connection that lives as long as the client. The stock driver opens a
 * new connection for every interactive transaction, never closes the old one and so loses the settings above; it also
 * begins transactions deferred, which fails under a second writer. Here a transaction begins IMMEDIATE, and every
 * other query of this client waits until it ends (the base class holds a lock over it).
 */
export class SqliteAdapter extends PrismaLibSQL {
  readonly #file: string;

  constructor(url: string) {
    super({ url });
    this.#file = sqliteFile(url);
  }

  override createClient(): LibsqlClient {
    return new SingleConnectionClient(openSqlite(this.#file));
  }
}

interface Prepared {
  readonly statement: ReturnType<Connection['prepare']>;
  readonly isReader: boolean;
  readonly columns: string[];
  readonly columnTypes: string[];
}

class SingleConnectionClient implements LibsqlClient {
  readonly protocol = 'file';
  closed = false;
  readonly #connection: Connection;
  readonly #prepared = new Map<string, Prepared>();

  constructor(connection: Connection) {
    this.#connection = connection;
  }

  async execute(statement: Statement): Promise<Result> {
    const { sql, args } = typeof statement === 'string' ? { sql: statement, args: [] } : statement;
    const values = Object.values(args).map(toSqlite);
    const prepared = this.#prepare(sql);
    if (!prepared.isReader) {
      const { changes } = prepared.statement.run(values);
      return result([], [], [], changes);
    }
    const rows = prepared.statement.all(values).map(fromSqlite);
    return result(prepared.columns, prepared.columnTypes, rows, 0);
  }

  async executeMultiple(sql: string): Promise<void> {
    this.#prepared.clear();
    this.#connection.exec(sql);
  }

  async transaction(): Promise<LibsqlTransaction> {
    await this.#begin();
    const rollback = async () => {
      if (this.#connection.inTransaction) this.#connection.exec('ROLLBACK');
    };
    return {
      closed: false,
      execute: (statement) => this.execute(statement),
      executeMultiple: (sql) => this.executeMultiple(sql),
      batch: notUsed,
      commit: async () => {
        this.#connection.exec('COMMIT');
      },
      rollback,
      close: () => void rollback(),
    };
  }

  /**
   * Begins as the only writer. While another process writes, SQLite's own waiting would halt this whole process, so
   * here it is asked again and again instead, for as long as the timeout says.
   */
  async #begin(): Promise<void> {
    const giveUpAt = performance.now() + BUSY_TIMEOUT_MS;
    for (;;) {
      try {
        this.#setBusyTimeout(0);
        this.#connection.exec('BEGIN IMMEDIATE');
        return;
      } catch (error) {
        if (!isBusy(error) || performance.now() > giveUpAt) throw error;
      } finally {
        this.#setBusyTimeout(BUSY_TIMEOUT_MS);
      }
      await new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MS));
    }
  }

  #setBusyTimeout(ms: number): void {
    this.#connection.prepare(`PRAGMA busy_timeout = ${ms}`).all();
  }

  batch = notUsed;
  sync = notUsed;

  close(): void {
    if (this.closed) return;
    this.closed = true;
    this.#prepared.clear();
    this.#connection.close();
  }

  #prepare(sql: string): Prepared {
    const known = this.#prepared.get(sql);
    if (known !== undefined) {
      this.#prepared.delete(sql); // put back as the newest
      this.#prepared.set(sql, known);
      return known;
    }
    const statement = this.#connection.prepare(sql);
    statement.safeIntegers(true); // 64-bit integers arrive whole
    const isReader = statement.reader;
    const columns = isReader ? statement.raw(true).columns() : [];
    const prepared = {
      statement,
      isReader,
      columns: columns.map((column) => column.name),
      columnTypes: columns.map((column) => column.type ?? ''),
    };
    this.#prepared.set(sql, prepared);
    const oldest = this.#prepared.keys().next();
    if (this.#prepared.size > CACHED_STATEMENTS && !oldest.done) this.#prepared.delete(oldest.value);
    return prepared;
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY');
}

function notUsed(): Promise<never> {
  return Promise.reject(new Error('the SQLite driver of this app does not do this'));
}

function toSqlite(value: unknown): unknown {
  if (typeof value === 'boolean') return value ? 1 : 0;
  if (value instanceof Date) return value.valueOf();
  return value instanceof ArrayBuffer ? Buffer.from(value) : value;
}

/** One row as libsql gives it in raw mode; bytes become an ArrayBuffer of their own, as Prisma's driver expects. */
function fromSqlite(row: unknown): Value[] {
  if (!Array.isArray(row)) throw new Error('libsql gave a row that is not an array');
  return row.map((value: Value | Buffer) => (Buffer.isBuffer(value) ? new Uint8Array(value).buffer : value));
}

function result(columns: string[], columnTypes: string[], rows: Value[][], rowsAffected: number): Result {
  return {
    columns,
    columnTypes,
    // Prisma's driver reads rows by index only, never by column name.
    rows: rows as unknown as Result['rows'],
    rowsAffected,
    lastInsertRowid: undefined,
    toJSON: () => ({ columns, columnTypes, rows, rowsAffected }),
  };
}
