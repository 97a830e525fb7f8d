import { aloneTimes } from '@/lib/schedule/alone-bound';
import { type AxisSession, benchAxis } from '@/lib/schedule/bench-axis';
import { minuteAfter } from '@/lib/schedule/check-holds';
import { ModelLags } from '@/lib/schedule/constraint-lags';
import { keepLinks } from '@/lib/schedule/constraint-links';
import { keepOneThingAtATime, keepResources } from '@/lib/schedule/constraint-places';
import { keepSetUps } from '@/lib/schedule/constraint-set-ups';
import { knownTerm, type ModelTerm, ModelText, shiftedTerm } from '@/lib/schedule/constraint-text';
import { type ModelVisit, VisitWriter } from '@/lib/schedule/constraint-visits';
import { batchReadyMinutes } from '@/lib/schedule/plan-value';
import type { Link, PlanningProblem, Task } from '@/lib/schedule/planning-problem';
import type { PlannedTask, ShopPlan } from '@/lib/schedule/shop-plan';

/** What the model leaves out of the problem: what it proves, it proves for plans like that alone. */
export type ModelLimit =
  /** Only some batches are placed anew; the others stay where they are. */
  | 'some-batches'
  /** Work that may be put down is only put down at the end of a session. */
  | 'no-other-work-between'
  /** Weights are rounded. */
  | 'rounded-weights'
  /** The plan has pins that clash, and they stay as they are. */
  | 'pins-in-conflict';

/** A problem written down for a constraint solver, with what its answers mean. */
export interface ConstraintModel {
  /** In the language MiniZinc. */
  readonly text: string;
  readonly axis: readonly AxisSession[];
  /** The tasks of the answer's lists, in order. */
  readonly taskIds: readonly string[];
  /** The windows of the answer's list of those missed, in order. */
  readonly windowIds: readonly string[];
  /** What the weights were multiplied with to become whole. */
  readonly weightScale: number;
  /** Empty: a proof holds for the problem itself, as to weighted minutes late. */
  readonly limits: readonly ModelLimit[];
}

export type ModelRefusal =
  /** Nothing that is placed anew is late, so there is nothing to gain. */
  | { readonly kind: 'nothing-late' }
  /** The plan has steps without a place: first these. */
  | { readonly kind: 'steps-without-place' }
  /** A task has no place in which no batch would be later than they all are: of the plans looked at none is better. */
  | { readonly kind: 'none-better'; readonly limits: readonly ModelLimit[] };

/**
 * Writes down the search for a plan that is less late than `plan`: the open tasks of the chosen batches are placed
 * anew, all others stay where `plan` has them. Takes sound problems (`problemFaults` finds nothing) and plans that hold.
 */
export function constraintModel(
  problem: PlanningProblem,
  plan: ShopPlan,
  batchIds: ReadonlySet<string> | null,
): { readonly ok: true; readonly model: ConstraintModel } | { readonly ok: false; readonly refusal: ModelRefusal } {
  const placed = new Set(plan.placed.map(({ taskId }) => taskId));
  if (problem.tasks.some(({ id }) => !placed.has(id))) return { ok: false, refusal: { kind: 'steps-without-place' } };
  return new ModelMaker(problem, plan, batchIds).make();
}

/** A batch that may be late. */
interface LateBatch {
  readonly id: string;
  readonly dueMinute: number;
  readonly weight: number;
  /** Minutes late in the plan of before. */
  readonly lateMinutes: number;
}

class ModelMaker {
  readonly #text = new ModelText();
  readonly #places: ReadonlyMap<string, PlannedTask>;
  readonly #free: readonly Task[];
  readonly #late: readonly LateBatch[];
  readonly #weightsAreWhole: boolean;
  readonly #scale: number;
  /** Less than the plan of before, in whole weights times minutes. */
  readonly #mostCost: number;

  constructor(
    private readonly problem: PlanningProblem,
    plan: ShopPlan,
    batchIds: ReadonlySet<string> | null,
  ) {
    this.#places = new Map(plan.placed.map((place) => [place.taskId, place]));
    const isChosen = (batchId: string) => batchIds === null || batchIds.has(batchId);
    this.#free = problem.tasks.filter(({ state, batchId }) => state.kind === 'open' && isChosen(batchId));
    const ready = batchReadyMinutes(problem, this.#places);
    const dated = problem.batches.filter(({ id, weight }) => isChosen(id) && weight > 0 && ready.has(id));
    const scale = wholeScale(dated.map(({ weight }) => weight));
    this.#weightsAreWhole = dated.every(({ weight }) => isWhole(weight * scale));
    this.#late = dated.flatMap(({ id, weight, dueMinute }) =>
      dueMinute === null
        ? []
        : [
            {
              id,
              dueMinute,
              weight: Math.max(1, Math.round(weight * scale)),
              lateMinutes: Math.max(0, (ready.get(id) ?? 0) - dueMinute),
            },
          ],
    );
    this.#scale = scale;
    this.#mostCost = this.#late.reduce((sum, { weight, lateMinutes }) => sum + weight * lateMinutes, 0) - 1;
  }

  make(): ReturnType<typeof constraintModel> {
    if (this.#mostCost < 0 || this.#free.length === 0) return { ok: false, refusal: { kind: 'nothing-late' } };
    const { problem } = this;
    const text = this.#text;
    const lastMinute = Math.max(...this.#free.map((task) => this.#latestFinish(task.batchId)));
    const axis = benchAxis(problem.people, problem.nowMinute, lastMinute);
    const visits = this.#visits(axis);
    if (!(visits instanceof Map)) return { ok: false, refusal: visits };
    const list = [...visits.values()];
    const staying = [...this.#places.values()].filter(({ taskId }) => !visits.has(taskId));
    const lags = new ModelLags(text, problem.lagTables, problem.horizonMinute + 1);
    const broken = keepLinks({ problem, text, lags, visits, places: this.#places });
    const use = { problem, text, axis, lags, visits: list, staying };
    keepOneThingAtATime(use);
    keepResources(use);
    keepSetUps(problem, text, axis, list, staying);
    const cost = this.#aim(lags, visits);
    const model = {
      text: this.#solve(list, cost),
      axis,
      taskIds: list.map(({ task }) => task.id),
      windowIds: list.flatMap(({ windows }) => windows.map(({ link }) => link.id)),
      weightScale: this.#scale,
      limits: this.#limits(broken),
    };
    return { ok: true, model };
  }

  #visits(axis: readonly AxisSession[]): Map<string, ModelVisit> | ModelRefusal {
    const { problem } = this;
    const writer = new VisitWriter(problem, this.#text, axis);
    const alone = aloneTimes(problem).start;
    const windows = new Map<string, Link[]>();
    for (const link of problem.links) {
      if (link.kind !== 'greatest' || link.remedy === null) continue;
      windows.set(link.toTaskId, [...(windows.get(link.toTaskId) ?? []), link]);
    }
    const visits = new Map<string, ModelVisit>();
    for (const task of this.#free) {
      const frame = {
        earliest: alone.get(task.id) ?? problem.nowMinute,
        latestFinish: this.#latestFinish(task.batchId),
      };
      const visit = writer.write(task, windows.get(task.id) ?? [], frame);
      if (visit === null) return { kind: 'none-better', limits: this.#limits(0) };
      visits.set(task.id, visit);
    }
    return visits;
  }

  /** No batch alone may be as late as all were: what ends after that makes no better plan. */
  #latestFinish(batchId: string): number {
    const batch = this.#late.find(({ id }) => id === batchId);
    if (batch === undefined) return this.problem.horizonMinute;
    const latest = batch.dueMinute + Math.floor(this.#mostCost / batch.weight);
    return Math.min(this.problem.horizonMinute, latest);
  }

  /** The cost: each batch as late as the last of its tasks makes it, times its weight. */
  #aim(lags: ModelLags, visits: ReadonlyMap<string, ModelVisit>): ModelTerm {
    const { problem } = this;
    const text = this.#text;
    const tables = new Map(problem.lagTables.map((table) => [table.id, table]));
    const followed = this.#followed(visits);
    const cost = text.variable('late', 0, this.#mostCost);
    const terms = this.#late.map((batch) => {
      const late = text.variable('t', 0, Math.floor(this.#mostCost / batch.weight));
      for (const task of problem.tasks) {
        if (task.batchId !== batch.id || followed.has(task.id)) continue;
        const visit = visits.get(task.id);
        if (visit !== undefined) {
          const ready = lags.opening(task.readyAfter, visit.finish, problem.horizonMinute);
          text.atMostZero([
            [1, shiftedTerm(ready, -batch.dueMinute)],
            [-1, late],
          ]);
          continue;
        }
        const place = this.#places.get(task.id);
        if (place === undefined) continue;
        const ready = minuteAfter(tables, task.readyAfter, place.finishMinute) ?? problem.horizonMinute;
        text.atMostZero([
          [1, knownTerm(ready - batch.dueMinute)],
          [-1, late],
        ]);
      }
      return [batch.weight, late] as const;
    });
    text.zero([...terms, [-1, cost]]);
    return cost;
  }

  /** Tasks that something of their batch comes after, and that are ready at their finish: they are never the last. */
  #followed(visits: ReadonlyMap<string, ModelVisit>): ReadonlySet<string> {
    return new Set(
      this.problem.links.flatMap(({ kind, from, lag, fromTaskId, toTaskId }) => {
        const [before, after] = [visits.get(fromTaskId)?.task, visits.get(toTaskId)?.task];
        if (before === undefined || before.batchId !== after?.batchId) return [];
        const isAfter = kind === 'least' && from === 'finish' && (lag.kind === 'table' || lag.minutes >= 0);
        const { readyAfter } = before;
        return isAfter && readyAfter.kind === 'fixed' && readyAfter.minutes <= 0 ? [fromTaskId] : [];
      }),
    );
  }

  /** Tasks are tried in the order of the plan of before, each as early as it can: what is found first is near it. */
  #solve(visits: readonly ModelVisit[], cost: ModelTerm): string {
    const before = ({ task }: ModelVisit) => this.#places.get(task.id)?.startMinute ?? 0;
    const ordered = [...visits].sort((a, b) => before(a) - before(b));
    const names = (list: readonly (string | null | undefined)[]) => `[${list.map((name) => name ?? '0').join(', ')}]`;
    const searched = ordered.flatMap(({ start, bench }) =>
      bench === null ? [start.term.name] : [bench.axisStart.name, start.term.name],
    );
    const lists = {
      starts: names(visits.map(({ start }) => start.term.name)),
      sessions: names(visits.map(({ bench }) => bench?.session.name)),
      pays: names(visits.map(({ bench }) => bench?.pays?.asNumber.name)),
      kept: names(visits.flatMap(({ windows }) => windows.map(({ isKept }) => String(isKept.asNumber.name)))),
      late: `[${cost.name}]`,
    };
    const output = Object.entries(lists).map(([name, list]) => `"\\"${name}\\":", show(${list})`);
    return this.#text.toText(
      `:: int_search(${names(searched)}, input_order, indomain_min, complete) minimize ${cost.name}`,
      `["{", ${output.join(', ",", ')}, "}"]`,
    );
  }

  #limits(broken: number): readonly ModelLimit[] {
    const limits: ModelLimit[] = [];
    const open = this.problem.tasks.filter(({ state }) => state.kind === 'open');
    if (open.length > this.#free.length) limits.push('some-batches');
    const isPutDown = ({ leastPieceMinutes, attendedMinutes }: Task) =>
      leastPieceMinutes !== null && attendedMinutes > leastPieceMinutes;
    if (this.#free.some(isPutDown)) limits.push('no-other-work-between');
    if (!this.#weightsAreWhole) limits.push('rounded-weights');
    if (broken > 0) limits.push('pins-in-conflict');
    return limits;
  }
}

/** What weights are multiplied with so that they become whole; at most 100. */
function wholeScale(weights: readonly number[]): number {
  return [1, 2, 4, 5, 10, 20].find((scale) => weights.every((weight) => isWhole(weight * scale))) ?? 100;
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-9;
}
