import { smallness } from '@/lib/schedule/order-breeding';
import type { Project } from '@/lib/schedule/project';

/** How much less the way to the end counts in a small project, whose first orders would else be too much alike. Chosen. */
const LESS_PULL = 0.5;

/** Orders of a project's activities to begin a search from. */
export class OrderSampling {
  readonly #project: Project;
  /** From each start to the end of everything, at the least. */
  readonly #tail: Float64Array;
  readonly #random: () => number;
  /** The power of the way to the end that chances go by. */
  readonly #pull: number;
  #isFirst = true;

  constructor(project: Project, tail: Float64Array, random: () => number) {
    this.#project = project;
    this.#tail = tail;
    this.#random = random;
    this.#pull = 1 - LESS_PULL * smallness(project);
  }

  /** One more: what has a longer way to the end tends to come first; the first order goes by that alone. */
  next(): Int32Array {
    const { count, into, outOf } = this.#project;
    const waits = new Int32Array(count);
    const ready: number[] = [];
    for (let j = 0; j < count; j++) {
      waits[j] = (into.first[j + 1] ?? 0) - (into.first[j] ?? 0);
      if (waits[j] === 0) ready.push(j);
    }
    const order = new Int32Array(count);
    for (let i = 0; i < count; i++) {
      const pick = this.#isFirst ? this.#longest(ready) : this.#drawn(ready);
      const j = ready[pick] ?? 0;
      ready[pick] = ready[ready.length - 1] ?? 0;
      ready.pop();
      order[i] = j;
      for (let k = outOf.first[j] ?? 0; k < (outOf.first[j + 1] ?? 0); k++) {
        const to = outOf.other[k] ?? 0;
        waits[to] = (waits[to] ?? 0) - 1;
        if (waits[to] === 0) ready.push(to);
      }
    }
    this.#isFirst = false;
    return order;
  }

  #longest(ready: readonly number[]): number {
    let pick = 0;
    for (const [r, j] of ready.entries()) if ((this.#tail[j] ?? 0) > (this.#tail[ready[pick] ?? 0] ?? 0)) pick = r;
    return pick;
  }

  #drawn(ready: readonly number[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (const j of ready) least = Math.min(least, this.#tail[j] ?? 0);
    const chances = ready.map((j) => ((this.#tail[j] ?? 0) - least + 1) ** this.#pull);
    let dice = this.#random() * chances.reduce((sum, chance) => sum + chance, 0);
    for (const [r, chance] of chances.entries()) {
      dice -= chance;
      if (dice <= 0) return r;
    }
    return ready.length - 1;
  }
}
