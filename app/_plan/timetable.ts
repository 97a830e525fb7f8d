import type { PlannedVisit, Timetable } from '@/lib/contracts/stored-plan';
import { closingMinute, type Lag, openingMinute } from '@/lib/schedule/lag';
import { batchReadyMinutes, planValue } from '@/lib/schedule/plan-value';
import type { Link, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';
import type { SmallestReason } from '@/lib/schedule/smallest-reason';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { impossibleVisits } from './impossible-visits';
import type { ShopProblem } from './shop-problem';

/** What the planner says beside the plan itself. */
export interface PlanProof {
  readonly unavoidableLateMinutes: number | null;
  readonly isProvedBest: boolean;
}

/** A plan in the shop's terms: instants, names, cures and places. */
export function timetableOf(
  shop: ShopProblem,
  plan: ShopPlan,
  proof: PlanProof,
  whatIf: readonly string[],
  reasons: readonly SmallestReason[] = [],
): Timetable {
  const { problem, about } = shop;
  const minutes = new Minutes(problem);
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]));
  const linksFrom = new Map<string, Link[]>();
  for (const link of problem.links) {
    const own = linksFrom.get(link.fromTaskId) ?? [];
    linksFrom.set(link.fromTaskId, own);
    own.push(link);
  }
  const remedyWords = new Map(
    problem.links.flatMap((link) =>
      link.kind === 'greatest' && link.remedy !== null ? [[link.id, link.remedy.words]] : [],
    ),
  );
  const visits = plan.placed.flatMap((place): PlannedVisit[] => {
    const task = tasks.get(place.taskId);
    const own = about.get(place.taskId);
    if (task === undefined || own === undefined) return [];
    const { materialId: _, materialWait, ...names } = own;
    return [
      {
        key: task.id,
        ...names,
        pieces: [...own.pieces],
        state: task.state.kind,
        personId: place.personId,
        startAt: minutes.instant(place.startMinute),
        finishAt: minutes.instant(place.finishMinute),
        stretches: place.pieces.map(({ startMinute, endMinute }) => ({
          startAt: minutes.instant(startMinute),
          endAt: minutes.instant(endMinute),
        })),
        setUpMinutes: place.setUpMinutes,
        remedies: place.remedyLinkIds.map((id) => remedyWords.get(id) ?? ''),
        curedAt: minutes.curedAt(task, place, linksFrom.get(task.id) ?? []),
        waitsFor: materialWait?.because ?? null,
        closesAt: minutes.closesAt(place, linksFrom.get(task.id) ?? []),
        holds: task.holds.map(({ resourceId, amount, until }) => ({
          resourceId,
          amount,
          untilAt: minutes.instant(minutes.opening(until, place.finishMinute) ?? problem.horizonMinute),
        })),
      },
    ];
  });
  const ready = batchReadyMinutes(problem, new Map(plan.placed.map((place) => [place.taskId, place])));
  const unplacedBatches = new Set(plan.unplaced.map(({ taskId }) => about.get(taskId)?.batchId));
  const named = new Map([...about.values()].map((one) => [one.batchId, one]));
  return {
    visits: visits.sort((a, b) => a.startAt - b.startAt || (a.key < b.key ? -1 : 1)),
    ...impossibleVisits(shop, plan, reasons),
    batches: problem.batches.flatMap((batch) => {
      const own = named.get(batch.id);
      if (own === undefined) return [];
      const readyMinute = ready.get(batch.id);
      const isLeft = unplacedBatches.has(batch.id) || readyMinute === undefined;
      return [
        {
          batchId: batch.id,
          number: own.batchNumber,
          modelName: own.modelName,
          weight: batch.weight,
          dueAt: batch.dueMinute === null ? null : minutes.instant(batch.dueMinute),
          readyAt: isLeft ? null : minutes.instant(readyMinute),
        },
      ];
    }),
    value: planValue(problem, plan),
    ...proof,
    moved: [],
    whatIf: [...whatIf],
  };
}

/** Minutes of a problem as instants, and what a cure adds to them. */
class Minutes {
  readonly #tables;

  constructor(private readonly problem: PlanningProblem) {
    this.#tables = new Map(problem.lagTables.map((table) => [table.id, table]));
  }

  instant(minute: number): Instant {
    return this.problem.epochAt + minute * MINUTE_MS;
  }

  /** The minute at which a lag counted from `fromMinute` is over; null: not within its table. */
  opening(lag: Lag, fromMinute: number): number | null {
    if (lag.kind === 'fixed') return fromMinute + lag.minutes;
    const table = this.#tables.get(lag.tableId);
    return table === undefined ? null : openingMinute(table, fromMinute);
  }

  /** The last of the openings that something waits for. */
  curedAt(task: Task, place: PlannedTask, links: readonly Link[]): Instant | null {
    const lags = links.flatMap((link) => (link.kind === 'least' && link.from === 'finish' ? [link.lag] : []));
    const ends = [...lags, task.readyAfter].map((lag) => this.opening(lag, place.finishMinute));
    const last = Math.max(...ends.map((end) => end ?? this.problem.horizonMinute));
    return last > place.finishMinute ? this.instant(last) : null;
  }

  /** The first of the windows that close after it. */
  closesAt(place: PlannedTask, links: readonly Link[]): Instant | null {
    const ends = links.flatMap((link) => {
      if (link.kind !== 'greatest') return [];
      const from = link.from === 'start' ? place.startMinute : place.finishMinute;
      if (link.lag.kind === 'fixed') return [from + link.lag.minutes];
      const table = this.#tables.get(link.lag.tableId);
      const end = table === undefined ? null : closingMinute(table, from);
      return end === null ? [] : [end];
    });
    return ends.length === 0 ? null : this.instant(Math.min(...ends));
  }
}
