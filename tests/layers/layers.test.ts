import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { clientImportFaults } from './client-imports';
import { FORBIDDEN, RUNGS } from './layer-rules';
import { readModules, violationLines } from './read-modules';

const ROOT = process.cwd();

describe('the house', () => {
  it('imports only point down, without circles, and browsers are sent nothing of the server', async () => {
    const result = await readModules(ROOT, FORBIDDEN);
    const { clients, faults } = clientImportFaults(ROOT, result);
    console.log(`layers: ${result.summary.totalCruised} modules read, ${clients} client components followed`);
    expect(result.summary.totalCruised).toBeGreaterThan(100);
    expect(clients).toBeGreaterThan(0);
    expect(violationLines(result)).toEqual([]);
    expect(faults).toEqual([]);
  });

  it('has no folder in lib that stands on no rung', () => {
    const known: readonly string[] = RUNGS.flat();
    const folders = readdirSync(path.join(ROOT, 'lib'));
    expect(folders.filter((folder) => !known.includes(folder))).toEqual([]);
  });
});

describe('the check itself', () => {
  const made: string[] = [];
  afterEach(() => {
    for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
  });

  /** A small project with these files, by path. */
  function plant(files: Readonly<Record<string, string>>): string {
    const root = mkdtempSync(path.join(tmpdir(), 'planted-'));
    made.push(root);
    for (const [file, text] of Object.entries(files)) {
      mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
      writeFileSync(path.join(root, file), text);
    }
    return root;
  }

  it('fails when it finds nothing to read', async () => {
    const root = plant({ 'lib/units/readme.txt': 'no module' });
    await expect(readModules(root, FORBIDDEN)).rejects.toThrow('no module was read');
  });

  it.each([
    ['a lower rung that imports a higher one', 'lib/units/a.ts', '../batch/b', 'lib/units imports lower rungs only'],
    ['a neighbour on the same rung', 'lib/cure/a.ts', '../mixing/b', 'lib/cure imports lower rungs only'],
    ['lib that imports the database', 'lib/batch/a.ts', '../../prisma/client', 'lib knows neither prisma nor app'],
    ['lib that reads files', 'lib/batch/a.ts', 'node:fs', 'lib touches neither files nor the system'],
    ['the database layer that imports a screen', 'prisma/data/a.ts', '../../app/b', 'prisma does not know app'],
  ])('catches %s', async (_what, from, to, rule) => {
    const files: Record<string, string> = { [from]: `import { b } from '${to}';\nexport const a = b;\n` };
    if (to.startsWith('.')) files[`${path.join(path.dirname(from), to)}.ts`] = 'export const b = 1;\n';
    const lines = violationLines(await readModules(plant(files), FORBIDDEN));
    expect(lines.map((line) => line.split(':')[0])).toContain(rule);
  });

  it('catches an import of a type that points up', async () => {
    const root = plant({
      'lib/units/a.ts': "import type { B } from '../batch/b';\nexport type A = B;\n",
      'lib/batch/b.ts': 'export type B = number;\n',
    });
    expect(violationLines(await readModules(root, FORBIDDEN))).toEqual([
      'lib/units imports lower rungs only: lib/units/a.ts -> lib/batch/b.ts',
    ]);
  });

  it('catches a circle', async () => {
    const root = plant({
      'lib/units/a.ts': "import { b } from './b';\nexport const a = () => b;\n",
      'lib/units/b.ts': "import { a } from './a';\nexport const b = () => a;\n",
    });
    expect(violationLines(await readModules(root, FORBIDDEN)).join()).toContain('no circles');
  });

  it('catches a client component that reaches the database through another file', async () => {
    const root = plant({
      'app/button.tsx': "'use client';\nimport { names } from './names';\nexport const Button = () => names;\n",
      'app/names.ts': "import { db } from '../prisma/client';\nexport const names = db;\n",
      'prisma/client.ts': 'export const db = 1;\n',
    });
    const { clients, faults } = clientImportFaults(root, await readModules(root, FORBIDDEN));
    expect(clients).toBe(1);
    expect(faults).toEqual(['app/button.tsx -> app/names.ts -> prisma/client.ts']);
  });

  it('lets a client component call the server through a file marked for it', async () => {
    const root = plant({
      'app/button.tsx': "'use client';\nimport { save } from './actions';\nexport const Button = () => save;\n",
      'app/actions.ts': "'use server';\nimport { db } from '../prisma/client';\nexport const save = async () => db;\n",
      'prisma/client.ts': 'export const db = 1;\n',
    });
    expect(clientImportFaults(root, await readModules(root, FORBIDDEN)).faults).toEqual([]);
  });
});
