import type { Project } from '@/lib/schedule/project';

/** Ways in which two orders of a project's activities make a third, and an order is shaken. Buffers are reused. */
export class OrderBreeding {
  readonly #project: Project;
  readonly #random: () => number;
  readonly #taken: Uint8Array;
  readonly #inPeak: Uint8Array;

  constructor(project: Project, random: () => number) {
    this.#project = project;
    this.#random = random;
    this.#taken = new Uint8Array(project.count);
    this.#inPeak = new Uint8Array(project.count);
  }

  /** The mother's head, then as many as lie between two places in the father's order, then the rest as the mother's. */
  twoPoint(mother: Int32Array, father: Int32Array): Int32Array {
    const n = mother.length;
    const one = this.#place(n);
    const other = this.#place(n);
    const low = Math.min(one, other);
    const high = Math.max(one, other);
    const taken = this.#taken.fill(0);
    const child = new Int32Array(n);
    let at = 0;
    const take = (j: number) => {
      if (taken[j] === 1) return;
      taken[j] = 1;
      child[at++] = j;
    };
    for (let i = 0; i < low; i++) take(mother[i] ?? 0);
    for (let i = 0; i < n && at <= high; i++) take(father[i] ?? 0);
    for (let i = 0; i < n; i++) take(mother[i] ?? 0);
    return child;
  }

  /**
   * Keeps what the mother does while her resources are fullest, and fills the places between as the father has them.
   * Source: peak crossover of Valls, Ballestin and Quintanilla 2008 (from memory), here by a random threshold.
   */
  keepPeaks(mother: Int32Array, starts: Int32Array, end: number, father: Int32Array): Int32Array {
    const { into } = this.#project;
    const n = mother.length;
    this.#markPeaks(starts, end);
    const inPeak = this.#inPeak;
    const taken = this.#taken.fill(0);
    const child = new Int32Array(n);
    let at = 0;
    const take = (j: number) => {
      if (taken[j] === 1) return;
      taken[j] = 1;
      for (let k = into.first[j] ?? 0; k < (into.first[j + 1] ?? 0); k++) take(into.other[k] ?? 0);
      child[at++] = j;
    };
    let next = 0;
    for (let i = 0; i < n; i++) {
      const j = mother[i] ?? 0;
      if (inPeak[j] === 1) take(j);
      else {
        while (next < n && (taken[father[next] ?? 0] === 1 || inPeak[father[next] ?? 0] === 1)) next++;
        if (next < n) take(father[next] ?? 0);
      }
    }
    for (let i = 0; i < n; i++) take(mother[i] ?? 0);
    return child;
  }

  /** Swaps neighbours that do not wait for each other, each pair with the same chance. */
  shake(order: Int32Array, chance: number): void {
    for (let i = 0; i + 1 < order.length; i++) {
      if (this.#random() >= chance) continue;
      const first = order[i] ?? 0;
      const second = order[i + 1] ?? 0;
      if (this.#follows(second, first)) continue;
      order[i] = second;
      order[i + 1] = first;
    }
  }

  #markPeaks(starts: Int32Array, end: number): void {
    const { count, demand, capacity, resourceCount, duration } = this.#project;
    const load = new Float64Array(end + 1);
    let sum = 0;
    for (let j = 0; j < count; j++) {
      let share = 0;
      for (let k = 0; k < resourceCount; k++) {
        share += (demand[j * resourceCount + k] ?? 0) / Math.max(1, capacity[k] ?? 1);
      }
      const start = starts[j] ?? 0;
      for (let t = start; t < start + (duration[j] ?? 0); t++) load[t] = (load[t] ?? 0) + share;
      sum += share * (duration[j] ?? 0);
    }
    const threshold = (sum / Math.max(1, end)) * (0.7 + 0.5 * this.#random());
    for (let j = 0; j < count; j++) {
      const middle = Math.min((starts[j] ?? 0) + ((duration[j] ?? 0) >> 1), end - 1);
      this.#inPeak[j] = (load[middle] ?? 0) >= threshold ? 1 : 0;
    }
  }

  #follows(second: number, first: number): boolean {
    const { outOf } = this.#project;
    for (let k = outOf.first[first] ?? 0; k < (outOf.first[first + 1] ?? 0); k++) {
      if (outOf.other[k] === second) return true;
    }
    return false;
  }

  #place(n: number): number {
    return Math.floor(this.#random() * n);
  }
}
