import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { SOLVER_FOLDER, solverWorks, startSolver } from '@/app/_plan/constraint-solver';
import { harderWords } from '@/app/_plan/harder-words';
import { tryHarder } from '@/app/_plan/try-harder';
import { firstPlan } from '@/lib/schedule/first-plan';
import { shopInstance } from '../lib/schedule/shop-instance';

/** Long, whatever else the computer does. */
const WITHIN_MS = 120_000;

const QUEENS = `int: n = 60;
array[1..n] of var 1..n: q;
constraint forall(i, j in 1..n where i < j)(q[i] != q[j] /\\ q[i] + i != q[j] + j /\\ q[i] - i != q[j] - j);
solve minimize sum(i in 1..n)(i * q[i]);
output [show(q[1])];
`;

it('the constraint solver is installed and answers its self-test', { timeout: WITHIN_MS }, async () => {
  expect(await solverWorks(SOLVER_FOLDER, WITHIN_MS)).toBe(true);
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
  const { end } = startSolver({ text: 'constraint;', withinMs: WITHIN_MS, tell: () => {} });
  expect(await end).toMatchObject({ kind: 'failed', message: expect.stringContaining('syntax error') });
});

it('trying harder without the solver says that it is not available, and keeps the plan', async () => {
  const problem = shopInstance(6, 1, 'overloaded', 1);
  const search = { problem, plan: firstPlan(problem), withinMs: 20_000, isCancelled: () => false };
  const told: unknown[] = [];
  const answer = await tryHarder({ ...search, tell: (plan) => told.push(plan), folder: '/nowhere' });
  expect(answer).toEqual({ kind: 'not-available' });
  expect(told).toEqual([]);
  expect(harderWords(answer)).toMatch(/^Trying harder is not available here: .* Everything else works without it\.$/);
});

it('trying harder ends when it is called off', async () => {
  const problem = shopInstance(6, 1, 'overloaded', 1);
  const search = { problem, plan: firstPlan(problem), withinMs: 600_000, isCancelled: () => true };
  const answer = await tryHarder({ ...search, tell: () => {} });
  expect(answer).toMatchObject({ kind: 'looked', isProved: false, limits: ['no-other-work-between'] });
});
