import { z } from 'zod';
import type { PlanningProblem } from '@/lib/schedule/planning-problem';
import type { ShopPlan } from '@/lib/schedule/shop-plan';
import type { BothWays } from './same-type';

/** Most tasks, people, resources and sessions that a problem may have: what a plan is made for, with room to spare. */
const MOST = { batches: 200, tasks: 4_000, links: 20_000, people: 50, resources: 100, tables: 2_000, steps: 20_000 };

const id = z.string().min(1).max(200);
const minute = z.int().min(-10_000_000).max(10_000_000);
const minutes = z.int().min(0).max(10_000_000);

const lagSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fixed'), minutes: minute }),
  z.strictObject({ kind: z.literal('table'), tableId: id }),
]);

const lagTableSchema = z.strictObject({
  id,
  startMinute: minute,
  stepMinutes: z.int().min(1).max(100_000),
  minutes: z.array(minutes.nullable()).max(MOST.steps).readonly(),
});

const spanSchema = z.strictObject({ startMinute: minute, endMinute: minute });

const stateSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('open') }),
  z.strictObject({ kind: z.literal('pinned'), startMinute: minute, personId: id.nullable() }),
  z.strictObject({
    kind: z.literal('under-way'),
    startMinute: minute,
    finishMinute: minute,
    personId: id.nullable(),
  }),
  z.strictObject({ kind: z.literal('done'), startMinute: minute, finishMinute: minute, personId: id.nullable() }),
]);

const taskSchema = z.strictObject({
  id,
  batchId: id,
  name: z.string().max(300),
  attendedMinutes: minutes,
  by: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('anyone') }),
    z.strictObject({ kind: z.literal('skill'), skill: id }),
    z.strictObject({ kind: z.literal('person'), personId: id }),
  ]),
  leastPieceMinutes: z.int().min(1).max(100_000).nullable(),
  setUp: z.strictObject({ key: id, minutes }).nullable(),
  releaseMinute: minute,
  holds: z
    .array(z.strictObject({ resourceId: id, amount: minutes, until: lagSchema }))
    .max(20)
    .readonly(),
  readyAfter: lagSchema,
  state: stateSchema,
});

const linkEnds = {
  id,
  fromTaskId: id,
  from: z.enum(['start', 'finish']),
  toTaskId: id,
  to: z.enum(['start', 'finish']),
  lag: lagSchema,
};

const linkSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('least'), ...linkEnds }),
  z.strictObject({
    kind: z.literal('greatest'),
    ...linkEnds,
    remedy: z.strictObject({ minutes, words: z.string().max(300) }).nullable(),
  }),
]);

/** A planning problem as it is stored or handed to a worker. Whether its parts fit each other: `problemFaults`. */
export const planningProblemSchema = z.strictObject({
  epochAt: z.int(),
  nowMinute: minute,
  horizonMinute: minute,
  batches: z
    .array(
      z.strictObject({
        id,
        name: z.string().max(300),
        releaseMinute: minute,
        dueMinute: minute.nullable(),
        weight: z.number().min(0).max(1_000_000),
      }),
    )
    .max(MOST.batches)
    .readonly(),
  tasks: z.array(taskSchema).max(MOST.tasks).readonly(),
  links: z.array(linkSchema).max(MOST.links).readonly(),
  people: z
    .array(
      z.strictObject({
        id,
        name: z.string().max(300),
        skills: z.array(id).max(100).readonly(),
        sessions: z.array(spanSchema).max(2_000).readonly(),
      }),
    )
    .max(MOST.people)
    .readonly(),
  resources: z
    .array(
      z.strictObject({
        id,
        name: z.string().max(300),
        capacity: minutes,
        changes: z
          .array(z.strictObject({ fromMinute: minute, capacity: minutes }))
          .max(2_000)
          .readonly(),
      }),
    )
    .max(MOST.resources)
    .readonly(),
  lagTables: z.array(lagTableSchema).max(MOST.tables).readonly(),
});

const reasonSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('nobody-may') }),
  z.strictObject({
    kind: z.literal('no-session-long-enough'),
    neededMinutes: minutes,
    longestMinutes: minutes,
  }),
  z.strictObject({ kind: z.literal('resource-too-small'), resourceId: id, amount: minutes, most: minutes }),
  z.strictObject({ kind: z.literal('never-cured'), linkId: id.nullable() }),
  z.strictObject({ kind: z.literal('window-cannot-be-met'), linkId: id }),
  z.strictObject({ kind: z.literal('no-room-before-horizon') }),
  z.strictObject({ kind: z.literal('waits-for-unplaced'), taskId: id }),
]);

/** A plan as it is stored. */
export const shopPlanSchema = z.strictObject({
  placed: z
    .array(
      z.strictObject({
        taskId: id,
        personId: id.nullable(),
        startMinute: minute,
        finishMinute: minute,
        pieces: z.array(spanSchema).max(2_000).readonly(),
        setUpMinutes: minutes,
        remedyLinkIds: z.array(id).max(50).readonly(),
      }),
    )
    .max(MOST.tasks)
    .readonly(),
  unplaced: z
    .array(z.strictObject({ taskId: id, reason: reasonSchema }))
    .max(MOST.tasks)
    .readonly(),
});

/** Fails to compile while the schema and the type in lib/schedule differ. @lintignore */
export type SameProblem = BothWays<z.infer<typeof planningProblemSchema>, PlanningProblem>;
/** The same for a plan. @lintignore */
export type SamePlan = BothWays<z.infer<typeof shopPlanSchema>, ShopPlan>;
