import { BenchBook, type BenchSlot } from '@/lib/schedule/bench-book';
import { type CompiledProblem, closesAt, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { baseProfiles, enterFixed } from '@/lib/schedule/fixed-tasks';
import type { FreeProfile } from '@/lib/schedule/free-profile';
import type { PlannedTask, ShopPlan, UnplacedTask } from '@/lib/schedule/shop-plan';
import { tailsAfterFinish } from '@/lib/schedule/task-order';
import { whyUnplaced } from '@/lib/schedule/why-unplaced';

/** Levels of a plan's value as numbers, in the order of VALUE_LEVELS. */
export const LEVEL_COUNT = 6;

/** How often one decoding may begin again because a window without a remedy asks for a later start before it. */
const MOST_RESTARTS = 12;

/** No place of before that a task would keep. */
export const NO_FLOOR = -NEVER;

const WAITING = 0;
const ASKED = 1;
const PLACED = 2;
const UNPLACED = 3;

/** Where a task was in the plan that holds, with the indices of the links that it remedies. */
export interface HeldSlot {
  readonly slot: BenchSlot;
  readonly remedies: readonly number[];
}

/**
 * Turns an order of the open tasks into a plan: each task in turn, with those it waits for before it, at the earliest
 * minute at which its links, one person's bench and all resources allow it (serial schedule generation). A window
 * that is missed is remedied at its price; one without remedy makes the task before it begin later, and where that
 * does not help the task stays without a place. Buffers are reused: one decoder makes one plan at a time.
 */
export class PlanDecoder {
  /** The value of the last plan, level by level. */
  readonly value = new Float64Array(LEVEL_COUNT);
  readonly start: Int32Array;
  readonly finish: Int32Array;
  /** Schedules generated so far: passes over all tasks, those begun again included. */
  passes = 0;
  /** 1: the task's earliest session is passed over. */
  readonly delays: Uint8Array;
  /** Not before it: the place that a task keeps where it can. */
  readonly floor: Int32Array;
  /** Each task's place in the plan that holds; null: it has none. */
  readonly held: (HeldSlot | null)[];
  private readonly person: Int32Array;
  private readonly setUp: Int32Array;
  private readonly status: Uint8Array;
  private readonly notBefore: Int32Array;
  private readonly pieces: number[][];
  private readonly remedies: number[][];
  /** From the finish of a task until its batch is ready at the least. */
  private readonly tail: Float64Array;
  private readonly book: BenchBook;
  private readonly profiles: readonly FreeProfile[];
  private readonly batchReady: Float64Array;
  private slot: BenchSlot = emptySlot();
  private best: BenchSlot = emptySlot();
  private restartAt = -1;
  /** What each batch is late in the last plan, in weighted minutes. */
  readonly batchLate: Float64Array;
  private lateSoFar = 0;
  private heedsPins = false;

  constructor(readonly compiled: CompiledProblem) {
    const n = compiled.taskCount;
    this.start = new Int32Array(n);
    this.finish = new Int32Array(n);
    this.person = new Int32Array(n).fill(-1);
    this.floor = new Int32Array(n).fill(NO_FLOOR);
    this.held = new Array<HeldSlot | null>(n).fill(null);
    this.setUp = new Int32Array(n);
    this.delays = new Uint8Array(n);
    this.status = new Uint8Array(n);
    this.notBefore = new Int32Array(n);
    this.pieces = Array.from({ length: n }, () => []);
    this.remedies = Array.from({ length: n }, () => []);
    this.batchReady = new Float64Array(compiled.problem.batches.length);
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

  /**
   * Makes the plan of an order of the open tasks. Each call is one schedule generated. False, with nothing to be read
   * from it, as soon as what is placed alone is later than `mostLate` weighted minutes.
   */
  decode(order: ArrayLike<number>, mostLate = Number.POSITIVE_INFINITY): boolean {
    const { open } = this.compiled;
    for (const task of open) this.notBefore[task] = Math.max(this.compiled.release[task] ?? 0, this.floor[task] ?? 0);
    for (let attempt = 0; attempt <= MOST_RESTARTS; attempt++) {
      this.restartAt = attempt === MOST_RESTARTS ? -2 : -1;
      this.begin();
      for (let i = 0; i < order.length && this.restartAt < 0; i++) {
        this.place(order[i] ?? 0);
        if (this.lateSoFar > mostLate && this.restartAt < 0) return false;
      }
      if (this.restartAt < 0) break;
    }
    this.weigh();
    return true;
  }

  /** The last plan as data, with the reasons for what has no place. */
  plan(): ShopPlan {
    const { problem } = this.compiled;
    const placed: PlannedTask[] = [];
    const unplaced: UnplacedTask[] = [];
    for (const [i, task] of problem.tasks.entries()) {
      if (this.status[i] === PLACED) placed.push(this.plannedTask(i, task.id));
      else unplaced.push({ taskId: task.id, reason: this.reasonFor(i) });
    }
    return { placed, unplaced };
  }

  private plannedTask(i: number, taskId: string): PlannedTask {
    const { problem } = this.compiled;
    const pieces = this.pieces[i] ?? [];
    const spans = pieces.flatMap((startMinute, k) =>
      k % 2 === 0 ? [{ startMinute, endMinute: pieces[k + 1] ?? startMinute }] : [],
    );
    return {
      taskId,
      personId: problem.people[this.person[i] ?? -1]?.id ?? null,
      startMinute: this.start[i] ?? 0,
      finishMinute: this.finish[i] ?? 0,
      pieces: spans,
      setUpMinutes: this.setUp[i] ?? 0,
      remedyLinkIds: (this.remedies[i] ?? []).map((link) => problem.links[link]?.id ?? ''),
    };
  }

  private reasonFor(task: number): UnplacedTask['reason'] {
    const waitsFor = this.compiled.before[task]?.find((from) => this.status[from] === UNPLACED);
    const reason = waitsFor === undefined ? null : this.compiled.problem.tasks[waitsFor];
    if (reason) return { kind: 'waits-for-unplaced', taskId: reason.id };
    return whyUnplaced(
      this.compiled,
      task,
      this.earliest(task),
      this.start,
      (from) => this.isPlaced(from),
      this.finish,
    );
  }

  private isPlaced(task: number): boolean {
    return this.status[task] === PLACED;
  }

  private begin(): void {
    this.passes++;
    this.lateSoFar = 0;
    this.batchLate.fill(0);
    this.book.reset();
    for (const profile of this.profiles) profile.reset();
    for (let i = 0; i < this.compiled.taskCount; i++) {
      this.status[i] = this.compiled.fixed[i] === 1 ? PLACED : WAITING;
    }
  }

  private place(task: number): void {
    if (this.status[task] !== WAITING) return;
    this.status[task] = ASKED;
    let isFree = true;
    for (const from of this.compiled.before[task] ?? []) {
      this.place(from);
      if (this.restartAt >= 0) return;
      if (this.status[from] === UNPLACED) isFree = false;
    }
    const from = isFree ? this.earliest(task) : NEVER;
    const isPlaced = from < NEVER && (this.keepsPlace(task, from) || this.fit(task, from));
    this.status[task] = isPlaced ? PLACED : UNPLACED;
    if (this.status[task] === PLACED) this.placeWindowed(task);
  }

  /** What has to follow within a window without remedy goes next, before others take its place. */
  private placeWindowed(task: number): void {
    for (const link of this.compiled.linksOut[task] ?? []) {
      if (link.isLeast || link.remedyMinutes >= 0 || this.status[link.to] !== WAITING) continue;
      const isNext = (this.compiled.before[link.to] ?? []).every((from) => this.status[from] === PLACED);
      if (isNext && this.restartAt < 0) this.place(link.to);
    }
  }

  /** The first start that the links from what is placed allow; NEVER where a cure is never reached. */
  private earliest(task: number): number {
    let from = this.notBefore[task] ?? 0;
    for (const link of this.compiled.linksIn[task] ?? []) {
      if (!link.isLeast || this.status[link.from] !== PLACED) continue;
      const opens = opensAt(link.lag, this.moment(link.from, link.fromFinish));
      if (opens >= NEVER) return NEVER;
      // What counts to the finish is seen to by `slip`, which knows how long the task takes there.
      if (!link.toFinish && opens > from) from = opens;
    }
    return from;
  }

  private moment(task: number, isFinish: boolean): number {
    return (isFinish ? this.finish[task] : this.start[task]) ?? 0;
  }

  /** Places a task where its pinned successors want it, or else where it can be. False where there is no place. */
  private fit(task: number, from: number): boolean {
    this.heedsPins = this.compiled.isBeforePin[task] === 1;
    if (this.heedsPins) {
      if (this.choose(task, from) && !this.breaksPin(task)) {
        this.enter(task);
        return true;
      }
      if (this.restartAt >= 0) return false;
      this.heedsPins = false;
    }
    if (!this.choose(task, from)) return false;
    this.enter(task);
    return true;
  }

  /** Enters a task that keeps its place where it was, piece by piece. False where that place is taken or closed. */
  private keepsPlace(task: number, from: number): boolean {
    const held = this.held[task] ?? null;
    if (held === null || this.floor[task] !== held.slot.start || from > held.slot.start) return false;
    const { slot, remedies } = held;
    if (this.delays[task] === 1 || this.compiled.isBeforePin[task] === 1) return false;
    if (slot.finish > this.compiled.problem.horizonMinute) return false;
    for (let i = 0; i < slot.ends; i += 2) {
      if (!this.book.isFree(slot.person, slot.pieces[i] ?? 0, slot.pieces[i + 1] ?? 0)) return false;
    }
    slot.session = slot.person < 0 ? -1 : this.book.sessionAt(slot.person, slot.start);
    const key = this.compiled.setUpKey[task] ?? -1;
    if (key >= 0 && slot.setUp === 0 && slot.session >= 0 && !this.book.isReady(slot.session, key, slot.start)) {
      if ((this.compiled.setUpMinutes[task] ?? 0) > 0) return false;
    }
    for (const link of this.compiled.linksIn[task] ?? []) {
      if (link.isLeast || this.status[link.from] !== PLACED) continue;
      const closes = closesAt(link.lag, this.moment(link.from, link.fromFinish));
      const isMissed = (link.toFinish ? slot.finish : slot.start) > closes;
      if (isMissed !== remedies.includes(link.index)) return false;
    }
    if (this.slip(task, slot) !== -1) return false;
    this.best = copyOf(slot);
    const own = this.remedies[task] ?? [];
    own.length = 0;
    own.push(...remedies);
    this.enter(task);
    return true;
  }

  private breaksPin(task: number): boolean {
    return (this.compiled.linksOut[task] ?? []).some(
      (link) =>
        link.isLeast &&
        this.compiled.fixed[link.to] === 1 &&
        this.moment(link.to, link.toFinish) < opensAt(link.lag, link.fromFinish ? this.best.finish : this.best.start),
    );
  }

  /** Writes the earliest place into `best`, with the remedies of the windows that it misses. */
  private choose(task: number, from: number): boolean {
    const remedies = this.remedies[task] ?? [];
    if (remedies.length > 0) remedies.length = 0;
    let minutes = this.compiled.attended[task] ?? 0;
    let earliest = this.delays[task] === 1 ? this.afterFirstSession(task, from, minutes) : from;
    for (;;) {
      if (!this.findBest(task, earliest, minutes)) return false;
      let added = 0;
      for (const link of this.compiled.linksIn[task] ?? []) {
        if (link.isLeast || this.status[link.from] !== PLACED) continue;
        const closes = closesAt(link.lag, this.moment(link.from, link.fromFinish));
        const planned = link.toFinish ? this.best.finish : this.best.start;
        if (planned <= closes || remedies.includes(link.index)) continue;
        if (link.remedyMinutes < 0) return this.askForLater(link.from, planned - closes);
        remedies.push(link.index);
        added += link.remedyMinutes;
      }
      if (remedies.length === 0 || added === 0) return true;
      minutes += added;
      earliest = this.best.start;
    }
  }

  /** The end of the session that a task would have, where it has a place after it too. */
  private afterFirstSession(task: number, from: number, minutes: number): number {
    if (!this.findBest(task, from, minutes) || this.best.session < 0) return from;
    const end = this.book.sessionEnd[this.best.session] ?? from;
    return this.findBest(task, end, minutes) ? end : from;
  }

  /** A window cannot be met: the task that opens it has to begin later. */
  private askForLater(from: number, byMinutes: number): false {
    if (this.compiled.fixed[from] === 1 || this.restartAt === -2) return false;
    const later = (this.start[from] ?? 0) + byMinutes;
    if (later > this.compiled.problem.horizonMinute) return false;
    this.notBefore[from] = later;
    this.restartAt = from;
    return false;
  }

  private enter(task: number): void {
    const slot = this.best;
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

  /** Writes the earliest place over all people into `best`. */
  private findBest(task: number, from: number, minutes: number): boolean {
    if (minutes === 0) return this.findAlone(task, from);
    let isFound = false;
    for (const person of this.compiled.people[task] ?? []) {
      if (!this.findFor(task, person, from, minutes, isFound ? this.best.finish : NEVER)) continue;
      if (isFound && !this.isBetterSlot(task)) continue;
      const kept = this.best;
      this.best = this.slot;
      this.slot = kept;
      isFound = true;
    }
    return isFound;
  }

  private isBetterSlot(task: number): boolean {
    if (this.slot.finish !== this.best.finish) return this.slot.finish < this.best.finish;
    const before = this.held[task]?.slot.person ?? -1;
    if (this.best.person === before || this.slot.person === before) return this.slot.person === before;
    const isUsed = this.book.used[this.slot.session] ?? 0;
    return isUsed > (this.book.used[this.best.session] ?? 0);
  }

  /** The earliest place on one person's bench; none where it would finish after `latest`. */
  private findFor(task: number, person: number, from: number, minutes: number, latest: number): boolean {
    let earliest = from;
    for (;;) {
      if (earliest + minutes > latest || !this.book.find(task, person, earliest, minutes, this.slot)) return false;
      if (this.slot.finish > latest) return false;
      if (this.slot.finish > this.compiled.problem.horizonMinute) return false;
      const later = this.slip(task, this.slot);
      if (later >= NEVER) return false;
      if (later < 0) return true;
      earliest = later;
    }
  }

  private findAlone(task: number, from: number): boolean {
    const slot = this.best;
    slot.person = -1;
    slot.session = -1;
    slot.setUp = 0;
    slot.ends = 0;
    let earliest = from;
    for (;;) {
      slot.start = earliest;
      slot.finish = earliest;
      if (earliest > this.compiled.problem.horizonMinute) return false;
      const later = this.slip(task, slot);
      if (later >= NEVER) return false;
      if (later < 0) return true;
      earliest = later;
    }
  }

  /** -1 where a slot's resources and links allow it; else the next start worth trying. */
  private slip(task: number, slot: BenchSlot): number {
    let later = -1;
    for (const hold of this.compiled.holds[task] ?? []) {
      const until = opensAt(hold.until, slot.finish);
      if (until >= NEVER) return NEVER;
      if (until <= slot.start || hold.amount === 0) continue;
      const blocked = this.profiles[hold.resource]?.blockedUntil(slot.start, until, hold.amount) ?? -1;
      later = Math.max(later, blocked);
    }
    for (const link of this.compiled.linksIn[task] ?? []) {
      if (!link.isLeast || !link.toFinish || this.status[link.from] !== PLACED) continue;
      const opens = opensAt(link.lag, this.moment(link.from, link.fromFinish));
      if (slot.finish < opens) later = Math.max(later, slot.start + opens - slot.finish);
    }
    return this.slipBeforePlaced(task, slot, later);
  }

  /** What a task owes to what is placed although it comes after it: pinned tasks, and lags that run backwards. */
  private slipBeforePlaced(task: number, slot: BenchSlot, slipped: number): number {
    let later = slipped;
    for (const link of this.compiled.linksOut[task] ?? []) {
      const isPin = this.compiled.fixed[link.to] === 1;
      if (this.status[link.to] !== PLACED || (isPin && !this.heedsPins)) continue;
      const to = this.moment(link.to, link.toFinish);
      const from = link.fromFinish ? slot.finish : slot.start;
      if (!link.isLeast) {
        const late = to - closesAt(link.lag, from);
        if (late > 0) later = Math.max(later, slot.start + late);
      } else if (!isPin && to < opensAt(link.lag, from)) return NEVER;
    }
    return later;
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
    this.lateSoFar += late - was;
  }

  private weigh(): void {
    const { compiled, value } = this;
    value.fill(0);
    this.batchReady.fill(Number.NEGATIVE_INFINITY);
    const { horizonMinute, batches } = compiled.problem;
    for (let i = 0; i < compiled.taskCount; i++) {
      const batch = compiled.batchOf[i] ?? 0;
      let ready = horizonMinute;
      if (this.status[i] === PLACED) {
        const lag = compiled.readyAfter[i];
        const own = lag === undefined ? NEVER : opensAt(lag, this.finish[i] ?? 0);
        if (own < NEVER) ready = own;
        if (compiled.fixed[i] === 0 || compiled.problem.tasks[i]?.state.kind === 'pinned') {
          value[2] = (value[2] ?? 0) + (this.remedies[i]?.length ?? 0);
          if ((this.setUp[i] ?? 0) > 0) value[4] = (value[4] ?? 0) + 1;
        }
        if (compiled.fixed[i] === 1) value[0] = (value[0] ?? 0) + this.brokenInto(i);
      } else {
        value[0] = (value[0] ?? 0) + 1;
      }
      if (ready > (this.batchReady[batch] ?? 0)) this.batchReady[batch] = ready;
    }
    for (let b = 0; b < batches.length; b++) {
      const ready = this.batchReady[b] ?? 0;
      const due = batches[b]?.dueMinute ?? null;
      if (due !== null && ready > due) value[1] = (value[1] ?? 0) + (ready - due) * (batches[b]?.weight ?? 0);
      if (ready > (value[5] ?? 0)) value[5] = ready;
    }
    for (let s = 0; s < this.book.sessionCount; s++) value[3] = (value[3] ?? 0) + (this.book.used[s] ?? 0);
  }

  /** How many links into a pinned task are not kept. */
  private brokenInto(task: number): number {
    const kind = this.compiled.problem.tasks[task]?.state.kind;
    if (kind !== 'pinned') return 0;
    let broken = 0;
    for (const link of this.compiled.linksIn[task] ?? []) {
      if (this.status[link.from] !== PLACED) continue;
      const from = this.moment(link.from, link.fromFinish);
      const to = this.moment(task, link.toFinish);
      if (link.isLeast ? to < opensAt(link.lag, from) : to > closesAt(link.lag, from)) broken++;
    }
    return broken;
  }
}

function copyOf(slot: BenchSlot): BenchSlot {
  return { ...slot, pieces: [...slot.pieces] };
}

function emptySlot(): BenchSlot {
  return { person: -1, start: 0, finish: 0, setUp: 0, session: -1, pieces: [], ends: 0 };
}
