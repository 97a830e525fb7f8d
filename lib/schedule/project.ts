import type { CompiledProblem } from '@/lib/schedule/compiled-problem';

/**
 * A problem without people: activities of fixed length that hold fixed amounts of constant resources, with lags
 * between their starts, to be over as soon as may be. The published benchmark sets are such problems, and so is a
 * shop's work that needs nobody. Arcs are lists per activity: `other[k]` and `lag[k]` for k from `first[j]` on.
 */
export interface Project {
  readonly count: number;
  readonly duration: Int32Array;
  readonly resourceCount: number;
  readonly capacity: Int32Array;
  /** demand[j * resourceCount + k]. */
  readonly demand: Int32Array;
  /** start[j] >= start[other] + lag; lags may be negative. */
  readonly into: Arcs;
  /** start[other] >= start[j] + lag. */
  readonly outOf: Arcs;
  /** Whether a lag is shorter than the activity it starts from, or negative. */
  readonly hasGeneralLags: boolean;
}

export interface Arcs {
  readonly first: Int32Array;
  readonly other: Int32Array;
  readonly lag: Int32Array;
}

export interface Arc {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
}

/**
 * The project that a problem amounts to; null where it needs people, calendars, cures that depend on the hour, fixed
 * tasks or due dates, or asks for more than there is of a resource.
 */
export function projectOf(compiled: CompiledProblem): Project | null {
  const { problem, taskCount: count } = compiled;
  if (problem.batches.some((batch) => batch.dueMinute !== null)) return null;
  if (problem.resources.some((resource) => resource.changes.length > 0)) return null;
  const duration = new Int32Array(count);
  const resourceCount = problem.resources.length;
  const demand = new Int32Array(count * resourceCount);
  for (let j = 0; j < count; j++) {
    const ready = compiled.readyAfter[j];
    const isPlain = compiled.attended[j] === 0 && compiled.fixed[j] === 0 && compiled.release[j] === problem.nowMinute;
    if (!isPlain || ready === undefined || ready.table !== null) return null;
    duration[j] = ready.minutes;
    for (const { resource, amount, until } of compiled.holds[j] ?? []) {
      if (amount === 0) continue;
      if (until.table !== null || until.minutes !== ready.minutes) return null;
      const index = j * resourceCount + resource;
      demand[index] = (demand[index] ?? 0) + amount;
      if ((demand[index] ?? 0) > (problem.resources[resource]?.capacity ?? 0)) return null;
    }
  }
  const arcs: Arc[] = [];
  for (const links of compiled.linksOut) {
    for (const { isLeast, from, to, lag, remedyMinutes } of links) {
      if (lag.table !== null || remedyMinutes >= 0) return null;
      arcs.push(isLeast ? { from, to, lag: lag.minutes } : { from: to, to: from, lag: -lag.minutes });
    }
  }
  const capacity = Int32Array.from(problem.resources, (resource) => resource.capacity);
  return projectFrom(duration, capacity, demand, arcs);
}

/** A project of its parts; `demand` as in Project. */
export function projectFrom(
  duration: Int32Array,
  capacity: Int32Array,
  demand: Int32Array,
  arcs: readonly Arc[],
): Project {
  const count = duration.length;
  return {
    count,
    duration,
    resourceCount: capacity.length,
    capacity,
    demand,
    into: listed(
      count,
      arcs.map(({ from, to, lag }) => ({ at: to, other: from, lag })),
    ),
    outOf: listed(
      count,
      arcs.map(({ from, to, lag }) => ({ at: from, other: to, lag })),
    ),
    hasGeneralLags: arcs.some(({ from, lag }) => lag < (duration[from] ?? 0)),
  };
}

/** The same project with time running backwards: a start there is a finish here, counted from the end. */
export function reversedProject(project: Project): Project {
  const { duration, capacity, demand, count, outOf } = project;
  const arcs: Arc[] = [];
  for (let j = 0; j < count; j++) {
    for (let k = outOf.first[j] ?? 0; k < (outOf.first[j + 1] ?? 0); k++) {
      const to = outOf.other[k] ?? 0;
      const lag = (duration[to] ?? 0) + (outOf.lag[k] ?? 0) - (duration[j] ?? 0);
      arcs.push({ from: to, to: j, lag });
    }
  }
  return projectFrom(duration, capacity, demand, arcs);
}

function listed(count: number, arcs: readonly { at: number; other: number; lag: number }[]): Arcs {
  const first = new Int32Array(count + 1);
  for (const { at } of arcs) first[at + 1] = (first[at + 1] ?? 0) + 1;
  for (let j = 0; j < count; j++) first[j + 1] = (first[j + 1] ?? 0) + (first[j] ?? 0);
  const next = first.slice();
  const other = new Int32Array(arcs.length);
  const lag = new Int32Array(arcs.length);
  for (const arc of arcs) {
    const k = next[arc.at] ?? 0;
    next[arc.at] = k + 1;
    other[k] = arc.other;
    lag[k] = arc.lag;
  }
  return { first, other, lag };
}
