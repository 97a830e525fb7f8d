import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { solverWorks, startSolver } from '@/app/_plan/constraint-solver';

const QUEENS = `int: n = 60;
array[1..n] of var 1..n: q;
constraint forall(i, j in 1..n where i < j)(q[i] != q[j] /\\ q[i] + i != q[j] + j /\\ q[i] - i != q[j] - j);
solve minimize sum(i in 1..n)(i * q[i]);
output [show(q[1])];
`;

it('the constraint solver is installed and answers its self-test', async () => {
  expect(await solverWorks()).toBe(true);
});

it('a missing package, and a broken one, are told and nothing more', async () => {
  expect(await solverWorks('/nowhere')).toBe(false);
  const folder = mkdtempSync(path.join(tmpdir(), 'solver-'));
  for (const name of ['minizinc.wasm', 'minizinc.data', 'minizinc-worker.js']) {
    writeFileSync(path.join(folder, name), 'not what it should be');
  }
  expect(await solverWorks(folder)).toBe(false);
  rmSync(folder, { recursive: true });
});

it('a search that is called off ends at once; one that is over time ends by itself', async () => {
  const calledOff = startSolver({ text: QUEENS, withinMs: 60_000, tell: () => {} });
  calledOff.cancel();
  expect(await calledOff.end).toEqual({ kind: 'stopped' });
  const late = startSolver({ text: QUEENS, withinMs: 300, tell: () => {} });
  expect(await late.end).toEqual({ kind: 'stopped' });
});

it('a model that it cannot read is a failure with the reason', async () => {
  const { end } = startSolver({ text: 'constraint;', withinMs: 20_000, tell: () => {} });
  expect(await end).toMatchObject({ kind: 'failed', message: expect.stringContaining('syntax error') });
});
