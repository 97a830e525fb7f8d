import { type CompiledProblem, NEVER } from '@/lib/schedule/compiled-problem';

/** Where a task would fit on one person's bench. Written by `BenchBook.find`. */
export interface BenchSlot {
  person: number;
  start: number;
  finish: number;
  setUp: number;
  /** The session of the start. */
  session: number;
  /** Starts and ends of its pieces in turn; beyond `ends` it holds what was there before. */
  pieces: number[];
  /** How many numbers of `pieces` count: two a piece. */
  ends: number;
}

/** What is in a book at some moment, to go back to. */
export interface BookCopy {
  readonly counts: Int32Array;
  readonly used: Uint8Array;
  readonly ready: Int32Array;
  readonly longest: Int32Array;
  /** Start and end of each stretch, session by session. */
  stretches: Int32Array;
}

/** The people's sessions with what is taken of them: stretches of each session in order, those that touch made one. */
export class BenchBook {
  readonly sessionCount: number;
  readonly sessionStart: Int32Array;
  readonly sessionEnd: Int32Array;
  /** Sessions of person p are firstOf[p] to firstOf[p + 1] - 1. */
  readonly firstOf: Int32Array;
  /** Whether anything that is to come is done in a session. */
  readonly used: Uint8Array;
  private readonly offset: Int32Array;
  private readonly counts: Int32Array;
  private readonly busyStart: Int32Array;
  private readonly busyEnd: Int32Array;
  /** By session and key: the start of the earliest task that has the set-up. */
  private readonly readyFrom: Int32Array;
  /** The longest stretch of each session that is free. */
  private readonly longest: Int32Array;

  constructor(private readonly compiled: CompiledProblem) {
    const { people } = compiled.problem;
    const sessions = people.flatMap((person) => person.sessions);
    this.sessionCount = sessions.length;
    this.sessionStart = Int32Array.from(sessions, (s) => s.startMinute);
    this.sessionEnd = Int32Array.from(sessions, (s) => s.endMinute);
    this.firstOf = new Int32Array(people.length + 1);
    for (const [p, person] of people.entries()) this.firstOf[p + 1] = (this.firstOf[p] ?? 0) + person.sessions.length;
    this.offset = new Int32Array(sessions.length + 1);
    // Stretches that do not touch take two minutes each at the least; one more while one is put in. A task adds one at
    // the most: pieces of what is put down begin where another stretch ends.
    const most = 2 * compiled.taskCount + 3;
    for (const [s, span] of sessions.entries()) {
      const fitting = Math.floor((span.endMinute - span.startMinute) / 2) + 3;
      this.offset[s + 1] = (this.offset[s] ?? 0) + Math.min(fitting, most);
    }
    const room = this.offset[sessions.length] ?? 0;
    this.busyStart = new Int32Array(room);
    this.busyEnd = new Int32Array(room);
    this.counts = new Int32Array(sessions.length);
    this.longest = Int32Array.from(sessions, (s) => s.endMinute - s.startMinute);
    this.used = new Uint8Array(sessions.length);
    this.readyFrom = new Int32Array(sessions.length * compiled.setUpKeyCount).fill(NEVER);
  }

  /** Notes what is in the book, in `copy` where there is one already. */
  save(copy: BookCopy | null): BookCopy {
    const noted = copy ?? {
      counts: new Int32Array(this.counts.length),
      used: new Uint8Array(this.used.length),
      ready: new Int32Array(this.readyFrom.length),
      longest: new Int32Array(this.longest.length),
      stretches: new Int32Array(0),
    };
    noted.counts.set(this.counts);
    noted.used.set(this.used);
    noted.ready.set(this.readyFrom);
    noted.longest.set(this.longest);
    let length = 0;
    for (let s = 0; s < this.sessionCount; s++) length += 2 * (this.counts[s] ?? 0);
    if (length > noted.stretches.length) noted.stretches = new Int32Array(2 * length);
    const { stretches } = noted;
    let at = 0;
    for (let s = 0; s < this.sessionCount; s++) {
      const from = this.offset[s] ?? 0;
      for (let i = from; i < from + (this.counts[s] ?? 0); i++) {
        stretches[at++] = this.busyStart[i] ?? 0;
        stretches[at++] = this.busyEnd[i] ?? 0;
      }
    }
    return noted;
  }

  /** Back to what was noted. */
  restore({ counts, used, ready, longest, stretches }: BookCopy): void {
    this.counts.set(counts);
    this.used.set(used);
    this.readyFrom.set(ready);
    this.longest.set(longest);
    let at = 0;
    for (let s = 0; s < this.sessionCount; s++) {
      const from = this.offset[s] ?? 0;
      for (let i = from; i < from + (counts[s] ?? 0); i++) {
        this.busyStart[i] = stretches[at++] ?? 0;
        this.busyEnd[i] = stretches[at++] ?? 0;
      }
    }
  }

  /**
   * Writes into `slot` the first place for a task on one person's bench that starts at `from` or later. False where
   * there is none.
   */
  find(task: number, person: number, from: number, minutes: number, slot: BenchSlot): boolean {
    slot.person = person;
    const leastPiece = this.compiled.leastPiece[task] ?? 0;
    const last = this.firstOf[person + 1] ?? 0;
    const { longest } = this;
    const needed = leastPiece > 0 ? Math.min(leastPiece, minutes) : minutes;
    for (let s = this.sessionAfter(person, from); s < last; s++) {
      if ((longest[s] ?? 0) < needed) continue;
      const found =
        leastPiece > 0
          ? this.findPieces(s, last, from, minutes, leastPiece, slot)
          : this.findWhole(task, s, from, minutes, slot);
      if (found) return true;
    }
    return false;
  }

  /** Enters a slot of a task that is to come. */
  enter(task: number, slot: BenchSlot): void {
    const { pieces, ends } = slot;
    const key = this.compiled.setUpKey[task] ?? -1;
    if (key >= 0 && slot.session >= 0) this.makeReady(slot.session, key, slot.start);
    for (let i = 0; i < ends; i += 2) this.block(slot.person, pieces[i] ?? 0, pieces[i + 1] ?? 0, true);
  }

  /** Takes a person's time, also where it is taken already or outside their hours. */
  block(person: number, start: number, end: number, isToCome: boolean): void {
    const last = this.firstOf[person + 1] ?? 0;
    for (let s = this.sessionAfter(person, start); s < last && (this.sessionStart[s] ?? 0) < end; s++) {
      const from = Math.max(start, this.sessionStart[s] ?? 0);
      const to = Math.min(end, this.sessionEnd[s] ?? 0);
      if (from >= to) continue;
      this.insert(s, from, to);
      if (isToCome) this.used[s] = 1;
    }
  }

  /** The session of a person that holds a minute; -1 where none does. */
  sessionAt(person: number, minute: number): number {
    const s = this.sessionAfter(person, minute);
    return s < (this.firstOf[person + 1] ?? 0) && (this.sessionStart[s] ?? 0) <= minute ? s : -1;
  }

  /** Whether a person is at the bench over [start, end) and has nothing else to do. */
  isFree(person: number, start: number, end: number): boolean {
    const s = this.sessionAt(person, start);
    if (s < 0 || end > (this.sessionEnd[s] ?? 0)) return false;
    const offset = this.offset[s] ?? 0;
    for (let i = offset; i < offset + (this.counts[s] ?? 0); i++) {
      if ((this.busyStart[i] ?? 0) < end && start < (this.busyEnd[i] ?? 0)) return false;
    }
    return true;
  }

  /** A set-up of a key is there from `start` on in a session. */
  makeReady(session: number, key: number, start: number): void {
    const index = session * this.compiled.setUpKeyCount + key;
    if (start < (this.readyFrom[index] ?? NEVER)) this.readyFrom[index] = start;
  }

  /** Whether a task that starts then has its set-up paid by another. */
  isReady(session: number, key: number, start: number): boolean {
    return (this.readyFrom[session * this.compiled.setUpKeyCount + key] ?? NEVER) <= start;
  }

  /** The first session of a person that ends after a minute. */
  sessionAfter(person: number, minute: number): number {
    let low = this.firstOf[person] ?? 0;
    let high = this.firstOf[person + 1] ?? 0;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((this.sessionEnd[middle] ?? 0) <= minute) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private findWhole(task: number, s: number, from: number, minutes: number, slot: BenchSlot): boolean {
    const key = this.compiled.setUpKey[task] ?? -1;
    const setUp = this.compiled.setUpMinutes[task] ?? 0;
    const end = this.sessionEnd[s] ?? 0;
    const offset = this.offset[s] ?? 0;
    const count = this.counts[s] ?? 0;
    const readyFrom = key < 0 ? NEVER : (this.readyFrom[s * this.compiled.setUpKeyCount + key] ?? NEVER);
    let start = Math.max(from, this.sessionStart[s] ?? 0);
    for (let i = 0; i <= count; i++) {
      const isLast = i === count;
      if (!isLast && (this.busyEnd[offset + i] ?? 0) <= start) continue;
      const gapEnd = isLast ? end : (this.busyStart[offset + i] ?? 0);
      const paid = key >= 0 && readyFrom > start ? setUp : 0;
      if (start + minutes + paid <= gapEnd) {
        slot.start = start;
        slot.finish = start + minutes + paid;
        slot.setUp = paid;
        slot.session = s;
        slot.ends = 2;
        slot.pieces[0] = start;
        slot.pieces[1] = slot.finish;
        return true;
      }
      if (!isLast) start = Math.max(start, this.busyEnd[offset + i] ?? 0);
    }
    return false;
  }

  /** The rest of a task that may be put down, from session `s` on; only a start within `s` counts. */
  private findPieces(
    s: number,
    last: number,
    from: number,
    minutes: number,
    leastPiece: number,
    slot: BenchSlot,
  ): boolean {
    const { pieces } = slot;
    let left = minutes;
    let ends = 0;
    for (let t = s; t < last && left > 0; t++) {
      const offset = this.offset[t] ?? 0;
      const count = this.counts[t] ?? 0;
      let start = Math.max(from, this.sessionStart[t] ?? 0);
      for (let i = 0; i <= count && left > 0; i++) {
        const gapEnd = i === count ? (this.sessionEnd[t] ?? 0) : (this.busyStart[offset + i] ?? 0);
        const piece = Math.min(left, gapEnd - start);
        if (piece >= Math.min(left, leastPiece)) {
          pieces[ends++] = start;
          pieces[ends++] = start + piece;
          left -= piece;
        }
        if (i < count) start = Math.max(start, this.busyEnd[offset + i] ?? 0);
      }
      if (t === s && ends === 0) return false;
    }
    if (left > 0) return false;
    slot.ends = ends;
    slot.start = pieces[0] ?? 0;
    slot.finish = pieces[ends - 1] ?? 0;
    slot.setUp = 0;
    slot.session = s;
    return true;
  }

  /** Puts a stretch into a session and joins it with those that it touches. */
  private insert(s: number, start: number, end: number): void {
    const { busyStart, busyEnd } = this;
    const offset = this.offset[s] ?? 0;
    const stop = offset + (this.counts[s] ?? 0);
    let first = offset;
    while (first < stop && (busyEnd[first] ?? 0) < start) first++;
    let next = first;
    let from = start;
    let to = end;
    while (next < stop && (busyStart[next] ?? 0) <= end) {
      from = Math.min(from, busyStart[next] ?? 0);
      to = Math.max(to, busyEnd[next] ?? 0);
      next++;
    }
    if (next !== first + 1) {
      busyStart.copyWithin(first + 1, next, stop);
      busyEnd.copyWithin(first + 1, next, stop);
      this.counts[s] = (this.counts[s] ?? 0) + 1 - (next - first);
    }
    busyStart[first] = from;
    busyEnd[first] = to;
    this.measure(s);
  }

  /** Notes the longest free stretch of a session. */
  private measure(s: number): void {
    const offset = this.offset[s] ?? 0;
    const stop = offset + (this.counts[s] ?? 0);
    let from = this.sessionStart[s] ?? 0;
    let longest = 0;
    for (let i = offset; i < stop; i++) {
      longest = Math.max(longest, (this.busyStart[i] ?? 0) - from);
      from = this.busyEnd[i] ?? 0;
    }
    this.longest[s] = Math.max(longest, (this.sessionEnd[s] ?? 0) - from);
  }
}
