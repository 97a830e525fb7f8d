import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { ICruiseResult } from 'dependency-cruiser';

/** What a browser must never be sent: server code, the database, and zod, which is 33 kB compressed. */
const SERVER_ONLY = /^prisma\/|^app\/_server\/|node_modules\/(server-only|zod|libsql|pg|@prisma\/[^/]+)\//;

const SOURCE = /\.(ts|tsx|mjs|js)$/;

/**
 * Chains of imports that lead from a component marked 'use client' to something that is for the server, one line
 * each. Imports of types only vanish at build and do not count; a file marked 'use server' is called, not sent.
 */
export function clientImportFaults(root: string, result: ICruiseResult): { clients: number; faults: string[] } {
  const imports = new Map(
    result.modules.map((module) => [
      module.source,
      module.dependencies
        .filter((dependency) => !dependency.dependencyTypes.includes('type-only'))
        .map((dependency) => dependency.resolved),
    ]),
  );
  const clients = [...imports.keys()].filter((file) => isMarked(root, file, 'use client'));
  const faults = new Set<string>();
  for (const client of clients) {
    const seen = new Set([client]);
    const waiting = [[client]];
    for (let chain = waiting.pop(); chain !== undefined; chain = waiting.pop()) {
      for (const target of imports.get(chain.at(-1) ?? client) ?? []) {
        if (seen.has(target)) continue;
        seen.add(target);
        if (isMarked(root, target, 'use server')) continue;
        if (SERVER_ONLY.test(target)) faults.add([...chain, target].join(' -> '));
        else waiting.push([...chain, target]);
      }
    }
  }
  return { clients: clients.length, faults: [...faults].sort() };
}

function isMarked(root: string, file: string, directive: string): boolean {
  if (!SOURCE.test(file) || file.includes('node_modules/')) return false;
  const start = readFileSync(path.join(root, file), 'utf8').replace(/^(\s|\/\/.*\n|\/\*[\s\S]*?\*\/)+/, '');
  return start.startsWith(`'${directive}'`) || start.startsWith(`"${directive}"`);
}
