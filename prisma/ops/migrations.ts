import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Engine } from './schema-text';
import { prismaPath } from './schema-text';

export interface Migration {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the text, as Prisma's own tools compute it. */
  readonly checksum: string;
}

/** Row of the table of migrations, which is Prisma's own, so that its tools agree on what was applied. */
export interface AppliedMigration {
  readonly name: string;
  readonly checksum: string;
  readonly isFinished: boolean;
}

export interface MigrationState {
  /** Nothing was ever applied: the database is new. */
  readonly isNew: boolean;
  readonly pending: readonly Migration[];
  /** Applied, but unknown to this version of the app. */
  readonly unknown: readonly string[];
  /** Applied from another text than this version has. */
  readonly changed: readonly string[];
  /** Begun and never finished. */
  readonly failed: readonly string[];
}

/** The migrations this version has for an engine, oldest first. */
export function readMigrations(engine: Engine, dir = prismaPath(engine, 'migrations')): Migration[] {
  return readdirSync(dir)
    .filter((name) => existsSync(path.join(dir, name, 'migration.sql')))
    .sort()
    .map((name) => {
      const sql = readFileSync(path.join(dir, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

/** Compares what a database has had applied with what this version knows. */
export function migrationState(known: readonly Migration[], applied: readonly AppliedMigration[]): MigrationState {
  const byName = new Map(known.map((migration) => [migration.name, migration]));
  const names = new Set(applied.map((row) => row.name));
  return {
    isNew: applied.length === 0,
    pending: known.filter((migration) => !names.has(migration.name)),
    unknown: applied.filter((row) => !byName.has(row.name)).map((row) => row.name),
    changed: applied
      .filter((row) => row.isFinished && (byName.get(row.name)?.checksum ?? row.checksum) !== row.checksum)
      .map((row) => row.name),
    failed: applied.filter((row) => !row.isFinished).map((row) => row.name),
  };
}
