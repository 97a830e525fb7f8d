import { type CompiledProblem, closesAt, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { DraftMemory } from '@/lib/schedule/draft-memory';
import { LEVEL_COUNT, weighDraft } from '@/lib/schedule/draft-value';
import { type HeldSlot, PlaceSearch } from '@/lib/schedule/place-search';
import { ASKED, PLACED, PlanDraft, UNPLACED, WAITING } from '@/lib/schedule/plan-draft';
import { planOfDraft } from '@/lib/schedule/plan-of-draft';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { type TaskLinks, taskLinks } from '@/lib/schedule/task-links';

/** How often one decoding may begin again because a window without a remedy asks for a later start before it. */
const MOST_RESTARTS = 12;

/** No place of before that a task would keep. */
export const NO_FLOOR = -NEVER;

/**
 * Turns an order of the open tasks into a plan: each task in turn, with those it waits for before it, at the earliest
 * minute at which its links, one person's bench and all resources allow it (serial schedule generation). A window
 * that is missed is remedied at its price; one without remedy makes the task before it begin later, and where that
 * does not help the task stays without a place. Buffers are reused: one decoder makes one plan at a time.
 */
export class PlanDecoder {
  /** The value of the last plan, level by level. */
  readonly value = new Float64Array(LEVEL_COUNT);
  /** Schedules generated so far: passes over all tasks, those begun again included. */
  passes = 0;
  /** 1: the task's earliest session is passed over. */
  readonly delays: Uint8Array;
  /** Not before it: the place that a task keeps where it can. */
  readonly floor: Int32Array;
  /** Each task's place in the plan that holds; null: it has none. */
  readonly held: (HeldSlot | null)[];
  private readonly draft: PlanDraft;
  private readonly search: PlaceSearch;
  private readonly memory: DraftMemory;
  private readonly links: TaskLinks;
  private readonly notBefore: Int32Array;
  private readonly batchReady: Float64Array;
  private restartAt = -1;

  constructor(readonly compiled: CompiledProblem) {
    const n = compiled.taskCount;
    this.floor = new Int32Array(n).fill(NO_FLOOR);
    this.held = new Array<HeldSlot | null>(n).fill(null);
    this.delays = new Uint8Array(n);
    this.notBefore = new Int32Array(n);
    this.batchReady = new Float64Array(compiled.problem.batches.length);
    this.draft = new PlanDraft(compiled);
    this.links = taskLinks(compiled);
    this.search = new PlaceSearch(this.draft, this.held, this.links);
    this.memory = new DraftMemory(this.draft, this.delays, this.floor);
  }

  /** When each task starts in the last plan. */
  get start(): Int32Array {
    return this.draft.start;
  }

  /** What each batch is late in the last plan that was weighed, in weighted minutes. */
  get batchLate(): Float64Array {
    return this.draft.batchLate;
  }

  /**
   * Makes the plan of an order of the open tasks. Each call is one schedule generated. False, with nothing to be read
   * from it, as soon as what is placed alone is later than `mostLate` weighted minutes.
   */
  decode(order: ArrayLike<number>, mostLate = Number.POSITIVE_INFINITY): boolean {
    return this.generate(order, mostLate, null);
  }

  /**
   * The same plan as `decode` makes, from where the order first differs from the one that was settled on: for the
   * value alone, not for `plan`.
   */
  weigh(order: ArrayLike<number>, mostLate: number): boolean {
    return this.generate(order, mostLate, this.memory);
  }

  /** What is weighed from now on differs little from this order, with the delays and floors of now. */
  settleOn(order: ArrayLike<number>): void {
    this.memory.settleOn(order);
  }

  private generate(order: ArrayLike<number>, mostLate: number, memory: DraftMemory | null): boolean {
    const { open } = this.compiled;
    this.draft.countsLate = memory !== null || mostLate < Number.POSITIVE_INFINITY;
    for (const task of open) this.notBefore[task] = Math.max(this.compiled.release[task] ?? 0, this.floor[task] ?? 0);
    for (let attempt = 0; attempt <= MOST_RESTARTS; attempt++) {
      this.restartAt = attempt === MOST_RESTARTS ? -2 : -1;
      this.passes++;
      const known = attempt === 0 ? memory : null;
      let first = 0;
      if (known === null) this.draft.reset();
      else first = known.begin(order);
      for (let i = first; i < order.length && this.restartAt < 0; i++) {
        if (known !== null && i <= known.common) known.note(i);
        this.place(order[i] ?? 0);
        if (this.draft.late > mostLate && this.restartAt < 0) return false;
      }
      if (this.restartAt < 0) break;
    }
    weighDraft(this.draft, this.batchReady, this.value);
    return true;
  }

  /** The last plan as data, with the reasons for what has no place. */
  plan(): ShopPlan {
    return planOfDraft(this.draft, (task) => this.earliest(task));
  }

  private place(task: number): void {
    const { status } = this.draft;
    if (status[task] !== WAITING) return;
    status[task] = ASKED;
    let isFree = true;
    for (const from of this.compiled.before[task] ?? []) {
      this.place(from);
      if (this.restartAt >= 0) return;
      if (status[from] === UNPLACED) isFree = false;
    }
    const from = isFree ? this.earliest(task) : NEVER;
    const isPlaced = from < NEVER && (this.keepsPlace(task, from) || this.fit(task, from));
    status[task] = isPlaced ? PLACED : UNPLACED;
    if (isPlaced) this.placeWindowed(task);
  }

  /** What has to follow within a window without remedy goes next, before others take its place. */
  private placeWindowed(task: number): void {
    const { status } = this.draft;
    for (const link of this.links.mustFollow[task] ?? []) {
      if (status[link.to] !== WAITING) continue;
      const isNext = (this.compiled.before[link.to] ?? []).every((from) => status[from] === PLACED);
      if (isNext && this.restartAt < 0) this.place(link.to);
    }
  }

  /** The first start that the links from what is placed allow; NEVER where a cure is never reached. */
  private earliest(task: number): number {
    let from = this.notBefore[task] ?? 0;
    for (const link of this.links.least[task] ?? []) {
      if (this.draft.status[link.from] !== PLACED) continue;
      const opens = opensAt(link.lag, this.draft.fromMoment(link));
      if (opens >= NEVER) return NEVER;
      // What counts to the finish is seen to by `slip`, which knows how long the task takes there.
      if (!link.toFinish && opens > from) from = opens;
    }
    return from;
  }

  /** Places a task where its pinned successors want it, or else where it can be. False where there is no place. */
  private fit(task: number, from: number): boolean {
    const { search } = this;
    search.heedsPins = this.compiled.isBeforePin[task] === 1;
    if (search.heedsPins) {
      if (this.choose(task, from) && !this.breaksPin(task)) {
        this.draft.enter(task, search.best);
        return true;
      }
      if (this.restartAt >= 0) return false;
      search.heedsPins = false;
    }
    if (!this.choose(task, from)) return false;
    this.draft.enter(task, search.best);
    return true;
  }

  /** Enters a task that keeps its place where it was, piece by piece. False where that place is taken or closed. */
  private keepsPlace(task: number, from: number): boolean {
    const held = this.held[task] ?? null;
    if (held === null || this.floor[task] !== held.slot.start || from > held.slot.start) return false;
    const { slot, remedies } = held;
    if (this.delays[task] === 1 || this.compiled.isBeforePin[task] === 1) return false;
    if (slot.finish > this.compiled.problem.horizonMinute) return false;
    const { book } = this.draft;
    for (let i = 0; i < slot.ends; i += 2) {
      if (!book.isFree(slot.person, slot.pieces[i] ?? 0, slot.pieces[i + 1] ?? 0)) return false;
    }
    slot.session = slot.person < 0 ? -1 : book.sessionAt(slot.person, slot.start);
    const key = this.compiled.setUpKey[task] ?? -1;
    if (key >= 0 && slot.setUp === 0 && slot.session >= 0 && !book.isReady(slot.session, key, slot.start)) {
      if ((this.compiled.setUpMinutes[task] ?? 0) > 0) return false;
    }
    for (const link of this.links.windows[task] ?? []) {
      if (this.draft.status[link.from] !== PLACED) continue;
      const isMissed = (link.toFinish ? slot.finish : slot.start) > closesAt(link.lag, this.draft.fromMoment(link));
      if (isMissed !== remedies.includes(link.index)) return false;
    }
    if (this.search.slip(task, slot) !== -1) return false;
    const own = this.draft.remedies[task] ?? [];
    own.length = 0;
    own.push(...remedies);
    this.draft.enter(task, slot);
    return true;
  }

  private breaksPin(task: number): boolean {
    const { best } = this.search;
    return (this.compiled.linksOut[task] ?? []).some(
      (link) =>
        link.isLeast &&
        this.compiled.fixed[link.to] === 1 &&
        this.draft.toMoment(link) < opensAt(link.lag, link.fromFinish ? best.finish : best.start),
    );
  }

  /** Finds the earliest place, with the remedies of the windows that it misses. */
  private choose(task: number, from: number): boolean {
    const { search } = this;
    const remedies = this.draft.remedies[task] ?? [];
    if (remedies.length > 0) remedies.length = 0;
    let minutes = this.compiled.attended[task] ?? 0;
    let earliest = this.delays[task] === 1 ? search.afterFirstSession(task, from, minutes) : from;
    for (;;) {
      if (!search.findBest(task, earliest, minutes)) return false;
      const { best } = search;
      let added = 0;
      for (const link of this.links.windows[task] ?? []) {
        if (this.draft.status[link.from] !== PLACED) continue;
        const closes = closesAt(link.lag, this.draft.fromMoment(link));
        const planned = link.toFinish ? best.finish : best.start;
        if (planned <= closes || remedies.includes(link.index)) continue;
        if (link.remedyMinutes < 0) return this.askForLater(link.from, planned - closes);
        remedies.push(link.index);
        added += link.remedyMinutes;
      }
      if (remedies.length === 0 || added === 0) return true;
      minutes += added;
      earliest = best.start;
    }
  }

  /** A window cannot be met: the task that opens it has to begin later. */
  private askForLater(from: number, byMinutes: number): false {
    if (this.compiled.fixed[from] === 1 || this.restartAt === -2) return false;
    const later = (this.draft.start[from] ?? 0) + byMinutes;
    if (later > this.compiled.problem.horizonMinute) return false;
    this.notBefore[from] = later;
    this.restartAt = from;
    return false;
  }
}
