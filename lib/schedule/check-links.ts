import { minuteAfter } from '@/lib/schedule/check-holds';
import { closingMinute, type LagTable } from '@/lib/schedule/lag';
import type { Link, PlanningProblem } from '@/lib/schedule/planning-problem';
import type { TaskPlace } from '@/lib/schedule/task-place';
import type { Violation } from '@/lib/schedule/violation';

/** Least and greatest lags kept, and a remedy done exactly where a window was missed. */
export function linkViolations(problem: PlanningProblem, places: ReadonlyMap<string, TaskPlace>): readonly Violation[] {
  const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  const violations: Violation[] = [];
  const remediable = new Set<string>();
  for (const link of problem.links) {
    if (link.kind === 'greatest' && link.remedy !== null) remediable.add(`${link.id}\n${link.toTaskId}`);
    const from = places.get(link.fromTaskId);
    const to = places.get(link.toTaskId);
    if (from === undefined || to === undefined) continue;
    if (to.task.state.kind === 'done' || to.task.state.kind === 'under-way') continue;
    const violation = link.kind === 'least' ? leastLag(link, tables, from, to) : greatestLag(link, tables, from, to);
    if (violation !== null) violations.push(violation);
  }
  for (const { task, place } of places.values()) {
    if (task.state.kind === 'done' || task.state.kind === 'under-way') continue;
    for (const linkId of place.remedyLinkIds) {
      const isOwn = remediable.has(`${linkId}\n${task.id}`);
      const isDoubled = place.remedyLinkIds.indexOf(linkId) !== place.remedyLinkIds.lastIndexOf(linkId);
      if (!isOwn || isDoubled) violations.push({ kind: 'wrong-remedy', taskIds: [task.id], linkId });
    }
  }
  return violations;
}

type Tables = ReadonlyMap<string, LagTable>;

function leastLag(link: Link, tables: Tables, from: TaskPlace, to: TaskPlace): Violation | null {
  const plannedMinute = momentOf(to, link.to);
  const notBeforeMinute = minuteAfter(tables, link.lag, momentOf(from, link.from));
  if (notBeforeMinute !== null && plannedMinute >= notBeforeMinute) return null;
  return {
    kind: 'least-lag',
    taskIds: [from.task.id, to.task.id],
    linkId: link.id,
    notBeforeMinute,
    plannedMinute,
  };
}

function greatestLag(
  link: Extract<Link, { kind: 'greatest' }>,
  tables: Tables,
  from: TaskPlace,
  to: TaskPlace,
): Violation | null {
  const taskIds = [from.task.id, to.task.id];
  const plannedMinute = momentOf(to, link.to);
  const notAfterMinute = closes(link, tables, momentOf(from, link.from));
  const isMissed = notAfterMinute !== null && plannedMinute > notAfterMinute;
  const isRemedied = to.place.remedyLinkIds.includes(link.id);
  if (link.remedy === null) {
    return isMissed ? { kind: 'greatest-lag', taskIds, linkId: link.id, notAfterMinute, plannedMinute } : null;
  }
  if (isMissed === isRemedied) return null;
  if (!isMissed) return { kind: 'wrong-remedy', taskIds: [to.task.id], linkId: link.id };
  return { kind: 'greatest-lag', taskIds, linkId: link.id, notAfterMinute, plannedMinute };
}

function closes(link: Link, tables: Tables, from: number): number | null {
  if (link.lag.kind === 'fixed') return from + link.lag.minutes;
  const table = tables.get(link.lag.tableId);
  return table === undefined ? null : closingMinute(table, from);
}

function momentOf({ place }: TaskPlace, moment: 'start' | 'finish'): number {
  return moment === 'start' ? place.startMinute : place.finishMinute;
}
