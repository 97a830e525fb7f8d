/**
 * `npx tsx prisma/ops/make-migration.ts <name>`: after a change of prisma/models, writes the next migration of both
 * engines, from the schema that the migrations so far lead to (prisma/<engine>/schema.prisma) to the one of the models.
 */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { prismaCli } from './prisma-cli';
import type { Engine } from './schema-text';
import { ENGINES, prismaPath, schemaText } from './schema-text';

async function migrationSql(engine: Engine, newSchema: string): Promise<string> {
  const oldSchema = prismaPath(engine, 'schema.prisma');
  const from = existsSync(oldSchema) ? ['--from-schema-datamodel', oldSchema] : ['--from-empty'];
  const args = ['migrate', 'diff', ...from, '--to-schema-datamodel', newSchema, '--script'];
  const sql = await prismaCli(engine, args, newSchema);
  // The public schema is always there, and a role that may not make schemas is refused even so.
  return `${sql.replace('-- CreateSchema\nCREATE SCHEMA IF NOT EXISTS "public";', '').trim()}\n`;
}

async function makeMigration(name: string): Promise<void> {
  const scratch = mkdtempSync(path.join(tmpdir(), 'schema-'));
  try {
    const made: { engine: Engine; sql: string }[] = [];
    for (const engine of ENGINES) {
      const newSchema = path.join(scratch, `${engine}.prisma`);
      writeFileSync(newSchema, schemaText(engine));
      made.push({ engine, sql: await migrationSql(engine, newSchema) });
    }
    if (made.every(({ sql }) => sql.includes('This is an empty migration'))) {
      for (const engine of ENGINES) writeFileSync(prismaPath(engine, 'schema.prisma'), schemaText(engine));
      console.log('The tables stay as they are: no migration is needed.');
      return;
    }
    const folder = `${nextNumber()}_${name}`;
    for (const { engine, sql } of made) {
      const dir = prismaPath(engine, 'migrations', folder);
      mkdirSync(dir, { recursive: true });
      writeFileSync(path.join(dir, 'migration.sql'), sql);
      writeFileSync(prismaPath(engine, 'schema.prisma'), schemaText(engine));
      console.log(path.join('prisma', engine, 'migrations', folder, 'migration.sql'));
    }
    console.log('Read both before you commit them: a migration that was released is never changed again.');
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

function nextNumber(): string {
  const numbers = ENGINES.flatMap((engine) => {
    const dir = prismaPath(engine, 'migrations');
    return existsSync(dir) ? readdirSync(dir).map((folder) => Number.parseInt(folder, 10)) : [];
  });
  return String(Math.max(0, ...numbers.filter(Number.isFinite)) + 1).padStart(4, '0');
}

const name = process.argv[2];
if (name === undefined || !/^[a-z0-9]+(_[a-z0-9]+)*$/.test(name)) {
  console.error('Give the migration a name of small letters, e.g.: npx tsx prisma/ops/make-migration.ts lot_prices');
  process.exit(1);
}
await makeMigration(name);
