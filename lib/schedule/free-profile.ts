import { NEVER } from '@/lib/schedule/compiled-problem';

/** Steps at some moment, to go back to. */
export interface ProfileCopy {
  readonly times: Int32Array;
  readonly free: Int32Array;
  count: number;
}

/** How many places of one resource are free over time, as steps. */
export class FreeProfile {
  private readonly times: Int32Array;
  private readonly free: Int32Array;
  private count: number;

  /** `from[i]` in rising order, `free[i]` from then on; the first one holds for all time before it too. */
  constructor(from: Int32Array, free: Int32Array, holdCount: number) {
    const room = from.length + 2 * holdCount + 2;
    this.times = new Int32Array(room);
    this.free = new Int32Array(room);
    this.times.set(from);
    this.free.set(free);
    this.count = from.length;
  }

  /** Notes the steps, in `copy` where there is one already. */
  save(copy: ProfileCopy | null): ProfileCopy {
    const noted = copy ?? {
      times: new Int32Array(this.times.length),
      free: new Int32Array(this.free.length),
      count: 0,
    };
    noted.times.set(this.times);
    noted.free.set(this.free);
    noted.count = this.count;
    return noted;
  }

  /** Back to the steps that were noted. */
  restore({ times, free, count }: ProfileCopy): void {
    this.times.set(times);
    this.free.set(free);
    this.count = count;
  }

  /** -1 where `amount` is free over [start, end); else the end of the last stretch that stands in the way. */
  blockedUntil(start: number, end: number, amount: number): number {
    const { times, free } = this;
    for (let i = this.indexAt(end - 1); i >= 0; i--) {
      if ((free[i] ?? 0) < amount) return i + 1 < this.count ? (times[i + 1] ?? NEVER) : NEVER;
      if ((times[i] ?? 0) <= start) break;
    }
    return -1;
  }

  /** Takes `amount` over [start, end), whether it is free or not. */
  take(start: number, end: number, amount: number): void {
    if (end <= start || amount === 0) return;
    const first = this.cut(start);
    const last = this.cut(end);
    for (let i = first; i < last; i++) this.free[i] = (this.free[i] ?? 0) - amount;
  }

  /** The largest number of places that are ever free from `minute` on. */
  mostFrom(minute: number): number {
    let most = 0;
    for (let i = Math.max(0, this.indexAt(minute)); i < this.count; i++) most = Math.max(most, this.free[i] ?? 0);
    return most;
  }

  /** The steps as they are now, to begin others with. */
  steps(): { readonly times: Int32Array; readonly free: Int32Array } {
    return { times: this.times.slice(0, this.count), free: this.free.slice(0, this.count) };
  }

  private indexAt(minute: number): number {
    const { times } = this;
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((times[middle] ?? 0) <= minute) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  /** The index of the step that begins at `minute`, made where there was none. */
  private cut(minute: number): number {
    const index = this.indexAt(minute);
    if (index >= 0 && this.times[index] === minute) return index;
    const at = index + 1;
    this.times.copyWithin(at + 1, at, this.count);
    this.free.copyWithin(at + 1, at, this.count);
    this.times[at] = minute;
    this.free[at] = this.free[Math.max(0, index)] ?? 0;
    this.count++;
    return at;
  }
}
