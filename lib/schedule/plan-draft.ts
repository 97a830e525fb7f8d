import { BenchBook, type BenchSlot, type BookCopy } from '@/lib/schedule/bench-book';
import { type CompiledLink, type CompiledProblem, opensAt } from '@/lib/schedule/compiled-problem';
import { baseProfiles, enterFixed } from '@/lib/schedule/fixed-tasks';
import type { FreeProfile, ProfileCopy } from '@/lib/schedule/free-profile';
import { ReadyAlone } from '@/lib/schedule/ready-alone';

/** How far a task is: not looked at, being placed, with a place, without one. */
export const WAITING = 0;
export const ASKED = 1;
export const PLACED = 2;
export const UNPLACED = 3;

/** How fine it is counted how late a batch is at the least. Chosen: a part of an evening. */
const LATE_STEP_MINUTES = 60;

/** A draft at some moment, to go back to; without the pieces of its tasks. */
export interface DraftCopy {
  readonly start: Int32Array;
  readonly finish: Int32Array;
  readonly person: Int32Array;
  readonly setUp: Int32Array;
  readonly status: Uint8Array;
  readonly remedyCount: Uint8Array;
  readonly batchLate: Float64Array;
  late: number;
  book: BookCopy | null;
  readonly profiles: (ProfileCopy | null)[];
}

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
  /** How many each task misses. */
  readonly remedyCount: Uint8Array;
  readonly book: BenchBook;
  readonly profiles: readonly FreeProfile[];
  /** What each batch is late so far, in weighted minutes, with what comes after at the least. */
  readonly batchLate: Float64Array;
  /** The same of all batches together. */
  late = 0;
  /** Whether it is counted what batches are late: not where no order is given up for it. */
  countsLate = true;
  private readonly readyAlone: ReadyAlone;
  private readonly base: DraftCopy;

  constructor(readonly compiled: CompiledProblem) {
    const n = compiled.taskCount;
    this.start = new Int32Array(n);
    this.finish = new Int32Array(n);
    this.person = new Int32Array(n).fill(-1);
    this.setUp = new Int32Array(n);
    this.status = new Uint8Array(n);
    this.pieces = Array.from({ length: n }, () => []);
    this.remedies = Array.from({ length: n }, () => []);
    this.remedyCount = new Uint8Array(n);
    this.batchLate = new Float64Array(compiled.problem.batches.length);
    this.book = new BenchBook(compiled);
    this.readyAlone = new ReadyAlone(compiled, this.book, LATE_STEP_MINUTES);
    enterFixed(compiled, this.book, (task, personIndex, slot) => {
      this.start[task] = slot.start;
      this.finish[task] = slot.finish;
      this.person[task] = personIndex;
      this.setUp[task] = slot.setUp;
      this.pieces[task] = slot.pieces.slice(0, slot.ends);
    });
    this.profiles = baseProfiles(compiled, this.start, this.finish);
    for (let i = 0; i < n; i++) this.status[i] = compiled.fixed[i] === 1 ? PLACED : WAITING;
    this.base = this.save(null);
  }

  /** Back to what is fixed alone. */
  reset(): void {
    this.restore(this.base);
  }

  /** Notes how far the draft is, in `copy` where there is one already. */
  save(copy: DraftCopy | null): DraftCopy {
    const noted = copy ?? {
      start: this.start.slice(),
      finish: this.finish.slice(),
      person: this.person.slice(),
      setUp: this.setUp.slice(),
      status: this.status.slice(),
      remedyCount: this.remedyCount.slice(),
      batchLate: this.batchLate.slice(),
      late: 0,
      book: null,
      profiles: this.profiles.map(() => null),
    };
    copyArrays(this, noted);
    noted.late = this.late;
    noted.book = this.book.save(noted.book);
    for (const [r, profile] of this.profiles.entries()) noted.profiles[r] = profile.save(noted.profiles[r] ?? null);
    return noted;
  }

  /** Back to what was noted; the pieces of tasks stay as they are now. */
  restore(noted: DraftCopy): void {
    copyArrays(noted, this);
    this.late = noted.late;
    if (noted.book !== null) this.book.restore(noted.book);
    for (const [r, profile] of this.profiles.entries()) {
      const copy = noted.profiles[r] ?? null;
      if (copy !== null) profile.restore(copy);
    }
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
    this.remedyCount[task] = this.remedies[task]?.length ?? 0;
    const pieces = this.pieces[task] ?? [];
    if (pieces.length > slot.ends) pieces.length = slot.ends;
    for (let i = 0; i < slot.ends; i++) pieces[i] = slot.pieces[i] ?? 0;
    if (slot.person >= 0) this.book.enter(task, slot);
    if (this.countsLate) this.countLate(task);
    for (const hold of this.compiled.holds[task] ?? []) {
      this.profiles[hold.resource]?.take(slot.start, opensAt(hold.until, slot.finish), hold.amount);
    }
  }

  /** Adds what a task's place makes its batch late, with what comes after it at the least. */
  private countLate(task: number): void {
    const index = this.compiled.batchOf[task] ?? 0;
    const batch = this.compiled.problem.batches[index];
    if (batch === undefined || batch.dueMinute === null) return;
    const late = batch.weight * (this.readyAlone.after(task, this.finish[task] ?? 0) - batch.dueMinute);
    const was = this.batchLate[index] ?? 0;
    if (late <= was) return;
    this.batchLate[index] = late;
    this.late += late - was;
  }
}

type TaskArrays = Pick<DraftCopy, 'start' | 'finish' | 'person' | 'setUp' | 'status' | 'remedyCount' | 'batchLate'>;

function copyArrays(from: TaskArrays, to: TaskArrays): void {
  to.start.set(from.start);
  to.finish.set(from.finish);
  to.person.set(from.person);
  to.setUp.set(from.setUp);
  to.status.set(from.status);
  to.remedyCount.set(from.remedyCount);
  to.batchLate.set(from.batchLate);
}
