import type { BenchBook } from '@/lib/schedule/bench-book';
import { type CompiledProblem, NEVER, opensAt } from '@/lib/schedule/compiled-problem';

/**
 * When a batch is ready at the least once one of its tasks has finished: what comes after it on an empty bench, each
 * visit in the next hours of somebody who may do it. Entries are made when they are first asked for.
 */
export class ReadyAlone {
  /** By task: the ready minute by step of the finish; 0: not made yet. */
  private readonly entries: (Int32Array | null)[];
  private readonly next: readonly (readonly { readonly to: number; readonly link: number }[])[];
  private readonly stepCount: number;

  constructor(
    private readonly compiled: CompiledProblem,
    private readonly book: BenchBook,
    /** Minutes of finish that share an entry: the earliest of them counts for all. */
    private readonly stepMinutes: number,
  ) {
    const { problem, batchOf, fixed } = compiled;
    this.stepCount = Math.floor((problem.horizonMinute - problem.nowMinute) / this.stepMinutes) + 1;
    this.entries = Array.from({ length: compiled.taskCount }, () => null);
    this.next = compiled.linksOut.map((links, task) =>
      links.flatMap((link, i) => {
        const isNext = link.isLeast && link.fromFinish && !link.toFinish && fixed[link.to] === 0;
        return isNext && batchOf[link.to] === batchOf[task] ? [{ to: link.to, link: i }] : [];
      }),
    );
  }

  /** The minute, with NEVER where what comes after cannot be placed any more. */
  after(task: number, finish: number): number {
    const { nowMinute, horizonMinute } = this.compiled.problem;
    if (finish > horizonMinute) return NEVER;
    const step = Math.max(0, Math.floor((finish - nowMinute) / this.stepMinutes));
    let own = this.entries[task] ?? null;
    if (own === null) {
      own = new Int32Array(this.stepCount);
      this.entries[task] = own;
    }
    const known = own[step] ?? 0;
    if (known > 0) return known;
    const ready = Math.max(1, this.readyFrom(task, nowMinute + step * this.stepMinutes));
    own[step] = ready;
    return ready;
  }

  private readyFrom(task: number, finish: number): number {
    const { compiled } = this;
    const own = compiled.readyAfter[task];
    let ready = own === undefined ? finish : opensAt(own, finish);
    for (const { to, link } of this.next[task] ?? []) {
      const lag = compiled.linksOut[task]?.[link]?.lag;
      const opens = Math.max(lag === undefined ? finish : opensAt(lag, finish), compiled.release[to] ?? 0);
      const then = opens >= NEVER ? NEVER : this.earliestFinish(to, opens);
      ready = Math.max(ready, then >= NEVER ? NEVER : this.after(to, then));
    }
    return ready;
  }

  private earliestFinish(task: number, from: number): number {
    const minutes = this.compiled.attended[task] ?? 0;
    if (minutes === 0) return from;
    let earliest = NEVER;
    for (const person of this.compiled.people[task] ?? []) {
      earliest = Math.min(earliest, this.finishWith(person, from, minutes, this.compiled.leastPiece[task] ?? 0));
    }
    return earliest;
  }

  private finishWith(person: number, from: number, minutes: number, leastPiece: number): number {
    const { book } = this;
    const last = book.firstOf[person + 1] ?? 0;
    let left = minutes;
    for (let s = book.sessionAfter(person, from); s < last; s++) {
      const begins = Math.max(from, book.sessionStart[s] ?? 0);
      const room = (book.sessionEnd[s] ?? 0) - begins;
      if (room >= left) return begins + left;
      if (leastPiece > 0) left -= room;
    }
    return NEVER;
  }
}
