import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** The two databases the app runs on, as their folders are called. */
export const ENGINES = ['sqlite', 'postgres'] as const;
export type Engine = (typeof ENGINES)[number];

const PROVIDERS: { readonly [E in Engine]: string } = { sqlite: 'sqlite', postgres: 'postgresql' };

/** The project's folder: where package.json is. Commands are always run from there, by npm. */
export const ROOT = process.cwd();

const MODELS_DIR = path.join(ROOT, 'prisma', 'models');

/** Path of a file or folder inside prisma/. */
export function prismaPath(...parts: string[]): string {
  return path.join(ROOT, 'prisma', ...parts);
}

/** Prisma schema of one engine: its head and the models of prisma/models, which are the same for both. */
export function schemaText(engine: Engine): string {
  const models = readdirSync(MODELS_DIR)
    .filter((file) => file.endsWith('.prisma'))
    .sort()
    .map((file) => readFileSync(path.join(MODELS_DIR, file), 'utf8').trim());
  return `// Made from prisma/models by prisma/ops/make-migration.ts. Do not edit.
generator client {
  provider     = "prisma-client"
  output       = "../generated/${engine}"
  engineType   = "client"
  runtime      = "nodejs"
  moduleFormat = "esm"
}

datasource db {
  provider = "${PROVIDERS[engine]}"
  url      = env("DATABASE_URL")
}

${models.join('\n\n')}
`;
}
