import type { MovedVisit, PlannedVisit, Timetable } from '@/lib/contracts/stored-plan';
import type { Violation } from '@/lib/schedule/violation';
import { weekdayClockText } from '@/lib/units/format-instant';
import { MINUTE_MS } from '@/lib/units/instant';
import { isToCome } from './held-plan';
import { violationWords, visitLabel } from './plan-words';
import type { ShopProblem } from './shop-problem';

/**
 * What moved between two plans, and why: what was wrong with its old hour, else the step it follows that moved, else
 * the step that it made room for. By the new hour. `violations` are those of the plan before, as things stand now.
 */
export function movedVisits(
  before: Timetable,
  after: Timetable,
  violations: readonly Violation[],
  shop: ShopProblem,
  zone: string,
): MovedVisit[] {
  const old = new Map(before.visits.map((visit) => [visit.key, visit]));
  const moved = after.visits.filter((visit) => {
    const was = old.get(visit.key);
    return was !== undefined && isToCome(visit) && Math.abs(was.startAt - visit.startAt) >= MINUTE_MS;
  });
  const movedKeys = new Set(moved.map(({ key }) => key));
  return moved.map((visit) => {
    const was = old.get(visit.key) ?? visit;
    const cause =
      wrongBefore(visit.key, violations, shop, zone) ??
      pinnedCause(visit, was) ??
      followed(visit.key, movedKeys, shop) ??
      roomMade(was, after, movedKeys) ??
      'a better order was found';
    return { key: visit.key, label: visitLabel(visit), fromAt: was.startAt, toAt: visit.startAt, cause };
  });
}

/** The clash that its old hour is in. A cure that lasts longer than it was planned is said as such. */
function wrongBefore(key: string, violations: readonly Violation[], shop: ShopProblem, zone: string): string | null {
  const { problem, about } = shop;
  const own = violations.filter((violation) => violation.taskIds.includes(key));
  for (const violation of own) {
    if (violation.kind !== 'least-lag' || violation.notBeforeMinute === null) continue;
    const link = problem.links.find(({ id }) => id === violation.linkId);
    if (link === undefined || link.toTaskId !== key) continue;
    const isCure = link.lag.kind === 'table' || link.lag.minutes > 0;
    const readyAt = weekdayClockText(problem.epochAt + violation.notBeforeMinute * MINUTE_MS, zone);
    const from = visitLabel(about.get(link.fromTaskId));
    return isCure ? `the cure of ${from} lasts until ${readyAt}, longer than planned` : `${from} ends only ${readyAt}`;
  }
  const first = own[0];
  return first === undefined ? null : violationWords(first, shop, zone).replace(/\.$/, '');
}

function pinnedCause(visit: PlannedVisit, was: PlannedVisit): string | null {
  if (visit.state === 'pinned') return 'pinned by hand';
  return was.state === 'pinned' ? 'no longer pinned' : null;
}

function followed(key: string, moved: ReadonlySet<string>, { problem, about }: ShopProblem): string | null {
  const link = problem.links.find(({ toTaskId, fromTaskId }) => toTaskId === key && moved.has(fromTaskId));
  return link === undefined ? null : `it follows ${visitLabel(about.get(link.fromTaskId))}, which moved`;
}

function roomMade(was: PlannedVisit, after: Timetable, moved: ReadonlySet<string>): string | null {
  const other = after.visits.find(
    (visit) =>
      visit.key !== was.key &&
      visit.personId === was.personId &&
      visit.startAt < was.finishAt &&
      was.startAt < visit.finishAt &&
      (moved.has(visit.key) || visit.state === 'pinned'),
  );
  return other === undefined ? null : `it makes room for ${visitLabel(other)}`;
}
