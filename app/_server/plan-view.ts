import 'server-only';
import { heldPlan } from '@/app/_plan/held-plan';
import { othersFirst } from '@/app/_plan/others-first';
import { type Overload, overloadOf } from '@/app/_plan/overload';
import { violationWords, visitLabel } from '@/app/_plan/plan-words';
import { type ShopProblem, shopProblemInTurns } from '@/app/_plan/shop-problem';
import { timetableOf } from '@/app/_plan/timetable';
import type { Timetable } from '@/lib/contracts/stored-plan';
import { checkPlan } from '@/lib/schedule/check-plan';
import type { Violation } from '@/lib/schedule/violation';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { Db } from '@/prisma/client';
import { dataVersion } from '@/prisma/data/data-version';
import type { AcceptedPlan } from '@/prisma/data/plans';
import type { ShopSettings } from '@/prisma/data/shop';
import { acceptedPlan } from './accepted-plan';
import { loadPlanInput } from './plan-input';

/** Something wrong with the plan that holds, as things stand now. */
export interface PlanConflict {
  readonly keys: readonly string[];
  readonly text: string;
}

/** A person's row: when they can attend. */
export interface PersonRow {
  readonly id: string;
  readonly name: string;
  readonly sessions: readonly { readonly startAt: Instant; readonly endAt: Instant }[];
}

/** A resource's row: how many places it has from when on. */
export interface PlaceRow {
  readonly id: string;
  readonly name: string;
  readonly capacity: number;
  readonly changes: readonly { readonly fromAt: Instant; readonly capacity: number }[];
}

/** The plan that holds, seen against the shop as it is now. */
export interface PlanView {
  readonly horizonAt: Instant;
  readonly held: Pick<AcceptedPlan, 'id' | 'madeAt'> | null;
  /** The plan that holds with what has happened since; null without one. */
  readonly current: Timetable | null;
  /** The same as JSON, for the browser. */
  readonly currentJson: string | null;
  readonly conflicts: readonly PlanConflict[];
  /** Steps that no plan has a place for yet. */
  readonly unplanned: readonly string[];
  readonly notes: readonly string[];
  readonly overload: Overload | null;
  readonly people: readonly PersonRow[];
  readonly places: readonly PlaceRow[];
  readonly hasTasks: boolean;
}

/** A session may begin so much later than planned before the plan is called in conflict. Chosen. */
const GRACE_MS = 2 * HOUR_MS;
/** A view is kept for so long by the clock, well within the grace; what is written ends it at once. Chosen. */
const KEPT_MS = 5 * MINUTE_MS;

interface Kept {
  readonly key: string;
  readonly view: Promise<PlanView>;
}

// Beside all copies of this module that the framework may load.
const shared: typeof globalThis & { lurewrightPlanViews?: WeakMap<Db, Kept> } = globalThis;
shared.lurewrightPlanViews ??= new WeakMap();
const views = shared.lurewrightPlanViews;

/**
 * The plan that holds against the shop at `nowAt`. Made once for each state of the database and every few minutes, in
 * turns with other requests; who asks meanwhile is given the same.
 */
export async function loadPlanView(database: Db, shop: ShopSettings, nowAt: Instant): Promise<PlanView> {
  const key = `${await dataVersion(database)} ${Math.floor(nowAt / KEPT_MS)}`;
  const kept = views.get(database);
  if (kept !== undefined && kept.key === key) return kept.view;
  const view = makePlanView(database, shop, nowAt);
  views.set(database, { key, view });
  // What failed is not kept; who asked is told.
  view.catch(() => views.delete(database));
  return view;
}

async function makePlanView(database: Db, shop: ShopSettings, nowAt: Instant): Promise<PlanView> {
  const input = await loadPlanInput(database, shop, nowAt);
  const held = await acceptedPlan(database);
  const made = await shopProblemInTurns(input, GRACE_MS);
  const { problem } = made;
  const plan = held === null ? null : heldPlan(held.timetable, made);
  const violations = plan === null ? [] : checkPlan(problem, plan);
  await othersFirst();
  const current = plan === null || held === null ? null : currentTimetable(made, held, plan);
  await othersFirst();
  const at = (minute: number) => problem.epochAt + minute * MINUTE_MS;
  const missing = violations.filter(({ kind }) => kind === 'missing').flatMap(({ taskIds }) => taskIds);
  return {
    horizonAt: at(problem.horizonMinute),
    held: held === null ? null : { id: held.id, madeAt: held.madeAt },
    current,
    currentJson: current === null ? null : JSON.stringify(current),
    conflicts: conflictsOf(made, violations, shop.timeZone),
    unplanned: missing.map((id) => visitLabel(made.about.get(id))),
    notes: made.notes.map(({ text }) => text),
    overload: overloadOf(problem),
    people: problem.people.map(({ id, name, sessions }) => ({
      id,
      name,
      sessions: sessions.map(({ startMinute, endMinute }) => ({ startAt: at(startMinute), endAt: at(endMinute) })),
    })),
    places: problem.resources.map(({ id, name, capacity, changes }) => ({
      id,
      name,
      capacity,
      changes: changes.map((change) => ({ fromAt: at(change.fromMinute), capacity: change.capacity })),
    })),
    hasTasks: problem.tasks.some(({ state }) => state.kind !== 'done'),
  };
}

function currentTimetable(made: ShopProblem, held: AcceptedPlan, plan: ReturnType<typeof heldPlan>): Timetable {
  const { unavoidableLateMinutes, isProvedBest, moved, whatIf, unplaced } = held.timetable;
  return { ...timetableOf(made, plan, { unavoidableLateMinutes, isProvedBest }, whatIf), moved, unplaced };
}

function conflictsOf(made: ShopProblem, violations: readonly Violation[], zone: string): readonly PlanConflict[] {
  const told = new Map<string, PlanConflict>();
  for (const violation of violations) {
    // Steps that are new are told apart: they are not in conflict with anything.
    if (violation.kind === 'missing') continue;
    const text = violationWords(violation, made, zone);
    told.set(text, { keys: violation.taskIds, text });
  }
  return [...told.values()];
}
