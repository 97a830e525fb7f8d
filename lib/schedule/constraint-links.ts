import { minuteAfter } from '@/lib/schedule/check-holds';
import type { ModelLags } from '@/lib/schedule/constraint-lags';
import { knownTerm, type ModelTerm, type ModelText } from '@/lib/schedule/constraint-text';
import type { ModelVisit } from '@/lib/schedule/constraint-visits';
import { closingMinute, type LagTable } from '@/lib/schedule/lag';
import type { Link, PlanningProblem, TaskMoment } from '@/lib/schedule/planning-problem';
import type { PlannedTask } from '@/lib/schedule/shop-plan';

/** What the links are written with. */
export interface LinkContext {
  readonly problem: PlanningProblem;
  readonly text: ModelText;
  readonly lags: ModelLags;
  /** What the solver places, by task id. */
  readonly visits: ReadonlyMap<string, ModelVisit>;
  /** Where everything was before: what is not placed anew stays there. */
  readonly places: ReadonlyMap<string, PlannedTask>;
}

/**
 * Writes the times between tasks down. Links into what stays that the plan of before does not keep are left out: how
 * many is returned.
 */
export function keepLinks(context: LinkContext): number {
  const states = new Map(context.problem.tasks.map((task) => [task.id, task.state.kind]));
  const tables = new Map(context.problem.lagTables.map((table) => [table.id, table]));
  let broken = 0;
  for (const link of context.problem.links) {
    const to = states.get(link.toTaskId);
    if (to === 'done' || to === 'under-way') continue;
    const [from, into] = [context.visits.get(link.fromTaskId), context.visits.get(link.toTaskId)];
    if (from !== undefined && into !== undefined) between(context, link, from, into);
    else if (into !== undefined) afterWhatStays(context, tables, link, into);
    else if (from !== undefined && !beforeWhatStays(context, tables, link, from)) broken++;
  }
  return broken;
}

function between({ text, lags }: LinkContext, link: Link, from: ModelVisit, into: ModelVisit): void {
  const to = momentOf(into, link.to).term;
  if (link.kind === 'least') notBefore(text, to, lags.opening(link.lag, momentOf(from, link.from), null));
  else keptOrMissed(text, into, link, to, lags.closing(link.lag, momentOf(from, link.from)));
}

function notBefore(text: ModelText, moment: ModelTerm, opens: ModelTerm): void {
  text.atMostZero([
    [1, opens],
    [-1, moment],
  ]);
}

function keptOrMissed(text: ModelText, { windows }: ModelVisit, link: Link, to: ModelTerm, closes: ModelTerm): void {
  const own = windows.find((one) => one.link.id === link.id);
  const parts = [
    [1, to],
    [-1, closes],
  ] as const;
  if (own === undefined) text.atMostZero(parts);
  else text.atMostZeroIf(own.isKept, parts);
}

function afterWhatStays(context: LinkContext, tables: Tables, link: Link, into: ModelVisit): void {
  const place = context.places.get(link.fromTaskId);
  if (place === undefined) return;
  const { text } = context;
  const to = momentOf(into, link.to).term;
  if (link.kind === 'least') {
    const opens = minuteAfter(tables, link.lag, minuteOf(place, link.from));
    if (opens === null) text.never();
    else notBefore(text, to, knownTerm(opens));
    return;
  }
  const closes = closingOf(tables, link, minuteOf(place, link.from));
  if (closes !== null) keptOrMissed(text, into, link, to, knownTerm(closes));
}

/** False where the plan of before does not keep it. */
function beforeWhatStays(context: LinkContext, tables: Tables, link: Link, from: ModelVisit): boolean {
  const before = context.places.get(link.fromTaskId);
  const place = context.places.get(link.toTaskId);
  if (place === undefined || before === undefined) return true;
  const { text, lags } = context;
  const fixed = minuteOf(place, link.to);
  const was = minuteOf(before, link.from);
  if (link.kind === 'least') {
    const opened = minuteAfter(tables, link.lag, was);
    if (opened === null || opened > fixed) return false;
    notBefore(text, knownTerm(fixed), lags.opening(link.lag, momentOf(from, link.from), null));
    return true;
  }
  const closed = closingOf(tables, link, was);
  if (closed !== null && closed < fixed) return false;
  notBefore(text, lags.closing(link.lag, momentOf(from, link.from)), knownTerm(fixed));
  return true;
}

type Tables = ReadonlyMap<string, LagTable>;

function closingOf(tables: Tables, { lag }: Link, from: number): number | null {
  if (lag.kind === 'fixed') return from + lag.minutes;
  const table = tables.get(lag.tableId);
  return table === undefined ? null : closingMinute(table, from);
}

function momentOf(visit: ModelVisit, moment: TaskMoment) {
  return moment === 'start' ? visit.start : visit.finish;
}

function minuteOf(place: PlannedTask, moment: TaskMoment): number {
  return moment === 'start' ? place.startMinute : place.finishMinute;
}
