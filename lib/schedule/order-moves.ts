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

  /** Another order. */
  moved(order: readonly number[]): number[] {
    const dice = this.#random();
    if (dice < 0.4) return this.#taskShifted(order);
    if (dice < 0.6) return this.#batchShifted(order, this.#anyBatch(order), this.#random() - 0.5);
    if (dice < 0.8) return this.#batchGathered(order, this.#anyBatch(order));
    return this.#batchesSwapped(order, this.#anyBatch(order), this.#anyBatch(order));
  }

  /** One task by a few places, seldom by many. */
  #taskShifted(order: readonly number[]): number[] {
    const changed = [...order];
    const from = Math.floor(this.#random() * changed.length);
    const reach = this.#random() ** 3 * changed.length + 1;
    const to = Math.round(from + (this.#random() < 0.6 ? -1 : 1) * reach);
    const [task] = changed.splice(from, 1);
    if (task !== undefined) changed.splice(Math.max(0, Math.min(changed.length, to)), 0, task);
    return changed;
  }

  /** A batch, or what is left of it from some task on, by a share of the whole order; its tasks keep their order. */
  #batchShifted(order: readonly number[], batch: number, share: number): number[] {
    const first = this.#random() < 0.5 ? 0 : Math.floor(this.#random() * order.length);
    const by = share * this.#random() * order.length;
    const at = (task: number, index: number) => (this.#batchOf[task] === batch && index >= first ? index + by : index);
    return order
      .map((task, index) => ({ task, at: at(task, index) }))
      .sort((a, b) => a.at - b.at)
      .map(({ task }) => task);
  }

  /** All tasks of a batch one after the other, at some place of the order. */
  #batchGathered(order: readonly number[], batch: number): number[] {
    const own = order.filter((task) => this.#batchOf[task] === batch);
    const others = order.filter((task) => this.#batchOf[task] !== batch);
    others.splice(Math.floor(this.#random() * (others.length + 1)), 0, ...own);
    return others;
  }

  /** The places of two batches together, filled by the first batch and then by the second. */
  #batchesSwapped(order: readonly number[], first: number, second: number): number[] {
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

  /** A batch, more often one with many tasks; half the time the later of two. */
  #anyBatch(order: readonly number[]): number {
    const batch = this.#batchAt(order);
    if (this.#random() < 0.5) return batch;
    const other = this.#batchAt(order);
    return (this.#late[other] ?? 0) > (this.#late[batch] ?? 0) ? other : batch;
  }

  #batchAt(order: readonly number[]): number {
    return this.#batchOf[order[Math.floor(this.#random() * order.length)] ?? 0] ?? 0;
  }
}
