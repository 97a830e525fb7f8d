import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import { benchSessions, type DayException } from '@/lib/schedule/bench-sessions';
import type { BenchPerson, PlanningProblem } from '@/lib/schedule/planning-problem';
import { HOUR_MS, type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { WeeklyHours } from '@/lib/units/weekly-hours';
import { addDays, instantOfWallTime, WEEKDAYS, wallTimeAt } from '@/lib/units/zoned-time';
import { type BatchTasks, batchTasks } from './batch-tasks';
import { CureTables } from './cure-tables';
import { materialWaits } from './material-waits';
import { othersFirst } from './others-first';
import { PLAN_DAYS, type PlanInput, type PlanPerson } from './plan-input';
import { resourcePlaces } from './resource-places';
import type { PlanNote, TaskAbout } from './task-about';

/** The planner's problem beside what its tasks are in the shop. */
export interface ShopProblem {
  readonly problem: PlanningProblem;
  readonly about: ReadonlyMap<string, TaskAbout>;
  readonly notes: readonly PlanNote[];
  /** Whose wall clock the plan is told by. */
  readonly zone: string;
}

const DAY_MS = 24 * HOUR_MS;

/** First and last minute of a plan. */
function frameOf({ nowAt, zone, batches }: PlanInput) {
  const firstAt = Math.min(nowAt, ...batches.map(({ head }) => head.openedAt));
  const epochAt = Math.floor(firstAt / DAY_MS) * DAY_MS;
  const horizonAt = instantOfWallTime(addDays(wallTimeAt(nowAt, zone).day, PLAN_DAYS), 0, zone);
  return { epochAt, horizonAt, horizonMinute: Math.ceil((horizonAt - epochAt) / MINUTE_MS) };
}

/**
 * Computes the cures that `shopProblem` will look up, one at a time, and lets others have their turn in between: a
 * server goes on answering while a course is new.
 */
export async function warmCures(input: PlanInput): Promise<void> {
  const { epochAt, horizonMinute } = frameOf(input);
  const tables = new CureTables(input, epochAt, horizonMinute);
  const mixed = new Set(
    input.batches.flatMap(({ known }) => known.plan.operations.map(({ materialId }) => materialId)),
  );
  for (const materialId of mixed) {
    const sheet = materialId === null ? null : (input.materials.get(materialId)?.sheet ?? null);
    if (sheet === null) continue;
    await othersFirst();
    input.lanesOf(sheet);
    for (const milestone of MILESTONES) {
      tables.lag(sheet, milestone);
      await othersFirst();
    }
  }
}

/**
 * What the planner is asked, from what the shop knows. Pure: the same input gives an equal problem. With `graceMs` the
 * hours just passed still count: a plan is not in conflict because a session began some minutes late.
 */
export function shopProblem(input: PlanInput, graceMs = 0): ShopProblem {
  const { frame, tables } = begun(input);
  const made = input.batches.map((batch) => batchTasks(input, batch, frame.epochAt, tables));
  return assembled(input, frame, tables, made, graceMs);
}

/** The same batch by batch, with a turn for others after each: a server goes on answering meanwhile. */
export async function shopProblemInTurns(input: PlanInput, graceMs = 0): Promise<ShopProblem> {
  const { frame, tables } = begun(input);
  const made: BatchTasks[] = [];
  for (const batch of input.batches) {
    made.push(batchTasks(input, batch, frame.epochAt, tables));
    await othersFirst();
  }
  return assembled(input, frame, tables, made, graceMs);
}

type Frame = ReturnType<typeof frameOf>;

function begun(input: PlanInput): { readonly frame: Frame; readonly tables: CureTables } {
  const frame = frameOf(input);
  return { frame, tables: new CureTables(input, frame.epochAt, frame.horizonMinute) };
}

function assembled(
  input: PlanInput,
  { epochAt, horizonAt, horizonMinute }: Frame,
  tables: CureTables,
  made: readonly BatchTasks[],
  graceMs: number,
): ShopProblem {
  const { nowAt, zone, batches } = input;
  const minuteOf = (at: Instant) => Math.ceil((at - epochAt) / MINUTE_MS);
  const sinceAt = nowAt - graceMs;
  const known = new Map(made.flatMap(({ about }) => [...about]));
  const opened = made.flatMap(({ tasks }) => tasks);
  const { waits, notes } = materialWaits(input, opened, known);
  const problem: PlanningProblem = {
    epochAt,
    nowMinute: minuteOf(sinceAt),
    horizonMinute,
    batches: batches.map(({ head }) => ({
      id: head.id,
      name: `Batch ${head.number}`,
      releaseMinute: head.releaseOn === null ? 0 : minuteOf(instantOfWallTime(head.releaseOn, 0, zone)),
      dueMinute: head.dueOn === null ? null : minuteOf(instantOfWallTime(head.dueOn, 1440, zone)),
      weight: head.weight,
    })),
    tasks: opened.map((task) => {
      const wait = waits.get(task.id);
      return wait === undefined ? task : { ...task, releaseMinute: minuteOf(wait.fromAt) };
    }),
    links: made.flatMap(({ links }) => links),
    people: input.people.map((person) => benchPerson(input, person, { epochAt, sinceAt, horizonAt })),
    resources: input.resources.map((one) => resourcePlaces(one, zone, epochAt, nowAt - DAY_MS, horizonAt)),
    lagTables: tables.all(),
  };
  return {
    problem,
    about: new Map([...known].map(([id, one]) => [id, { ...one, materialWait: waits.get(id) ?? null }])),
    notes: [...made.flatMap((one) => one.notes), ...notes],
    zone,
  };
}

/**
 * When a person can attend. On a day of their own nothing else holds; on a day of the whole shop that differs they are
 * there for what of its hours they have, and beside their own only in hours that the shop opens for everybody.
 */
function benchPerson(
  input: PlanInput,
  person: PlanPerson,
  {
    epochAt,
    sinceAt,
    horizonAt,
  }: { readonly epochAt: Instant; readonly sinceAt: Instant; readonly horizonAt: Instant },
): BenchPerson {
  const own = input.exceptions.filter(({ personId }) => personId === person.id);
  const ownDays = new Set(own.map(({ onDate }) => onDate));
  const shops = input.exceptions.filter(({ personId, onDate }) => personId === null && !ownDays.has(onDate));
  const hoursOf = ({ fromMinute, toMinute }: (typeof own)[number]) =>
    fromMinute === null || toMinute === null ? null : { fromMinute, toMinute };
  const exceptions: DayException[] = [
    ...own.map((day) => ({ onDate: day.onDate, effect: 'instead' as const, hours: hoursOf(day) })),
    ...shops.map((day) => ({
      onDate: day.onDate,
      effect: day.opensHours ? ('beside' as const) : ('within' as const),
      hours: hoursOf(day),
    })),
  ];
  const weekly = person.benchHours.flatMap(({ weekday, fromMinute, toMinute }): WeeklyHours[] => {
    const known = WEEKDAYS.find((day) => day === weekday);
    return known === undefined ? [] : [{ weekday: known, fromMinute, toMinute }];
  });
  const { zone } = input;
  const { id, name, skills } = person;
  return { id, name, skills, sessions: benchSessions(weekly, exceptions, zone, epochAt, sinceAt, horizonAt) };
}
