import 'server-only';
import type { StoredCalibration } from '@/lib/contracts/pull-plan';
import {
  type CalibrationKey,
  type CalibrationRefusal,
  type CalibrationWarning,
  calibrationDraft,
} from '@/lib/pulltest/calibration';
import { conclusion } from '@/lib/pulltest/conclusion';
import type { PlanCondition } from '@/lib/pulltest/pull-plan';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { PullSeries } from '@/prisma/data/pull-series';
import type { AnalysedSeries } from './pull-page';

/** What accepting one condition of a series would write down, or why it may not be accepted. */
export type ConditionDraft =
  | {
      readonly ok: true;
      readonly condition: PlanCondition;
      readonly key: CalibrationKey;
      readonly body: StoredCalibration;
      readonly warnings: readonly CalibrationWarning[];
      /** Depth over which strength bends in these pulls, mm; null where they do not show it. */
      readonly saturationMm: number | null;
    }
  | { readonly ok: false; readonly code: CalibrationRefusal | 'no-material' | 'no-condition' };

/** Turns an analysed condition into a calibration. */
export function conditionDraft(
  series: PullSeries,
  { analyses, goal, words }: AnalysedSeries,
  conditionName: string,
  units: UnitChoice,
): ConditionDraft {
  const condition = series.plan.conditions.find(({ name }) => name === conditionName);
  const analysis = analyses.find((one) => one.condition === conditionName);
  if (condition === undefined) return { ok: false, code: 'no-condition' };
  if (analysis === undefined) return { ok: false, code: 'no-readings' };
  const { woodMaterialId: woodId, adhesiveMaterialId: adhesiveId, wireMaterialId: wireId } = condition;
  if (woodId === null || adhesiveId === null || wireId === null) return { ok: false, code: 'no-material' };
  const draft = calibrationDraft(analysis.pulls);
  if (!draft.ok) return draft;
  const records = new Map(analysis.pulls.map(({ record }) => [record.id, record]));
  const used = new Set(analysis.pulls.map(({ record }) => record.mixId));
  const lots = series.mixes.filter(({ id }) => used.has(id)).map(({ adhesiveLotCode }) => adhesiveLotCode);
  const { wireDiameterMm, bitDiameterMm } = condition;
  return {
    ok: true,
    condition,
    key: { woodId, adhesiveId, wireId },
    warnings: draft.warnings,
    saturationMm: draft.saturation.ok && draft.saturation.rate > 0 ? 1 / draft.saturation.rate : null,
    body: {
      seriesIds: [series.id],
      conditionName,
      pulls: draft.pulls.map((pull) => ({
        ...pull,
        embedmentMm: records.get(pull.pullId)?.embedmentMm ?? 0,
        wireDiameterMm,
        bitDiameterMm,
        pulledAt: records.get(pull.pullId)?.pulledAt ?? 0,
      })),
      warnings: draft.warnings,
      adhesiveLotCodes: [...new Set(lots.filter((code) => code !== ''))],
      conclusion: conclusion(analysis, goal, words).map((sentence) => wordsText(sentence.words, units)),
    },
  };
}
