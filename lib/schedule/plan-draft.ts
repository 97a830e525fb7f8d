import { BenchBook, type BenchSlot } from '@/lib/schedule/bench-book';
import { type CompiledLink, type CompiledProblem, opensAt } from '@/lib/schedule/compiled-problem';
import { baseProfiles, enterFixed } from '@/lib/schedule/fixed-tasks';
import type { FreeProfile } from '@/lib/schedule/free-profile';
import { tailsAfterFinish } from '@/lib/schedule/task-order';

/** How far a task is: not looked at, being placed, with a place, without one. */
export const WAITING = 0;
export const ASKED = 1;
export const PLACED = 2;
export const UNPLACED = 3;

/** A plan while it is made: which tasks have a place and where, and what is left of the bench and the resources. */
export class PlanDraft {
  readonly start: Int32Array;
  readonly finish: Int32Array;
  readonly person: Int32Array;
  readonly setUp: Int32Array;
  readonly status: Uint8Array;
  /** Starts and ends of each task's pieces in turn. */
  readonly pieces: number[][];
  /** Indices of the links whose window each task misses. */
  readonly remedies: number[][];
  readonly book: BenchBook;
  readonly profiles: readonly FreeProfile[];
  /** What each batch is late so far, in weighted minutes, with what comes after at the least. */
  readonly batchLate: Float64Array;
  /** The same of all batches together. */
  late = 0;
  /** From the finish of a task until its batch is ready at the least. */
  private readonly tail: Float64Array;

  constructor(readonly compiled: CompiledProblem) {
    const n = compiled.taskCount;
    this.start = new Int32Array(n);
    this.finish = new Int32Array(n);
    this.person = new Int32Array(n).fill(-1);
    this.setUp = new Int32Array(n);
    this.status = new Uint8Array(n);
    this.pieces = Array.from({ length: n }, () => []);
    this.remedies = Array.from({ length: n }, () => []);
    this.batchLate = new Float64Array(compiled.problem.batches.length);
    this.tail = tailsAfterFinish(compiled);
    this.book = new BenchBook(compiled);
    enterFixed(compiled, this.book, (task, personIndex, slot) => {
      this.start[task] = slot.start;
      this.finish[task] = slot.finish;
      this.person[task] = personIndex;
      this.setUp[task] = slot.setUp;
      this.pieces[task] = slot.pieces.slice(0, slot.ends);
    });
    this.book.keepAsBase();
    this.profiles = baseProfiles(compiled, this.start, this.finish);
  }

  /** Back to what is fixed alone. */
  reset(): void {
    const { compiled, status } = this;
    this.late = 0;
    this.batchLate.fill(0);
    this.book.reset();
    for (const profile of this.profiles) profile.reset();
    for (let i = 0; i < compiled.taskCount; i++) status[i] = compiled.fixed[i] === 1 ? PLACED : WAITING;
  }

  isPlaced(task: number): boolean {
    return this.status[task] === PLACED;
  }

  /** The minute of a task from which a link counts. */
  fromMoment(link: CompiledLink): number {
    return (link.fromFinish ? this.finish : this.start)[link.from] ?? 0;
  }

  /** The minute of a task to which a link counts. */
  toMoment(link: CompiledLink): number {
    return (link.toFinish ? this.finish : this.start)[link.to] ?? 0;
  }

  /** Gives a task its place. */
  enter(task: number, slot: BenchSlot): void {
    this.start[task] = slot.start;
    this.finish[task] = slot.finish;
    this.person[task] = slot.person;
    this.setUp[task] = slot.setUp;
    const pieces = this.pieces[task] ?? [];
    if (pieces.length > slot.ends) pieces.length = slot.ends;
    for (let i = 0; i < slot.ends; i++) pieces[i] = slot.pieces[i] ?? 0;
    if (slot.person >= 0) this.book.enter(task, slot);
    this.countLate(task);
    for (const hold of this.compiled.holds[task] ?? []) {
      this.profiles[hold.resource]?.take(slot.start, opensAt(hold.until, slot.finish), hold.amount);
    }
  }

  /** Adds what a task's place makes its batch late, with what comes after it at the least. */
  private countLate(task: number): void {
    const index = this.compiled.batchOf[task] ?? 0;
    const batch = this.compiled.problem.batches[index];
    if (batch === undefined || batch.dueMinute === null) return;
    const late = batch.weight * ((this.finish[task] ?? 0) + (this.tail[task] ?? 0) - batch.dueMinute);
    const was = this.batchLate[index] ?? 0;
    if (late <= was) return;
    this.batchLate[index] = late;
    this.late += late - was;
  }
}
