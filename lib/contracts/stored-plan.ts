import { z } from 'zod';
import { OPERATION_KINDS } from '@/lib/batch/plan';
import { idSchema } from './plain-text';

const instant = z.number();
const spanSchema = z.strictObject({ startAt: instant, endAt: instant });

/** A visit to the bench as it is planned. */
export const plannedVisitSchema = z.strictObject({
  /** Names the visit for as long as its batch lives. */
  key: z.string(),
  batchId: z.string(),
  batchNumber: z.int(),
  modelName: z.string(),
  operationId: z.string(),
  taskKey: z.string(),
  operationName: z.string(),
  kind: z.enum(OPERATION_KINDS),
  materialName: z.string().nullable(),
  pieces: z.array(z.int()),
  /** open: as the planner likes; pinned: as the maker wants; under-way and done: as it happened. */
  state: z.enum(['open', 'pinned', 'under-way', 'done']),
  personId: z.string().nullable(),
  startAt: instant,
  finishAt: instant,
  /** The stretches in which it is attended. */
  stretches: z.array(spanSchema),
  setUpMinutes: z.number(),
  /** What is done because a recoat window closes before: the remedies in words. */
  remedies: z.array(z.string()),
  /** When its cure is far enough for what follows; null: it cures nothing that is waited for. */
  curedAt: instant.nullable(),
  /** When its recoat window closes; null: it has none. */
  closesAt: instant.nullable(),
  /** Stock that it waits for, in words: `12 g of Slow epoxy is expected on Thu 12 Mar 2026`; null: none. */
  waitsFor: z.string().nullable().default(null),
  /** Places it takes, and until when. */
  holds: z.array(z.strictObject({ resourceId: z.string(), amount: z.number(), untilAt: instant })),
});
export type PlannedVisit = z.infer<typeof plannedVisitSchema>;

const valueSchema = z.strictObject({
  conflicts: z.number(),
  weightedLateMinutes: z.number(),
  closedWindows: z.number(),
  sessions: z.number(),
  setUps: z.number(),
  makespanMinute: z.number(),
});

/** A batch in a plan: when it should be ready and when it is. */
const plannedBatchSchema = z.strictObject({
  batchId: z.string(),
  number: z.int(),
  modelName: z.string(),
  weight: z.number(),
  dueAt: instant.nullable(),
  /** null: not within the weeks that are planned. */
  readyAt: instant.nullable(),
});
export type PlannedBatchLine = z.infer<typeof plannedBatchSchema>;

/** What has no place, or a pin that cannot be kept: why, and what would change that, each in a sentence. */
const impossibleSchema = z.strictObject({
  key: z.string(),
  label: z.string(),
  reason: z.string(),
  /** Plans of before have none. */
  lifts: z.array(z.string()).default([]),
  /** What it waits for, which has no place either; null: it is the first that has none. */
  waitsForKey: z.string().nullable().default(null),
});
export type ImpossibleVisit = z.infer<typeof impossibleSchema>;

/** A visit that moved against the plan before, and why. */
const movedSchema = z.strictObject({
  key: z.string(),
  label: z.string(),
  fromAt: instant,
  toAt: instant,
  cause: z.string(),
});
export type MovedVisit = z.infer<typeof movedSchema>;

/** A plan in the shop's terms, as it is shown, accepted and kept. */
export const timetableSchema = z.strictObject({
  visits: z.array(plannedVisitSchema),
  unplaced: z.array(impossibleSchema),
  /** Pins that cannot be kept where they are. */
  pinClashes: z.array(impossibleSchema).default([]),
  batches: z.array(plannedBatchSchema),
  value: valueSchema,
  /** Weighted minutes late that no plan can avoid; null: not computed. */
  unavoidableLateMinutes: z.number().nullable(),
  /** Whether it is proved that no better plan exists. */
  isProvedBest: z.boolean(),
  moved: z.array(movedSchema),
  /** What had been changed for a comparison when it was made; empty: nothing. */
  whatIf: z.array(z.string()),
});
export type Timetable = z.infer<typeof timetableSchema>;

const placesSchema = z.strictObject({ resourceId: idSchema, places: z.int().min(1).max(500) });
const minuteSchema = z.int().min(0).max(2_880);

/** What is tried against the plan: the shop as it might be. Nothing of it is saved. */
export const whatIfSchema = z.strictObject({
  /** One more rotator: places added to a resource. */
  extraPlaces: z.array(placesSchema).max(10).default([]),
  /** A heater: the expected temperature is so much higher. */
  warmerC: z.number().min(-20).max(20).default(0),
  /** One more evening a week of a person. */
  extraHours: z
    .array(
      z.strictObject({
        personId: idSchema,
        weekday: z.int().min(1).max(7),
        fromMinute: minuteSchema,
        toMinute: minuteSchema,
      }),
    )
    .max(10)
    .default([]),
  /** A faster glue: what is mixed from now on is another material. */
  materials: z
    .array(z.strictObject({ fromId: idSchema, toId: idSchema }))
    .max(10)
    .default([]),
  withoutBatchIds: z.array(idSchema).max(100).default([]),
});
export type WhatIf = z.infer<typeof whatIfSchema>;

/** Asks for a plan. */
export const planRequestSchema = z.strictObject({ whatIf: whatIfSchema.nullable().default(null) });

/** Pins a visit at an hour, or lets it go. */
export const pinRequestSchema = z.strictObject({
  batchId: idSchema,
  taskKey: z.string().regex(/^[A-Za-z0-9_-]{1,64}\.\d{1,4}$/, 'not a visit'),
  /** null: no longer pinned. */
  startAt: z.int().nullable(),
  personId: idSchema.nullable().default(null),
});
export type PinRequest = z.infer<typeof pinRequestSchema>;
