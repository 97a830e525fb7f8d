import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Link, PlanningProblem, Task } from '@/lib/schedule/planning-problem';

/** Published instances stay beside the repository: they are their authors'. */
const FOLDER = path.join(process.cwd(), '..', 'shared', 'reference', 'schedule-data');

export interface PublishedInstance {
  readonly set: string;
  readonly name: string;
  /** Best proven bound and best known makespan; null for infeasible ones. */
  readonly lowerBound: number | null;
  readonly bestKnown: number | null;
  readonly isInfeasible: boolean;
  readonly problem: PlanningProblem;
}

/** The instances of the given sets with their best known values; empty where the data are absent. */
export function publishedInstances(...sets: readonly string[]): readonly PublishedInstance[] {
  const file = path.join(FOLDER, 'bounds.csv');
  if (!existsSync(file)) return [];
  const rows = readFileSync(file, 'utf8').trim().split(/\r?\n/).slice(1);
  return rows.flatMap((row) => {
    const [set = '', name = '', , lower = '', upper = '', status = ''] = row.split(',');
    if (!sets.includes(set)) return [];
    const text = readFileSync(path.join(FOLDER, name), 'utf8');
    const problem = name.toLowerCase().endsWith('.sm') ? fromPsplib(text) : fromProgenMax(text);
    const number = (value: string) => (value === '' ? null : Number(value));
    const isInfeasible = status === 'infeasible';
    return [{ set, name, lowerBound: number(lower), bestKnown: number(upper), isInfeasible, problem }];
  });
}

/** PSPLIB single mode (Kolisch and Sprecher 1996). */
function fromPsplib(text: string): PlanningProblem {
  const lines = text.split(/\r?\n/);
  const after = (heading: string, skip: number) => lines.findIndex((line) => line.startsWith(heading)) + skip;
  const count = Number(lines[after('jobs', 0)]?.split(':')[1]);
  const rows = (from: number, many: number) => lines.slice(from, from + many).map(numbers);
  const requests = rows(after('REQUESTS', 3), count);
  const capacity = numbers(lines[after('RESOURCEAVAIL', 2)] ?? '');
  const durations = requests.map((row) => row[2] ?? 0);
  const lags = rows(after('PRECEDENCE', 2), count).flatMap((row, from) =>
    row.slice(3).map((to) => ({ from, to: to - 1, lag: durations[from] ?? 0 })),
  );
  return problemOf(
    durations,
    requests.map((row) => row.slice(3)),
    capacity,
    lags,
  );
}

/** ProGen/max: lags between starts, negative ones are greatest lags (Schwindt; Franck, Neumann and Schwindt). */
function fromProgenMax(text: string): PlanningProblem {
  const rows = text
    .trim()
    .split(/\r?\n/)
    .map((line) => numbers(line.replace(/[[\]]/g, ' ')));
  const count = (rows[0]?.[0] ?? 0) + 2;
  const requests = rows.slice(1 + count, 1 + 2 * count);
  const lags = rows.slice(1, 1 + count).flatMap((row, from) => {
    const many = row[2] ?? 0;
    return row.slice(3, 3 + many).map((to, k) => ({ from, to, lag: row[3 + many + k] ?? 0 }));
  });
  return problemOf(
    requests.map((row) => row[2] ?? 0),
    requests.map((row) => row.slice(3)),
    rows[1 + 2 * count] ?? [],
    lags,
  );
}

function numbers(line: string): number[] {
  return line.trim().split(/\s+/).map(Number);
}

function problemOf(
  durations: readonly number[],
  demands: readonly (readonly number[])[],
  capacity: readonly number[],
  lags: readonly { readonly from: number; readonly to: number; readonly lag: number }[],
): PlanningProblem {
  const tasks = durations.map((minutes, j): Task => {
    const length = { kind: 'fixed', minutes } as const;
    const holds = capacity.flatMap((_, k) => {
      const amount = demands[j]?.[k] ?? 0;
      return amount === 0 ? [] : [{ resourceId: `R${k}`, amount, until: length }];
    });
    return {
      id: `${j}`,
      batchId: 'project',
      name: `${j}`,
      attendedMinutes: 0,
      by: { kind: 'anyone' },
      leastPieceMinutes: null,
      setUp: null,
      releaseMinute: 0,
      holds,
      readyAfter: length,
      state: { kind: 'open' },
    };
  });
  const links = lags.map(({ from, to, lag }, i): Link => {
    const ends = { id: `${i}`, from: 'start', to: 'start' } as const;
    return lag >= 0
      ? { ...ends, kind: 'least', fromTaskId: `${from}`, toTaskId: `${to}`, lag: { kind: 'fixed', minutes: lag } }
      : {
          ...ends,
          kind: 'greatest',
          fromTaskId: `${to}`,
          toTaskId: `${from}`,
          lag: { kind: 'fixed', minutes: -lag },
          remedy: null,
        };
  });
  return {
    epochAt: 0,
    nowMinute: 0,
    horizonMinute: durations.reduce((a, b) => a + b, 0) + lags.reduce((sum, { lag }) => sum + Math.abs(lag), 0),
    batches: [{ id: 'project', name: 'project', releaseMinute: 0, dueMinute: null, weight: 1 }],
    tasks,
    links,
    people: [],
    resources: capacity.map((most, k) => ({ id: `R${k}`, name: `R${k}`, capacity: most, changes: [] })),
    lagTables: [],
  };
}
