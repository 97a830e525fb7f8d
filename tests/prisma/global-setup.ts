import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { generateClients } from '@/prisma/ops/generate';
import { migrateToNewest } from '@/prisma/ops/migrate';
import { runOnServer, startPostgres, withDatabase } from './postgres-server';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Migrated SQLite file, copied for every test. */
    sqliteBase: string;
    /** Postgres server whose user may make databases. */
    postgresUrl: string;
    /** Migrated database on it, the template for every test's own. */
    postgresTemplate: string;
  }
}

/** Once for all store tests: both clients, an empty migrated database of each engine, and a Postgres server. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await generateClients();
  const folder = mkdtempSync(path.join(tmpdir(), 'store-tests-'));
  const sqliteBase = path.join(folder, 'base.db');
  await migrateToNewest(`file:${sqliteBase}`);

  const given = process.env.TEST_PG_URL;
  const server = given ? { url: given, stop: async () => {} } : await startPostgres();
  const postgresTemplate = `template_${process.pid}`;
  await runOnServer(server.url, `CREATE DATABASE ${postgresTemplate}`);
  await migrateToNewest(withDatabase(server.url, postgresTemplate));

  project.provide('sqliteBase', sqliteBase);
  project.provide('postgresUrl', server.url);
  project.provide('postgresTemplate', postgresTemplate);
  return async () => {
    if (given) await runOnServer(server.url, `DROP DATABASE IF EXISTS ${postgresTemplate} WITH (FORCE)`);
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
}
