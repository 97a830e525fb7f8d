import { closingMinute, openingMinute } from '@/lib/schedule/lag';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import { type Mutation, type Pick, shifted, swapped, toCome } from './plan-edits';

export function beforeItsCure(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const open = new Map(toCome(problem, plan).map((place) => [place.taskId, place]));
  const fits = problem.links.filter(
    (link) => link.kind === 'least' && link.lag.kind === 'fixed' && link.lag.minutes >= 0 && open.has(link.toTaskId),
  );
  const link = pick(fits);
  const place = open.get(link?.toTaskId ?? '');
  const from = plan.placed.find(({ taskId }) => taskId === link?.fromTaskId);
  if (link?.lag.kind !== 'fixed' || place === undefined || from === undefined) return null;
  const opens = (link.from === 'start' ? from.startMinute : from.finishMinute) + link.lag.minutes;
  const now = link.to === 'start' ? place.startMinute : place.finishMinute;
  return { what: 'a minute before its cure', plan: swapped(plan, place, shifted(place, opens - 1 - now)) };
}

/** A window that is kept without a remedy, missed by a minute. */
export function windowMissed(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const open = new Map(toCome(problem, plan).map((place) => [place.taskId, place]));
  const placed = new Map(plan.placed.map((place) => [place.taskId, place]));
  const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  const fits = problem.links.flatMap((link) => {
    const place = open.get(link.toTaskId);
    const from = placed.get(link.fromTaskId);
    if (link.kind !== 'greatest' || place === undefined || from === undefined) return [];
    if (place.remedyLinkIds.includes(link.id)) return [];
    const counted = link.from === 'start' ? from.startMinute : from.finishMinute;
    const table = link.lag.kind === 'table' ? tables.get(link.lag.tableId) : undefined;
    const closes = link.lag.kind === 'fixed' ? counted + link.lag.minutes : table && closingMinute(table, counted);
    if (closes === null || closes === undefined) return [];
    const by = closes + 1 - (link.to === 'start' ? place.startMinute : place.finishMinute);
    return [{ place, by }];
  });
  const one = pick(fits);
  return one === undefined
    ? null
    : { what: 'a window missed', plan: swapped(plan, one.place, shifted(one.place, one.by)) };
}

/** Begun a minute before a cure that is looked up is over. */
export function beforeItsTable(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const open = new Map(toCome(problem, plan).map((place) => [place.taskId, place]));
  const placed = new Map(plan.placed.map((place) => [place.taskId, place]));
  const fits = problem.links.flatMap((link) => {
    const { lag } = link;
    const place = open.get(link.toTaskId);
    const from = placed.get(link.fromTaskId);
    if (link.kind !== 'least' || lag.kind !== 'table' || place === undefined || from === undefined) return [];
    const table = problem.lagTables.find(({ id }) => id === lag.tableId);
    const counted = link.from === 'start' ? from.startMinute : from.finishMinute;
    const opens = table === undefined ? null : openingMinute(table, counted);
    if (opens === null) return [];
    return [{ place, by: opens - 1 - (link.to === 'start' ? place.startMinute : place.finishMinute) }];
  });
  const one = pick(fits);
  return one === undefined
    ? null
    : { what: 'a minute before a cold cure', plan: swapped(plan, one.place, shifted(one.place, one.by)) };
}

export function remedyInvented(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(toCome(problem, plan));
  if (place === undefined) return null;
  const by = { ...place, remedyLinkIds: [...place.remedyLinkIds, 'no such window'] };
  return { what: 'a remedy of nothing', plan: swapped(plan, place, by) };
}

export function remedyDropped(problem: PlanningProblem, plan: ShopPlan, pick: Pick): Mutation | null {
  const place = pick(toCome(problem, plan).filter(({ remedyLinkIds }) => remedyLinkIds.length > 0));
  if (place === undefined) return null;
  return { what: 'a remedy left out', plan: swapped(plan, place, { ...place, remedyLinkIds: [] }) };
}
