import { z } from 'zod';
import type { CalibrationPull, CalibrationWarning } from '@/lib/pulltest/calibration';
import { PULL_QUESTIONS } from '@/lib/pulltest/pull-mode';
import { PULL_FACTORS, type PullPlan } from '@/lib/pulltest/pull-plan';
import { PULL_FAILURES } from '@/lib/strength/pull-reading';
import { idSchema, plainText } from './plain-text';

const millimetres = (least: number, most: number) => z.number().min(least).max(most);
const materialId = idSchema.nullable();

const conditionSchema = z.strictObject({
  name: plainText(1, 200),
  woodMaterialId: materialId,
  adhesiveMaterialId: materialId,
  wireMaterialId: materialId,
  wireDiameterMm: millimetres(0.1, 12),
  bitDiameterMm: millimetres(0.1, 25),
});

/** The plan of a series as the store keeps it, checked whenever it is read. */
export const pullPlanSchema: z.ZodType<PullPlan> = z.strictObject({
  depthsMm: z.array(millimetres(0.5, 500)).min(1).max(20).readonly(),
  factor: z.enum(PULL_FACTORS),
  conditions: z.array(conditionSchema).min(1).max(8).readonly(),
  mixes: z.int().min(1).max(60),
  seed: plainText(1, 80),
  order: z.enum(['all', 'mix-by-mix']),
  question: z.enum(PULL_QUESTIONS),
  goal: z.strictObject({
    demandN: z.number().positive().nullable(),
    stepMm: millimetres(0.05, 25.4),
    content: z.number().min(0.5).max(0.999),
    confidence: z.number().min(0.5).max(0.999),
  }),
  board: z
    .strictObject({
      lengthMm: millimetres(10, 5_000),
      widthMm: millimetres(10, 2_000),
      thicknessMm: millimetres(2, 500),
      edgeMm: millimetres(1, 500),
      spacingMm: millimetres(1, 500),
    })
    .nullable(),
});

/** What a series' history names. */
export const PULL_CHANGE_KINDS = [
  'series-made',
  'mix-changed',
  'pull-recorded',
  'pull-corrected',
  'pull-excluded',
  'pull-counted-again',
  'photo-kept',
  'imported',
  'calibration-accepted',
  'closed',
  'reopened',
] as const;
export type PullChangeKind = (typeof PULL_CHANGE_KINDS)[number];

const calibrationPullSchema = z.strictObject({
  pullId: idSchema,
  loadN: z.number().min(0),
  failure: z.enum(PULL_FAILURES),
  isLowerBound: z.boolean(),
  excludedReason: z.string().nullable(),
});

const WARNINGS = [
  'fewer-than-3-mixes',
  'fewer-than-3-depths',
  'fewer-than-8-failed',
  'scale-not-checked',
] as const satisfies readonly CalibrationWarning[];

/** A pull with the specimen it was made on, as far as the strength of other joints is read from it. */
export interface StoredCalibrationPull extends CalibrationPull {
  readonly embedmentMm: number;
  readonly wireDiameterMm: number;
  readonly bitDiameterMm: number;
  readonly pulledAt: number;
}

/** What an accepted calibration holds for ever. */
export interface StoredCalibration {
  readonly seriesIds: readonly string[];
  readonly conditionName: string;
  readonly pulls: readonly StoredCalibrationPull[];
  readonly warnings: readonly CalibrationWarning[];
  readonly adhesiveLotCodes: readonly string[];
  /** The answer as it read when it was accepted, in words and the shop's units of that day. */
  readonly conclusion: readonly string[];
}

export const storedCalibrationSchema: z.ZodType<StoredCalibration> = z.strictObject({
  seriesIds: z.array(idSchema).min(1).readonly(),
  conditionName: z.string(),
  pulls: z
    .array(
      calibrationPullSchema.extend({
        embedmentMm: millimetres(0, 500),
        wireDiameterMm: millimetres(0.1, 12),
        bitDiameterMm: millimetres(0.1, 25),
        pulledAt: z.number(),
      }),
    )
    .readonly(),
  warnings: z.array(z.enum(WARNINGS)).readonly(),
  adhesiveLotCodes: z.array(z.string()).readonly(),
  conclusion: z.array(z.string()).readonly(),
});
