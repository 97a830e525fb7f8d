/*
 * Prisma's command line is used for three things only: generate, validate and `migrate diff` between two schema
 * files. None of them reads a database, so an adapter that answers nothing is enough: no server, no native module,
 * no download. Migrations are applied by our own runner, prisma/ops/migrate.ts.
 */
import path from 'node:path';
import { defineConfig } from 'prisma/config';

const engine = process.env.PRISMA_VARIANT === 'postgres' ? 'postgres' : 'sqlite';
process.env.DATABASE_URL = engine === 'postgres' ? 'postgresql://none@127.0.0.1:1/none' : 'file:./none.db';

// Codes of column types as the driver adapters number them.
const INT32 = 0;
const BOOLEAN = 5;
const TEXT = 7;

async function refuse(): Promise<never> {
  throw new Error('this command needs a database; see prisma/ops');
}

async function connect() {
  return {
    provider: engine,
    adapterName: 'none',
    queryRaw: async () => ({
      columnNames: ['exists', 'version', 'numeric_version'],
      columnTypes: [BOOLEAN, TEXT, INT32],
      rows: [[true, 'PostgreSQL 15.0', 150000]],
    }),
    executeRaw: refuse,
    executeScript: refuse,
    startTransaction: refuse,
    getConnectionInfo: () => ({ schemaName: engine === 'postgres' ? 'public' : 'main', supportsRelationJoins: false }),
    dispose: async () => {},
  };
}

export default defineConfig({
  schema: process.env.PRISMA_SCHEMA ?? path.join('prisma', engine, 'schema.prisma'),
  migrations: { path: path.join('prisma', engine, 'migrations') },
  experimental: { adapter: true },
  engine: 'js',
  adapter: async () => ({ provider: engine, adapterName: 'none', connect, connectToShadowDb: connect }) as never,
});
