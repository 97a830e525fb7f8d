import { checkPlan } from '@/lib/schedule/check-plan';
import { type CompiledProblem, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import { NO_FLOOR, type PlanDecoder } from '@/lib/schedule/plan-decoder';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { routeOrder } from '@/lib/schedule/task-order';

/** How often a task that lost its place to others is put behind them, one at a time and then all. Chosen: some ms. */
const ONE_BY_ONE = 60;
const MOST_ROUNDS = 64;

/**
 * The open tasks in the order that moves few of them against a plan that holds no longer: those that can stay, each
 * not before its place, in the order of their places; then those that cannot, into the gaps. Writes the places into
 * the decoder's floors. null where the plan holds as it is.
 */
export function keepingOrder(
  decoder: PlanDecoder,
  held: ShopPlan,
  heldStart: Int32Array,
  heldOrder: readonly number[],
): { readonly order: readonly number[]; readonly isBroken: boolean } {
  const { compiled } = decoder;
  const moved = movedByNeed(compiled, held, heldStart);
  const isBroken = moved.size > 0;
  const parted = () => [
    ...heldOrder.filter((task) => !moved.has(task)),
    ...heldOrder.filter((task) => moved.has(task)),
  ];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const order = parted();
    for (const task of compiled.open) decoder.floor[task] = moved.has(task) ? NO_FLOOR : (heldStart[task] ?? NO_FLOOR);
    decoder.decode(order);
    const pushed = heldOrder.filter((task) => !moved.has(task) && decoder.start[task] !== heldStart[task]);
    if (pushed.length === 0) return { order, isBroken };
    // What comes after the first one may be pushed by it alone.
    for (const task of round < ONE_BY_ONE ? pushed.slice(0, 1) : pushed) moved.add(task);
  }
  return { order: parted(), isBroken };
}

/** Tasks that cannot stay: without a place, at fault in their place, or after one of those. */
function movedByNeed(compiled: CompiledProblem, held: ShopPlan, heldStart: Int32Array): Set<number> {
  const { problem } = compiled;
  const index = new Map(problem.tasks.map(({ id }, i) => [id, i]));
  const moved = new Set<number>();
  for (const violation of checkPlan(problem, held)) {
    // Of those that clash the last one named comes later.
    const last = violation.taskIds.map((id) => index.get(id) ?? -1).findLast((task) => compiled.fixed[task] === 0);
    if (last !== undefined) moved.add(last);
  }
  const at = Int32Array.from(heldStart);
  for (const task of routeOrder(compiled)) {
    if (compiled.fixed[task] === 1) {
      const state = problem.tasks[task]?.state;
      if (state !== undefined && state.kind !== 'open') at[task] = state.startMinute;
      continue;
    }
    for (const link of compiled.linksIn[task] ?? []) {
      if (!link.isLeast || link.toFinish || (at[link.from] ?? -1) < 0) continue;
      const opens = opensAt(link.lag, (at[link.from] ?? 0) + (link.fromFinish ? lengthOf(compiled, link.from) : 0));
      if (opens < NEVER && opens > (at[task] ?? 0)) at[task] = opens;
    }
    if (at[task] !== heldStart[task]) moved.add(task);
  }
  return moved;
}

function lengthOf(compiled: CompiledProblem, task: number): number {
  const state = compiled.problem.tasks[task]?.state;
  const isHistory = state?.kind === 'done' || state?.kind === 'under-way';
  return isHistory ? state.finishMinute - state.startMinute : (compiled.attended[task] ?? 0);
}

/** Tells the decoder where each open task is in the plan that holds, as long as it is as long as it was. */
export function enterHeld(decoder: PlanDecoder, held: ShopPlan): void {
  const { compiled } = decoder;
  const { people, links, tasks } = compiled.problem;
  const places = new Map(held.placed.map((place) => [place.taskId, place]));
  const personIndex = new Map(people.map(({ id }, i) => [id, i]));
  const linkIndex = new Map(links.map((link, i) => [link.id, { link, i }]));
  for (const task of compiled.open) {
    const place = places.get(tasks[task]?.id ?? '');
    if (place === undefined) continue;
    const person = personIndex.get(place.personId ?? '') ?? -1;
    const remedied = [...new Set(place.remedyLinkIds)].flatMap((id) => {
      const known = linkIndex.get(id);
      return known?.link.toTaskId === place.taskId ? [known] : [];
    });
    const added = remedied.reduce(
      (sum, { link }) => sum + (link.kind === 'greatest' ? (link.remedy?.minutes ?? 0) : 0),
      0,
    );
    const planned = place.pieces.reduce((sum, piece) => sum + piece.endMinute - piece.startMinute, 0);
    const isSame = planned === (compiled.attended[task] ?? 0) + place.setUpMinutes + added;
    const mayDo = planned === 0 || (compiled.people[task] ?? []).includes(person);
    const paid = place.setUpMinutes === 0 || place.setUpMinutes === compiled.setUpMinutes[task];
    const least = compiled.leastPiece[task] ?? 0;
    const isWhole =
      place.pieces.length <= 1 ||
      (least > 0 && place.pieces.slice(0, -1).every((piece) => piece.endMinute - piece.startMinute >= least));
    if (!isSame || !mayDo || !paid || !isWhole || remedied.length !== place.remedyLinkIds.length) continue;
    const pieces = place.pieces.flatMap(({ startMinute, endMinute }) => [startMinute, endMinute]);
    const slot = {
      person: planned === 0 ? -1 : person,
      start: place.startMinute,
      finish: place.finishMinute,
      setUp: place.setUpMinutes,
      session: -1,
      pieces,
      ends: pieces.length,
    };
    decoder.held[task] = { slot, remedies: remedied.map(({ i }) => i) };
  }
}
