import { type Lag, type LagTable, openingMinute } from '@/lib/schedule/lag';
import type { PlanningProblem, Resource } from '@/lib/schedule/planning-problem';
import type { TaskPlace } from '@/lib/schedule/task-place';
import type { Violation } from '@/lib/schedule/violation';

interface HeldSpan {
  readonly taskId: string;
  readonly amount: number;
  readonly startMinute: number;
  readonly endMinute: number;
}

/** No resource is held by more than it has, at any minute from now on. */
export function holdViolations(problem: PlanningProblem, places: ReadonlyMap<string, TaskPlace>): readonly Violation[] {
  const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  const violations: Violation[] = [];
  const spans = new Map<string, HeldSpan[]>(problem.resources.map((resource) => [resource.id, []]));
  for (const { task, place } of places.values()) {
    for (const hold of task.holds) {
      const endMinute = minuteAfter(tables, hold.until, place.finishMinute);
      if (endMinute === null) {
        violations.push({ kind: 'hold-without-end', taskIds: [task.id], resourceId: hold.resourceId });
      } else if (endMinute > place.startMinute) {
        const span = { taskId: task.id, amount: hold.amount, startMinute: place.startMinute, endMinute };
        spans.get(hold.resourceId)?.push(span);
      }
    }
  }
  for (const resource of problem.resources) {
    violations.push(...overCapacity(resource, spans.get(resource.id) ?? [], problem.nowMinute));
  }
  return violations;
}

/** The first minute not before `from + lag`; null: a table that does not reach that far. */
export function minuteAfter(tables: ReadonlyMap<string, LagTable>, lag: Lag, from: number): number | null {
  if (lag.kind === 'fixed') return from + lag.minutes;
  const table = tables.get(lag.tableId);
  return table === undefined ? null : openingMinute(table, from);
}

/** One violation for each stretch over which the same tasks hold too much. */
function overCapacity(resource: Resource, spans: readonly HeldSpan[], nowMinute: number): readonly Violation[] {
  const moments = new Set<number>([nowMinute]);
  for (const { startMinute } of spans) moments.add(startMinute);
  for (const { fromMinute } of resource.changes) moments.add(fromMinute);
  const ordered = [...moments].filter((minute) => minute >= nowMinute).sort((a, b) => a - b);
  const byStart = [...spans].sort((a, b) => a.startMinute - b.startMinute);
  const violations: Violation[] = [];
  let active: HeldSpan[] = [];
  let next = 0;
  for (const atMinute of ordered) {
    for (let span = byStart[next]; span !== undefined && span.startMinute <= atMinute; span = byStart[++next]) {
      active.push(span);
    }
    active = active.filter((span) => span.endMinute > atMinute);
    const held = active.reduce((sum, span) => sum + span.amount, 0);
    const capacity = capacityAt(resource, atMinute);
    if (held <= capacity) continue;
    const taskIds = active.filter((span) => span.amount > 0).map((span) => span.taskId);
    violations.push({ kind: 'over-capacity', taskIds, resourceId: resource.id, atMinute, held, capacity });
  }
  return violations;
}

/** How many places of a resource there are at a minute. */
export function capacityAt(resource: Resource, minute: number): number {
  return resource.changes.findLast((change) => change.fromMinute <= minute)?.capacity ?? resource.capacity;
}
