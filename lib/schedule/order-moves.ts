/** Changes of an order of tasks. All of them keep every task; what waits for another is pulled behind it in decoding. */
export class OrderMoves {
  readonly #batchOf: Int32Array;
  readonly #late: Float64Array;
  readonly #random: () => number;

  /** `batchOf[task]`: its batch. `late[batch]`: what it is late in the plan of now; may change meanwhile. */
  constructor(batchOf: Int32Array, late: Float64Array, random: () => number) {
    this.#late = late;
    this.#batchOf = batchOf;
    this.#random = random;
  }

  /** Another order, by moving whole batches: which of them comes first decides most of what they are late. */
  byBatches(order: Int32Array): Int32Array {
    const dice = this.#random();
    if (dice < 0.36) return this.#batchGathered(order, this.#anyBatch(order));
    if (dice < 0.72) return this.#batchNudged(order, this.#anyBatch(order));
    if (dice < 0.93) return this.#batchesSwapped(order, this.#anyBatch(order), this.#anyBatch(order));
    return this.#restGathered(order);
  }

  /** Another order, by single tasks and stretches too: what is won once the batches stand well. */
  byTasks(order: Int32Array): Int32Array {
    const dice = this.#random();
    if (dice < 0.3) return this.#taskShifted(order);
    if (dice < 0.42) return this.#batchShifted(order, this.#anyBatch(order));
    if (dice < 0.56) return this.#stretchMoved(order);
    if (dice < 0.7) return this.#restGathered(order);
    if (dice < 0.8) return this.#tasksScattered(order);
    return this.byBatches(order);
  }

  #index(count: number): number {
    return Math.floor(this.#random() * count);
  }

  /** One task by a few places, seldom by many. */
  #taskShifted(order: Int32Array): Int32Array {
    const reach = this.#random() ** 3 * order.length + 1;
    return this.#moved(order, 1, (this.#random() < 0.6 ? -1 : 1) * reach);
  }

  /** Tasks that stand together by up to half the order. */
  #stretchMoved(order: Int32Array): Int32Array {
    const length = 1 + Math.floor(this.#random() ** 2 * Math.min(40, order.length / 3));
    const reach = this.#random() ** 2 * order.length * 0.5 + 1;
    return this.#moved(order, length, (this.#random() < 0.5 ? -1 : 1) * reach);
  }

  #moved(order: Int32Array, length: number, by: number): Int32Array {
    const from = this.#index(order.length - length + 1);
    const to = Math.max(0, Math.min(order.length - length, Math.round(from + by)));
    const changed = order.slice();
    if (to < from) changed.copyWithin(to + length, to, from);
    else changed.copyWithin(from, from + length, to + length);
    changed.set(order.subarray(from, from + length), to);
    return changed;
  }

  /** A batch, or what is left of it from some task on, by a share of the whole order; its tasks keep their order. */
  #batchShifted(order: Int32Array, batch: number): Int32Array {
    const first = this.#random() < 0.5 ? 0 : this.#index(order.length);
    const by = (this.#random() - 0.5) * this.#random() * order.length;
    const changed = new Int32Array(order.length);
    const isOwn = (index: number) => this.#batchOf[order[index] ?? 0] === batch && index >= first;
    let own = nextWhere(order.length, 0, isOwn);
    let other = nextWhere(order.length, 0, (index) => !isOwn(index));
    for (let i = 0; i < order.length; i++) {
      if (own < order.length && (other >= order.length || own + by < other)) {
        changed[i] = order[own] ?? 0;
        own = nextWhere(order.length, own + 1, isOwn);
      } else {
        changed[i] = order[other] ?? 0;
        other = nextWhere(order.length, other + 1, (index) => !isOwn(index));
      }
    }
    return changed;
  }

  /** All tasks of a batch one after the other, at some place of the order. */
  #batchGathered(order: Int32Array, batch: number): Int32Array {
    return this.#gathered(order, batch, 0, () => this.#index(order.length + 1));
  }

  /** All tasks of a batch one after the other, not far from where the first of them was. */
  #batchNudged(order: Int32Array, batch: number): Int32Array {
    const by = (this.#random() - 0.6) * this.#random() * order.length * 0.5;
    return this.#gathered(order, batch, 0, (first) => Math.round(first + by));
  }

  /** The tasks of a batch from some task on one after the other, at some place of the order. */
  #restGathered(order: Int32Array): Int32Array {
    const first = this.#index(order.length);
    return this.#gathered(order, this.#batchOf[order[first] ?? 0] ?? 0, first, () => this.#index(order.length + 1));
  }

  #gathered(order: Int32Array, batch: number, from: number, placeOf: (first: number) => number): Int32Array {
    const isOwn = (task: number, index: number) => this.#batchOf[task] === batch && index >= from;
    const own = order.filter(isOwn);
    const others = order.filter((task, index) => !isOwn(task, index));
    const at = Math.max(0, Math.min(others.length, placeOf(order.findIndex(isOwn))));
    const changed = new Int32Array(order.length);
    changed.set(others.subarray(0, at));
    changed.set(own, at);
    changed.set(others.subarray(at), at + own.length);
    return changed;
  }

  /** The places of two batches together, filled by the first batch and then by the second. */
  #batchesSwapped(order: Int32Array, first: number, second: number): Int32Array {
    const tasks = [
      ...order.filter((task) => this.#batchOf[task] === first),
      ...order.filter((task) => this.#batchOf[task] === second && second !== first),
    ];
    let next = 0;
    return order.map((task) => {
      const batch = this.#batchOf[task];
      return batch === first || batch === second ? (tasks[next++] ?? task) : task;
    });
  }

  /** A few tasks taken out and put back anywhere. */
  #tasksScattered(order: Int32Array): Int32Array {
    const taken = new Set(Array.from({ length: 2 + this.#index(4) }, () => order[this.#index(order.length)] ?? 0));
    const changed = [...order].filter((task) => !taken.has(task));
    for (const task of taken) changed.splice(this.#index(changed.length + 1), 0, task);
    return Int32Array.from(changed);
  }

  /** A batch, more often one with many tasks; one time in three the later of two. */
  #anyBatch(order: Int32Array): number {
    const batch = this.#batchAt(order);
    if (this.#random() < 0.67) return batch;
    const other = this.#batchAt(order);
    return (this.#late[other] ?? 0) > (this.#late[batch] ?? 0) ? other : batch;
  }

  #batchAt(order: Int32Array): number {
    return this.#batchOf[order[this.#index(order.length)] ?? 0] ?? 0;
  }
}

function nextWhere(length: number, from: number, holds: (index: number) => boolean): number {
  let index = from;
  while (index < length && !holds(index)) index++;
  return index;
}
