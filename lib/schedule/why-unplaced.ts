import { type CompiledProblem, closesAt, NEVER, opensAt } from '@/lib/schedule/compiled-problem';
import type { UnplacedReason } from '@/lib/schedule/shop-plan';

/** Why a task whose predecessors are placed has no place: the narrowest reason that holds by itself. */
export function whyUnplaced(
  compiled: CompiledProblem,
  task: number,
  earliest: number,
  start: Int32Array,
  isPlaced: (task: number) => boolean,
  finish: Int32Array,
): UnplacedReason {
  const { problem } = compiled;
  const neededMinutes = (compiled.attended[task] ?? 0) + (compiled.setUpMinutes[task] ?? 0);
  const people = compiled.people[task] ?? [];
  if ((compiled.attended[task] ?? 0) > 0) {
    if (people.length === 0) return { kind: 'nobody-may' };
    const sessions = people.flatMap((p) => problem.people[p]?.sessions ?? []);
    const longestMinutes = Math.max(0, ...sessions.map((s) => s.endMinute - s.startMinute));
    if (compiled.leastPiece[task] === 0 && longestMinutes < neededMinutes) {
      return { kind: 'no-session-long-enough', neededMinutes, longestMinutes };
    }
  }
  for (const hold of compiled.holds[task] ?? []) {
    const resource = problem.resources[hold.resource];
    if (resource === undefined) continue;
    const most = Math.max(resource.capacity, ...resource.changes.map(({ capacity }) => capacity));
    if (most < hold.amount) return { kind: 'resource-too-small', resourceId: resource.id, amount: hold.amount, most };
    if (opensAt(hold.until, earliest) >= NEVER) return { kind: 'never-cured', linkId: null };
  }
  if (earliest >= NEVER) {
    const links = compiled.linksIn[task] ?? [];
    const never = links.find(
      (link) => link.isLeast && opensAt(link.lag, (link.fromFinish ? finish : start)[link.from] ?? 0) >= NEVER,
    );
    return { kind: 'never-cured', linkId: never === undefined ? null : (problem.links[never.index]?.id ?? null) };
  }
  const window = (compiled.linksIn[task] ?? []).find(
    (link) =>
      !link.isLeast &&
      link.remedyMinutes < 0 &&
      isPlaced(link.from) &&
      closesAt(link.lag, (link.fromFinish ? finish : start)[link.from] ?? 0) < problem.horizonMinute,
  );
  if (window !== undefined) return { kind: 'window-cannot-be-met', linkId: problem.links[window.index]?.id ?? '' };
  return { kind: 'no-room-before-horizon' };
}
