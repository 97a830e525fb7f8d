import type { CompiledLink, CompiledProblem } from '@/lib/schedule/compiled-problem';

/** The links of each task sorted by what has to be done with them while it gets its place. */
export interface TaskLinks {
  /** Least lags into it. */
  readonly least: readonly (readonly CompiledLink[])[];
  /** Those of them that count to its finish. */
  readonly leastToFinish: readonly (readonly CompiledLink[])[];
  /** Greatest lags into it: its windows. */
  readonly windows: readonly (readonly CompiledLink[])[];
  /** Greatest lags without a remedy out of it: what has to follow at once. */
  readonly mustFollow: readonly (readonly CompiledLink[])[];
  /** Links out of it to tasks that may be placed before it: pinned ones, lags that run backwards, windows. */
  readonly backward: readonly (readonly CompiledLink[])[];
}

export function taskLinks({ linksIn, linksOut, fixed }: CompiledProblem): TaskLinks {
  const least = linksIn.map((links) => links.filter((link) => link.isLeast));
  return {
    least,
    leastToFinish: least.map((links) => links.filter((link) => link.toFinish)),
    windows: linksIn.map((links) => links.filter((link) => !link.isLeast)),
    mustFollow: linksOut.map((links) => links.filter((link) => !link.isLeast && link.remedyMinutes < 0)),
    backward: linksOut.map((links) =>
      links.filter(
        (link) => fixed[link.to] === 1 || !link.isLeast || (link.lag.table === null && link.lag.minutes < 0),
      ),
    ),
  };
}
