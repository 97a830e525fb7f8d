import type { BenchBook, BenchSlot } from '@/lib/schedule/bench-book';
import { type CompiledProblem, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { FreeProfile } from '@/lib/schedule/free-profile';

/** A minute before everything. */
const EVER = -NEVER;

/** Enters what happened and what is pinned, in order of their starts, and hands each one's slot over. */
export function enterFixed(
  compiled: CompiledProblem,
  book: BenchBook,
  take: (task: number, person: number, slot: BenchSlot) => void,
): void {
  const fixed = compiled.problem.tasks
    .flatMap(({ state }, i) => (state.kind === 'open' ? [] : [{ i, state }]))
    // What happened comes before what is wanted: it may have paid for a set-up.
    .sort((a, b) => a.state.startMinute - b.state.startMinute || (a.state.kind === 'pinned' ? 1 : -1));
  for (const { i, state } of fixed) {
    const named = state.personId === null ? -1 : compiled.problem.people.findIndex(({ id }) => id === state.personId);
    if (state.kind === 'pinned') enterPinned(compiled, book, i, state.startMinute, named, take);
    else {
      const { startMinute: start, finishMinute: finish } = state;
      const isUnderWay = state.kind === 'under-way';
      const session = named < 0 ? -1 : book.sessionAt(named, start);
      const key = compiled.setUpKey[i] ?? -1;
      if (session >= 0 && key >= 0) book.makeReady(session, key, start);
      if (isUnderWay && named >= 0) book.block(named, start, finish, false);
      const pieces = isUnderWay && named >= 0 && finish > start ? [start, finish] : [];
      take(i, named, { person: named, start, finish, setUp: 0, session, pieces, ends: pieces.length });
    }
  }
}

function enterPinned(
  compiled: CompiledProblem,
  book: BenchBook,
  task: number,
  start: number,
  named: number,
  take: (task: number, person: number, slot: BenchSlot) => void,
): void {
  const minutes = compiled.attended[task] ?? 0;
  if (minutes === 0) {
    take(task, named, { person: named, start, finish: start, setUp: 0, session: -1, pieces: [], ends: 0 });
    return;
  }
  const slot: BenchSlot = { person: -1, start: 0, finish: 0, setUp: 0, session: -1, pieces: [], ends: 0 };
  const candidates = named >= 0 ? [named] : (compiled.people[task] ?? []);
  const isFree = (person: number) => book.find(task, person, start, minutes, slot) && slot.start === start;
  const person = candidates.find(isFree) ?? candidates[0] ?? -1;
  if (person < 0 || !isFree(person)) {
    // In conflict: it stays where the maker wants it, and the checker says with what.
    const session = person < 0 ? -1 : book.sessionAt(person, start);
    const key = compiled.setUpKey[task] ?? -1;
    const isPaid = key < 0 || (session >= 0 && book.isReady(session, key, start));
    const setUp = isPaid ? 0 : (compiled.setUpMinutes[task] ?? 0);
    const finish = start + minutes + setUp;
    Object.assign(slot, { person, start, finish, setUp, session, pieces: [start, finish], ends: 2 });
  }
  if (person >= 0) book.enter(task, slot);
  take(task, person, slot);
}

/** The resources' free places with all that fixed tasks hold taken off. */
export function baseProfiles(compiled: CompiledProblem, start: Int32Array, finish: Int32Array): readonly FreeProfile[] {
  const { resources } = compiled.problem;
  return resources.map((resource, r) => {
    const times = Int32Array.from([EVER, ...resource.changes.map(({ fromMinute }) => fromMinute)]);
    const free = Int32Array.from([resource.capacity, ...resource.changes.map(({ capacity }) => capacity)]);
    let holdCount = 0;
    let fixedCount = 0;
    for (let i = 0; i < compiled.taskCount; i++) {
      const count = (compiled.holds[i] ?? []).filter((hold) => hold.resource === r).length;
      if (compiled.fixed[i] === 1) fixedCount += count;
      else holdCount += count;
    }
    const profile = new FreeProfile(times, free, fixedCount);
    for (let i = 0; i < compiled.taskCount; i++) {
      if (compiled.fixed[i] !== 1) continue;
      for (const hold of compiled.holds[i] ?? []) {
        if (hold.resource !== r) continue;
        profile.take(start[i] ?? 0, opensAt(hold.until, finish[i] ?? 0), hold.amount);
      }
    }
    const steps = profile.steps();
    return new FreeProfile(steps.times, steps.free, holdCount);
  });
}
