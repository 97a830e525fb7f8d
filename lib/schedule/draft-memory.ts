import { type DraftCopy, type PlanDraft, WAITING } from '@/lib/schedule/plan-draft';

/** Tasks between two drafts that are noted. Chosen: noting and going back cost as much as placing five to ten tasks. */
const STEP = 24;

/** Drafts on the way of the order that was settled on, so that orders that begin like it need not begin anew. */
export class DraftMemory {
  /** How many tasks the order that was begun last has in common with the settled one, from the first on. */
  common = 0;
  private length = -1;
  private readonly order: Int32Array;
  private readonly settledDelays: Uint8Array;
  private readonly settledFloor: Int32Array;
  /** Drafts before task 0, STEP, 2 STEP and so on of the settled order. */
  private readonly copies: (DraftCopy | null)[];
  private readonly isNoted: Uint8Array;
  /** Tasks whose delay or floor is not as it was settled. */
  private readonly changed: number[] = [];

  constructor(
    private readonly draft: PlanDraft,
    private readonly delays: Uint8Array,
    private readonly floor: Int32Array,
  ) {
    const { length } = draft.compiled.open;
    const count = Math.ceil(length / STEP);
    this.order = new Int32Array(length);
    this.settledDelays = delays.slice();
    this.settledFloor = floor.slice();
    this.copies = Array.from({ length: count }, () => null);
    this.isNoted = new Uint8Array(count);
  }

  /** Compares orders with this one from now on. */
  settleOn(order: ArrayLike<number>): void {
    this.compare(order);
    for (let k = 0; k < this.copies.length; k++) {
      if (this.isNoted[k] === 1 && !this.holdsFor(k)) this.isNoted[k] = 0;
    }
    this.order.set(order);
    this.length = order.length;
    this.settledDelays.set(this.delays);
    this.settledFloor.set(this.floor);
  }

  /** Brings the draft as far as is known of an order; the index of the first task that is not in it. */
  begin(order: ArrayLike<number>): number {
    this.compare(order);
    for (let k = Math.min(this.copies.length - 1, Math.floor(this.common / STEP)); k > 0; k--) {
      const copy = this.copies[k] ?? null;
      if (this.isNoted[k] !== 1 || copy === null || !this.holdsFor(k)) continue;
      this.draft.restore(copy);
      return k * STEP;
    }
    this.draft.reset();
    return 0;
  }

  /** Notes the draft before task `index`, where it is one that is worth it and as the settled order has it. */
  note(index: number): void {
    const k = index / STEP;
    if (index === 0 || index % STEP !== 0 || this.isNoted[k] === 1) return;
    if (this.changed.some((task) => this.draft.status[task] !== WAITING)) return;
    this.copies[k] = this.draft.save(this.copies[k] ?? null);
    this.isNoted[k] = 1;
  }

  private holdsFor(k: number): boolean {
    const status = this.copies[k]?.status;
    return k * STEP <= this.common && this.changed.every((task) => status?.[task] === WAITING);
  }

  private compare(order: ArrayLike<number>): void {
    const { changed, delays, floor } = this;
    let common = 0;
    const length = this.length < 0 ? 0 : Math.min(this.length, order.length);
    while (common < length && order[common] === this.order[common]) common++;
    this.common = this.length < 0 ? -1 : common;
    changed.length = 0;
    for (let task = 0; task < delays.length; task++) {
      if (delays[task] !== this.settledDelays[task] || floor[task] !== this.settledFloor[task]) changed.push(task);
    }
  }
}
