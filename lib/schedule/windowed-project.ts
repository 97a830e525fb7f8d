import type { Project } from '@/lib/schedule/project';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** Stands for "no path" in the network of lags; far enough from overflow when two are added. */
const NO_PATH = -0x1fffffff;

/** What is known about a project with greatest lags. */
export type WindowedAnswer = 'planned' | 'infeasible' | 'not-found';

/**
 * A project with lags that may be negative, so that they are greatest lags as well: feasibility itself is hard.
 * Branches over the starts from the temporal network: the earliest clash over a resource is mended by making one of
 * the clashing activities wait for another (an arc more), the network is closed anew, and where no arc helps the
 * search steps back. Depth first with restarts of other tastes; one node in which all activities have their earliest
 * starts counts as one schedule generated. Small projects are searched to the end, which proves infeasibility.
 *
 * Source: branching on delaying modes of minimal forbidden sets (De Reyck and Herroelen 1998), here on single arcs.
 */
export class WindowedProjectSearch {
  schedules = 0;
  /** Starts of the best plan; null while none is found. */
  best: Int32Array | null = null;
  bestEnd = Number.MAX_SAFE_INTEGER;
  readonly lowerBound: number;
  #isExhausted = false;
  readonly #project: Project;
  readonly #seed: number;
  readonly #root: Int32Array | null;
  readonly #count: number;
  /** Pairs that ask for more of a resource than there is, so that they never run together. */
  readonly #apart: readonly (readonly [number, number])[];
  #round = 0;
  #stack: Node[] = [];
  #nodesLeft = 0;
  #random: () => number;

  constructor(project: Project, seed: number) {
    this.#project = project;
    this.#seed = seed;
    this.#count = project.count + 1;
    this.#random = seededRandom(seed);
    this.#apart = pairsApart(project);
    const closed = this.#closedNetwork();
    this.#root = closed !== null && this.#propagate(closed) ? closed : null;
    const starts = this.#root === null ? null : this.#starts(this.#root);
    this.lowerBound = starts === null ? 0 : Math.max(this.#endOf(starts), workBound(project));
    this.#restart();
  }

  get answer(): WindowedAnswer {
    if (this.best !== null) return 'planned';
    return this.#root === null || this.#isExhausted ? 'infeasible' : 'not-found';
  }

  /** No more to be found: proved best, or proved infeasible. */
  get isDone(): boolean {
    return this.#root === null || this.#isExhausted || this.bestEnd <= this.lowerBound;
  }

  /** Looks at up to `schedules` more nodes. */
  step(schedules: number): void {
    const until = this.schedules + schedules;
    while (this.schedules < until && !this.isDone) {
      if (this.#nodesLeft-- <= 0) this.#restart();
      const node = this.#stack.pop();
      if (node === undefined) {
        this.#isExhausted = true;
        return;
      }
      this.schedules++;
      this.#visit(node);
    }
  }

  #restart(): void {
    this.#round++;
    this.#random = seededRandom(this.#seed + this.#round);
    this.#nodesLeft = Math.floor(200 * 1.3 ** this.#round);
    this.#stack = this.#root === null ? [] : [{ network: this.#root.slice() }];
  }

  #visit({ network }: Node): void {
    const starts = this.#starts(network);
    const end = this.#endOf(starts);
    if (end >= this.bestEnd) return;
    if (this.best !== null && !this.#propagate(network)) return;
    const clash = this.#firstClash(starts);
    if (clash === null) {
      this.best = starts;
      this.bestEnd = end;
      return;
    }
    const children = this.#waits(network, starts, clash);
    const tried: Wait[] = [];
    const nodes: Node[] = [];
    for (const { wait, child } of children) {
      // What was tried before it is ruled out here, so that nothing is looked at twice.
      const isLeft = tried.every(({ first, second }) =>
        this.#addArc(child, second, first, 1 - (this.#project.duration[first] ?? 0)),
      );
      tried.push(wait);
      if (isLeft && this.#propagate(child)) nodes.push({ network: child });
    }
    for (const node of nodes.reverse()) this.#stack.push(node);
  }

  /** The ways to mend a clash, the one that delays least first. */
  #waits(network: Int32Array, starts: Int32Array, clash: readonly number[]) {
    const ways: { wait: Wait; child: Int32Array; cost: number }[] = [];
    const end = this.#endOf(starts);
    for (const first of clash) {
      for (const second of clash) {
        if (first === second) continue;
        const child = network.slice();
        if (!this.#addArc(child, first, second, this.#project.duration[first] ?? 0)) continue;
        const later = this.#starts(child);
        if (this.#endOf(later) >= this.bestEnd) continue;
        let sum = 0;
        for (let j = 0; j < this.#project.count; j++) sum += (later[j] ?? 0) - (starts[j] ?? 0);
        const noise = this.#round === 1 ? 1 : 0.5 + this.#random();
        ways.push({ wait: { first, second }, child, cost: (sum + 3 * (this.#endOf(later) - end)) * noise });
      }
    }
    return ways.sort((x, y) => x.cost - y.cost);
  }

  /** Ends before the best, and of two that cannot run together the order that is left; false: nothing is left. */
  #propagate(path: Int32Array): boolean {
    const n = this.#count;
    const { count, duration } = this.#project;
    if (this.best !== null) {
      for (let j = 0; j < count; j++) {
        if (!this.#addArc(path, j, count, (duration[j] ?? 0) - this.bestEnd + 1)) return false;
      }
    }
    for (let isChanged = true; isChanged; ) {
      isChanged = false;
      for (const [i, j] of this.#apart) {
        const iFirst = path[i * n + j] ?? NO_PATH;
        const jFirst = path[j * n + i] ?? NO_PATH;
        const lengthI = duration[i] ?? 0;
        const lengthJ = duration[j] ?? 0;
        if (iFirst >= lengthI || jFirst >= lengthJ) continue;
        const mustI = iFirst > -lengthJ;
        const mustJ = jFirst > -lengthI;
        if (mustI && !this.#addArc(path, i, j, lengthI)) return false;
        if (mustJ && !this.#addArc(path, j, i, lengthJ)) return false;
        if (mustI || mustJ) isChanged = true;
      }
    }
    return true;
  }

  /** Activities that run together where a resource is first asked for too much: as few of them as still clash. */
  #firstClash(starts: Int32Array): readonly number[] | null {
    const { count, duration, demand, capacity, resourceCount } = this.#project;
    const byStart = Array.from({ length: count }, (_, j) => j).sort((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0));
    for (const j of byStart) {
      const at = starts[j] ?? 0;
      for (let k = 0; k < resourceCount; k++) {
        const need = (i: number) => demand[i * resourceCount + k] ?? 0;
        if (need(j) === 0) continue;
        const running = byStart.filter((i) => {
          const start = starts[i] ?? 0;
          return need(i) > 0 && start <= at && start + (duration[i] ?? 0) > at;
        });
        let held = running.reduce((sum, i) => sum + need(i), 0);
        if (held <= (capacity[k] ?? 0)) continue;
        const fewest: number[] = [];
        for (const i of running.sort((a, b) => need(a) - need(b))) {
          if (held - need(i) > (capacity[k] ?? 0)) held -= need(i);
          else fewest.push(i);
        }
        return fewest;
      }
    }
    return null;
  }

  /** Longest paths between all starts; the last row is the beginning of everything. null: a circle that cannot be. */
  #closedNetwork(): Int32Array | null {
    const n = this.#count;
    const path = new Int32Array(n * n).fill(NO_PATH);
    const { into, count } = this.#project;
    for (let j = 0; j < n; j++) path[j * n + j] = 0;
    for (let j = 0; j < count; j++) {
      path[count * n + j] = 0;
      for (let k = into.first[j] ?? 0; k < (into.first[j + 1] ?? 0); k++) {
        const cell = (into.other[k] ?? 0) * n + j;
        path[cell] = Math.max(path[cell] ?? NO_PATH, into.lag[k] ?? 0);
      }
    }
    for (let k = 0; k < n; k++) {
      for (let i = 0; i < n; i++) {
        const first = path[i * n + k] ?? NO_PATH;
        if (first === NO_PATH) continue;
        for (let j = 0; j < n; j++) {
          const second = path[k * n + j] ?? NO_PATH;
          if (second !== NO_PATH && first + second > (path[i * n + j] ?? NO_PATH)) path[i * n + j] = first + second;
        }
      }
    }
    for (let j = 0; j < n; j++) if ((path[j * n + j] ?? 0) > 0) return null;
    return path;
  }

  /** Adds an arc to a closed network and closes it anew; false where that makes a circle that cannot be. */
  #addArc(path: Int32Array, from: number, to: number, lag: number): boolean {
    const n = this.#count;
    if ((path[from * n + to] ?? NO_PATH) >= lag) return true;
    const back = path[to * n + from] ?? NO_PATH;
    if (back !== NO_PATH && back + lag > 0) return false;
    for (let i = 0; i < n; i++) {
      const first = path[i * n + from] ?? NO_PATH;
      if (first === NO_PATH || first + lag <= (path[i * n + to] ?? NO_PATH)) continue;
      for (let j = 0; j < n; j++) {
        const second = path[to * n + j] ?? NO_PATH;
        const length = first + lag + second;
        if (second !== NO_PATH && length > (path[i * n + j] ?? NO_PATH)) path[i * n + j] = length;
      }
    }
    return true;
  }

  #starts(network: Int32Array): Int32Array {
    const n = this.#count;
    return network.slice((n - 1) * n, (n - 1) * n + this.#project.count);
  }

  #endOf(starts: Int32Array): number {
    let end = 0;
    for (let j = 0; j < this.#project.count; j++) {
      end = Math.max(end, (starts[j] ?? 0) + (this.#project.duration[j] ?? 0));
    }
    return end;
  }
}

/** Of two that clash, `second` begins when `first` is over. */
interface Wait {
  readonly first: number;
  readonly second: number;
}

interface Node {
  readonly network: Int32Array;
}

function pairsApart({ count, duration, demand, capacity, resourceCount }: Project): [number, number][] {
  const pairs: [number, number][] = [];
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if ((duration[i] ?? 0) === 0 || (duration[j] ?? 0) === 0) continue;
      for (let k = 0; k < resourceCount; k++) {
        const both = (demand[i * resourceCount + k] ?? 0) + (demand[j * resourceCount + k] ?? 0);
        if (both <= (capacity[k] ?? 0)) continue;
        pairs.push([i, j]);
        break;
      }
    }
  }
  return pairs;
}

/** No project is over before the busiest resource has done all work at full capacity. */
export function workBound({ count, resourceCount, demand, duration, capacity }: Project): number {
  let bound = 0;
  for (let k = 0; k < resourceCount; k++) {
    let work = 0;
    for (let j = 0; j < count; j++) work += (demand[j * resourceCount + k] ?? 0) * (duration[j] ?? 0);
    if (work > 0) bound = Math.max(bound, Math.ceil(work / Math.max(1, capacity[k] ?? 1)));
  }
  return bound;
}
