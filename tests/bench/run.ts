/**
 * `npm run bench [word]`: runs the timings in this folder, one after the other, each in a process of its own so that
 * none is warmed up by another. With a word: only the files whose name contains it.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import path from 'node:path';
import { buildIfNeeded } from '@/prisma/ops/app-build';
import { generateClients } from '@/prisma/ops/generate';

const FOLDER = path.join('tests', 'bench');

async function runBench(file: string): Promise<boolean> {
  console.log(`\n=== ${file}`);
  const script = `import(${JSON.stringify(`./${FOLDER}/${file}`)}).then((bench) => bench.run()).then((ok) => { if (ok === false) process.exitCode = 1; })`;
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
    stdio: 'inherit',
    env: { ...process.env, NODE_ENV: 'production' },
  });
  const [code] = await once(child, 'exit');
  return code === 0;
}

const word = process.argv[2] ?? '';
if (word === '')
  await buildIfNeeded(console.log); // for those that ask the served app
else await generateClients();
const files = readdirSync(FOLDER).filter((file) => file.endsWith('.bench.ts') && file.includes(word));
const [processor] = cpus();
console.log(
  `Node ${process.versions.node}, ${cpus().length} x ${processor?.model ?? 'unknown processor'}, ${Math.round(totalmem() / 2 ** 30)} GiB`,
);
const failed: string[] = [];
for (const file of files) if (!(await runBench(file))) failed.push(file);
console.log(
  `\n${files.length - failed.length} of ${files.length} ran to their end${failed.map((file) => `, not ${file}`).join('')}`,
);
process.exitCode = failed.length > 0 || files.length === 0 ? 1 : 0;
