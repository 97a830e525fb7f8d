/**
 * The constraint solver Chuffed of the package `minizinc`, one thread for one search. It may be missing: whoever asks
 * for it is told so and goes on without.
 */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { solverMessageSchema } from '@/lib/contracts/solver-message';

/** How a search ended. */
export type SolverEnd =
  /** Everything was searched: the last solution is the best one, or there is none. */
  | { readonly kind: 'proved' }
  /** Time was up, or it was called off. */
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly message: string };

export interface SolverSearch {
  readonly end: Promise<SolverEnd>;
  /** Calls it off. */
  cancel(): void;
}

export interface SolverTask {
  /** In MiniZinc. */
  readonly text: string;
  readonly withinMs: number;
  /** Each better solution as the model prints it. */
  readonly tell: (printed: string) => void;
}

/** Beyond its own limit, which does not count its beginning, a search is ended after so long, in ms. Chosen. */
const GRACE_MS = 2_000;
/** Free search with the best solution's values tried first: measured best on published projects. */
const OPTIONS = ['-i', '--solver', 'chuffed', '-f', '--sbps'] as const;

/** Where the package's files are when it is installed beside the app. */
export const SOLVER_FOLDER = path.join(process.cwd(), 'node_modules', 'minizinc', 'dist');

/** Kept so that threads after the first need not compile it again. */
let compiled: Promise<WebAssembly.Module> | null = null;

/** Begins a search. Its end always comes, also without the package. */
export function startSolver(task: SolverTask, folder: string = SOLVER_FOLDER): SolverSearch {
  let finish: (end: SolverEnd) => void = () => {};
  let isOver = false;
  let worker: Worker | null = null;
  let deadline: NodeJS.Timeout | undefined;
  const ended = new Promise<SolverEnd>((resolve) => {
    finish = (end) => {
      if (isOver) return;
      isOver = true;
      clearTimeout(deadline);
      void worker?.terminate();
      resolve(end);
    };
  });
  const begin = async () => {
    if (!existsSync(path.join(folder, 'minizinc.wasm'))) return finish({ kind: 'failed', message: 'not installed' });
    compiled ??= readFile(path.join(folder, 'minizinc.wasm')).then((bytes) => WebAssembly.compile(bytes));
    await compiled;
    if (isOver) return;
    worker = new Worker(path.join(process.cwd(), 'app', '_plan', 'solver-thread.mjs'), { workerData: { folder } });
    worker.unref();
    worker.on('error', (error) => finish({ kind: 'failed', message: String(error) }));
    worker.on('exit', () => finish({ kind: 'failed', message: 'its thread ended' }));
    deadline = setTimeout(() => finish({ kind: 'stopped' }), task.withinMs + GRACE_MS);
    let isProved = false;
    let fault: string | null = null;
    worker.on('message', (raw: unknown) => {
      const message = solverMessageSchema.safeParse(raw).data;
      switch (message?.type) {
        case 'ready': {
          const args = [...OPTIONS, '--time-limit', String(task.withinMs), 'model.mzn'];
          worker?.postMessage({ jsonStream: true, files: { 'model.mzn': task.text }, args, outputFiles: [] });
          break;
        }
        case 'solution':
          if (!isOver) task.tell(message.output.default);
          break;
        case 'status':
          isProved = message.status === 'OPTIMAL_SOLUTION' || message.status === 'UNSATISFIABLE';
          break;
        case 'error':
          fault = message.message;
          break;
        case 'exit':
          if (fault !== null) finish({ kind: 'failed', message: fault });
          else finish({ kind: isProved ? 'proved' : 'stopped' });
          break;
        case undefined:
          break;
      }
    });
  };
  begin().catch((error: unknown) => {
    compiled = null;
    finish({ kind: 'failed', message: String(error) });
  });
  return { end: ended, cancel: () => finish({ kind: 'stopped' }) };
}

/** Two visits of one bench and a lag between two others: the least cost is 5, and it is proved. */
const SELF_TEST = `predicate chuffed_cumulative_vars(array[int] of var int: s, array[int] of var int: d, array[int] of var int: r, var int: b);
predicate int_lin_le_imp(array[int] of int: as, array[int] of var int: bs, int: c, var bool: r);
predicate int_eq_imp(var int: a, var int: b, var bool: r);
array[1..3] of int: known = [4, 2, 9];
var 0..9: a; var 0..9: b; var 1..3: k; var 0..9: e; var bool: y; var 0..1: n;
constraint chuffed_cumulative_vars([a, b], [2, 3], [1, 1], 1);
constraint array_int_element(k, known, e);
constraint bool2int(y, n);
constraint int_lin_le_imp([-1], [a], -3, y);
constraint int_eq_imp(k, 2, y);
constraint bool_clause([y], []);
constraint int_lin_le([1, -1], [e, a], 0);
var 0..99: cost;
constraint int_lin_eq([1, 1, 1, -1], [a, b, e, cost], 0);
solve :: int_search([a, b], input_order, indomain_min, complete) minimize cost;
output [show(cost)];
`;
/** a = 3 after b = 0, and the second entry of the list. */
const SELF_TEST_COST = '5';
/** Longest the test may take, in ms. Chosen: twenty times what it takes on a quiet computer. */
const SELF_TEST_MS = 20_000;

/** Folders whose solver has passed the test. */
const passed = new Set<string>();

/**
 * Whether the solver is there and answers rightly in time: tried by a small model whose answer is known, until it has
 * passed once.
 */
export async function solverWorks(folder: string = SOLVER_FOLDER, withinMs: number = SELF_TEST_MS): Promise<boolean> {
  if (passed.has(folder)) return true;
  let last = '';
  const tell = (printed: string) => {
    last = printed.trim();
  };
  const { kind } = await startSolver({ text: SELF_TEST, withinMs, tell }, folder).end;
  if (kind !== 'proved' || last !== SELF_TEST_COST) return false;
  passed.add(folder);
  return true;
}
