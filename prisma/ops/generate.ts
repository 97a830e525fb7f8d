/** `npm run generate`: makes the two database clients from prisma/models, when they are not there or are old. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { isMain } from './is-main';
import { prismaCli } from './prisma-cli';
import type { Engine } from './schema-text';
import { ENGINES, prismaPath, ROOT, schemaText } from './schema-text';

const GENERATED = prismaPath('generated');
const STAMP = path.join(GENERATED, 'stamp');

/** Makes both clients unless the ones there were made from this very schema. True when it had to. */
export async function generateClients(): Promise<boolean> {
  const wanted = fingerprint();
  if (isUpToDate(wanted)) return false;
  mkdirSync(GENERATED, { recursive: true });
  await Promise.all(ENGINES.map(generateClient));
  writeFileSync(STAMP, wanted);
  return true;
}

function fingerprint(): string {
  const hash = createHash('sha256');
  for (const engine of ENGINES) hash.update(schemaText(engine));
  hash.update(readFileSync(path.join(ROOT, 'node_modules', 'prisma', 'package.json')));
  return hash.digest('hex');
}

function isUpToDate(wanted: string): boolean {
  const clients = ENGINES.map((engine) => path.join(GENERATED, engine, 'client.ts'));
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted && clients.every((file) => existsSync(file));
}

/** Made beside its place and then moved in, so that whoever reads meanwhile never sees half a client. */
async function generateClient(engine: Engine): Promise<void> {
  const part = `${engine}.part-${process.pid}`;
  const schemaFile = path.join(GENERATED, `${part}.prisma`);
  const partDir = path.join(GENERATED, part);
  const oldDir = path.join(GENERATED, `${engine}.old-${process.pid}`);
  const finalDir = path.join(GENERATED, engine);
  try {
    writeFileSync(schemaFile, schemaText(engine).replace(`"../generated/${engine}"`, `"./${part}"`));
    await prismaCli(engine, ['generate', '--no-hints'], schemaFile);
    if (existsSync(finalDir)) renameSync(finalDir, oldDir);
    renameSync(partDir, finalDir);
  } finally {
    for (const leftover of [schemaFile, partDir, oldDir]) rmSync(leftover, { recursive: true, force: true });
  }
}

if (isMain(import.meta.url)) {
  const made = await generateClients();
  console.log(made ? 'Database clients made.' : 'Database clients are up to date.');
}
