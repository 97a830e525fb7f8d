import type { BenchSlot } from '@/lib/schedule/bench-book';
import { type CompiledProblem, closesAt, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { PLACED, type PlanDraft } from '@/lib/schedule/plan-draft';
import type { TaskLinks } from '@/lib/schedule/task-links';

/** Where a task was in the plan that holds, with the indices of the links that it remedies. */
export interface HeldSlot {
  readonly slot: BenchSlot;
  readonly remedies: readonly number[];
}

/** Looks for the earliest place of one task in a draft: on one person's bench, where links and resources allow it. */
export class PlaceSearch {
  /** The last place that was found. */
  best: BenchSlot = emptySlot();
  /** Whether a place has to leave the pinned tasks after it theirs. */
  heedsPins = false;
  private slot: BenchSlot = emptySlot();
  private readonly compiled: CompiledProblem;

  constructor(
    private readonly draft: PlanDraft,
    /** Each task's place in the plan that holds; null: it has none. */
    private readonly held: readonly (HeldSlot | null)[],
    private readonly links: TaskLinks,
  ) {
    this.compiled = draft.compiled;
  }

  /** Writes the earliest place over all people into `best`. False where there is none. */
  findBest(task: number, from: number, minutes: number): boolean {
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

  /** The end of the session that a task would have, where it has a place after it too; else `from`. */
  afterFirstSession(task: number, from: number, minutes: number): number {
    if (!this.findBest(task, from, minutes) || this.best.session < 0) return from;
    const end = this.draft.book.sessionEnd[this.best.session] ?? from;
    return this.findBest(task, end, minutes) ? end : from;
  }

  /** -1 where a slot's resources and links allow it; else the next start worth trying. */
  slip(task: number, slot: BenchSlot): number {
    let later = -1;
    for (const hold of this.compiled.holds[task] ?? []) {
      const until = opensAt(hold.until, slot.finish);
      if (until >= NEVER) return NEVER;
      if (until <= slot.start || hold.amount === 0) continue;
      const blocked = this.draft.profiles[hold.resource]?.blockedUntil(slot.start, until, hold.amount) ?? -1;
      later = Math.max(later, blocked);
    }
    for (const link of this.links.leastToFinish[task] ?? []) {
      if (this.draft.status[link.from] !== PLACED) continue;
      const opens = opensAt(link.lag, this.draft.fromMoment(link));
      if (slot.finish < opens) later = Math.max(later, slot.start + opens - slot.finish);
    }
    return this.links.backward[task]?.length === 0 ? later : this.slipBeforePlaced(task, slot, later);
  }

  private isBetterSlot(task: number): boolean {
    if (this.slot.finish !== this.best.finish) return this.slot.finish < this.best.finish;
    const before = this.held[task]?.slot.person ?? -1;
    if (this.best.person === before || this.slot.person === before) return this.slot.person === before;
    const { used } = this.draft.book;
    return (used[this.slot.session] ?? 0) > (used[this.best.session] ?? 0);
  }

  /** The earliest place on one person's bench; none where it would finish after `latest`. */
  private findFor(task: number, person: number, from: number, minutes: number, latest: number): boolean {
    const last = Math.min(latest, this.compiled.problem.horizonMinute);
    let earliest = from;
    for (;;) {
      if (earliest + minutes > last || !this.draft.book.find(task, person, earliest, minutes, this.slot)) return false;
      if (this.slot.finish > last) return false;
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

  /** What a task owes to what is placed although it comes after it: pinned tasks, and lags that run backwards. */
  private slipBeforePlaced(task: number, slot: BenchSlot, slipped: number): number {
    let later = slipped;
    for (const link of this.links.backward[task] ?? []) {
      if (this.draft.status[link.to] !== PLACED) continue;
      const isPin = this.compiled.fixed[link.to] === 1;
      if (isPin && !this.heedsPins) continue;
      const to = this.draft.toMoment(link);
      const from = link.fromFinish ? slot.finish : slot.start;
      if (!link.isLeast) {
        const late = to - closesAt(link.lag, from);
        if (late > 0) later = Math.max(later, slot.start + late);
      } else if (!isPin && to < opensAt(link.lag, from)) return NEVER;
    }
    return later;
  }
}

function emptySlot(): BenchSlot {
  return { person: -1, start: 0, finish: 0, setUp: 0, session: -1, pieces: [], ends: 0 };
}
