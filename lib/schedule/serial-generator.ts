import type { Project } from '@/lib/schedule/project';

/** Serial schedule generation for a project: each activity of a list in turn as early as possible. */
export class SerialGenerator {
  readonly start: Int32Array;
  private readonly used: Int32Array;
  private readonly needs: readonly Int32Array[];
  private horizon = 0;

  /** `length`: no schedule takes longer (the sum of all durations and lags does). */
  constructor(
    private readonly project: Project,
    readonly length: number,
  ) {
    this.start = new Int32Array(project.count);
    this.used = new Int32Array((length + 1) * project.resourceCount);
    const { resourceCount, demand } = project;
    this.needs = Array.from({ length: project.count }, (_, j) =>
      Int32Array.from(
        Array.from({ length: resourceCount }, (_x, k) => k).filter((k) => (demand[j * resourceCount + k] ?? 0) > 0),
      ),
    );
  }

  /** Starts of a list with each activity after those it follows; answers when the last one is over. */
  generate(list: Int32Array): number {
    const { duration, into, capacity, demand, resourceCount } = this.project;
    const { start, used } = this;
    used.fill(0, 0, this.horizon * resourceCount);
    let end = 0;
    for (let i = 0; i < list.length; i++) {
      const j = list[i] ?? 0;
      let from = 0;
      const last = into.first[j + 1] ?? 0;
      for (let k = into.first[j] ?? 0; k < last; k++) {
        const earliest = (start[into.other[k] ?? 0] ?? 0) + (into.lag[k] ?? 0);
        if (earliest > from) from = earliest;
      }
      const length = duration[j] ?? 0;
      const needs = this.needs[j] ?? NOTHING;
      const base = j * resourceCount;
      if (length > 0 && needs.length > 0) {
        // Backwards: the last minute at which too much is held says where to try next.
        for (let t = from + length - 1; t >= from; t--) {
          const row = t * resourceCount;
          for (let n = 0; n < needs.length; n++) {
            const k = needs[n] ?? 0;
            if ((used[row + k] ?? 0) + (demand[base + k] ?? 0) > (capacity[k] ?? 0)) {
              from = t + 1;
              t = from + length;
              break;
            }
          }
        }
        const stop = (from + length) * resourceCount;
        for (let n = 0; n < needs.length; n++) {
          const k = needs[n] ?? 0;
          const amount = demand[base + k] ?? 0;
          for (let cell = from * resourceCount + k; cell < stop; cell += resourceCount) {
            used[cell] = (used[cell] ?? 0) + amount;
          }
        }
      }
      start[j] = from;
      if (from + length > end) end = from + length;
    }
    this.horizon = end;
    return end;
  }
}

const NOTHING = new Int32Array(0);

/** The activities with each one after those it follows by its arcs. Needs lags that run forward. */
export function topologicalOrder(project: Project): Int32Array {
  const { count, into, outOf } = project;
  const waits = new Int32Array(count);
  for (let j = 0; j < count; j++) waits[j] = (into.first[j + 1] ?? 0) - (into.first[j] ?? 0);
  const order = new Int32Array(count);
  let filled = 0;
  for (let j = 0; j < count; j++) if (waits[j] === 0) order[filled++] = j;
  for (let next = 0; next < filled; next++) {
    const j = order[next] ?? 0;
    for (let k = outOf.first[j] ?? 0; k < (outOf.first[j + 1] ?? 0); k++) {
      const to = outOf.other[k] ?? 0;
      waits[to] = (waits[to] ?? 0) - 1;
      if (waits[to] === 0) order[filled++] = to;
    }
  }
  return order;
}

/** All activities by a key of each, 0 or more; those with the same key in the order of `route`. */
export function sortedBy(key: Int32Array, route: Int32Array): Int32Array {
  let most = 0;
  for (const value of key) most = Math.max(most, value);
  const next = new Int32Array(most + 2);
  for (const value of key) next[value + 1] = (next[value + 1] ?? 0) + 1;
  for (let value = 1; value <= most; value++) next[value] = (next[value] ?? 0) + (next[value - 1] ?? 0);
  const order = new Int32Array(route.length);
  for (const j of route) {
    const value = key[j] ?? 0;
    const at = next[value] ?? 0;
    next[value] = at + 1;
    order[at] = j;
  }
  return order;
}
