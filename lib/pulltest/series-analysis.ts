import { type DepthSummaries, depthSummaries } from '@/lib/pulltest/depth-summary';
import { type LeastEmbedment, leastEmbedment } from '@/lib/pulltest/least-embedment';
import {
  type CurvePoint,
  factorAt,
  type LowerModel,
  type LowerModelResult,
  lowerCurve,
  lowerModel,
  lowerN,
} from '@/lib/pulltest/lower-model';
import { type MixFinding, mixFinding } from '@/lib/pulltest/mix-effects';
import { type OutlierCheck, outlierFlags } from '@/lib/pulltest/outlier-flags';
import { type SensitivityLine, sensitivity } from '@/lib/pulltest/sensitivity';
import type { SeriesReadings } from '@/lib/pulltest/series-readings';
import type { Certainty } from '@/lib/statistics/interpolated-factor';
import { type NonAdditivity, nonAdditivity } from '@/lib/statistics/non-additivity';
import { type TwoWayAnova, twoWayAnova } from '@/lib/statistics/two-way-anova';
import { twoWayFit } from '@/lib/statistics/two-way-fit';

/** What a series is judged by. */
export interface SeriesGoal {
  /** Load the joint shall carry, N; null: none named. */
  readonly demandN: number | null;
  /** Depth the answer is compared at, mm; null: the middle one of those tested. */
  readonly depthMm: number | null;
  /** The shop's step of depths, mm. */
  readonly stepMm: number;
  readonly certainty: Certainty;
  /** For rearrangements that are too many to count. */
  readonly seed: number;
}

/** The lower value at one depth, with the factor T it was made with. */
export interface LowerAtDepth {
  readonly depthMm: number;
  readonly lowerN: number;
  readonly factor: number;
}

/** Everything one set of readings says. */
export interface SeriesAnalysis {
  readonly depths: DepthSummaries;
  /** Depth and mix on logarithms, of the exact readings; null where they cannot be told apart or some are bounds. */
  readonly anova: TwoWayAnova | null;
  /** Whether mixes differ in percent (loads: yes, logarithms: no); null as above or where it cannot be tested. */
  readonly additivity: { readonly loads: NonAdditivity | null; readonly logs: NonAdditivity | null } | null;
  readonly mixes: MixFinding | null;
  readonly outliers: OutlierCheck;
  readonly lower: LowerModelResult;
  /** Points to draw the lower values by; empty where there are none. */
  readonly curve: readonly CurvePoint[];
  /** Lower value at the depth of comparison; null where there is none. */
  readonly atDepth: LowerAtDepth | null;
  /** Null where no demand was named or no lower value can be stated. */
  readonly least: LeastEmbedment | null;
  readonly sensitivity: readonly SensitivityLine[];
}

/** Analyses readings as they are; which pulls count was decided before (see `judgePulls`). */
export function seriesAnalysis(series: SeriesReadings, goal: SeriesGoal): SeriesAnalysis {
  const lower = lowerModel(series, goal.certainty);
  const mixes = mixFinding(series, goal.seed);
  const outliers = outlierFlags(series);
  const table = tableTests(series);
  const curve = lower.ok ? lowerCurve(lower.model) : [];
  const depthMm = goal.depthMm ?? series.depthsMm[Math.floor(series.depthsMm.length / 2)] ?? null;
  const atDepth = lower.ok && depthMm !== null ? lowerAtDepth(lower.model, depthMm) : null;
  return {
    depths: depthSummaries(series),
    anova: table?.anova ?? null,
    additivity: table?.additivity ?? null,
    mixes,
    outliers,
    lower,
    curve,
    atDepth,
    least: lower.ok && goal.demandN !== null ? leastEmbedment(lower.model, goal.demandN, goal.stepMm, curve) : null,
    sensitivity: sensitivity(series, goal.certainty, { atDepth, mixes, outliers }),
  };
}

function lowerAtDepth(model: LowerModel, depthMm: number): LowerAtDepth | null {
  const [lower, factor] = [lowerN(model, depthMm), factorAt(model, depthMm)];
  return lower === null || factor === null ? null : { depthMm, lowerN: lower, factor };
}

function tableTests({ readings }: SeriesReadings) {
  if (readings.length === 0 || readings.some(({ isLowerBound }) => isLowerBound)) return null;
  const logs = readings.map(({ level, mix, y }) => ({ treatment: level, block: mix, y }));
  const fit = twoWayFit(logs);
  if (!fit.ok) return null;
  const loads = readings.map(({ level, mix, y }) => ({ treatment: level, block: mix, y: Math.exp(y) }));
  const loadFit = twoWayFit(loads);
  return {
    anova: twoWayAnova(logs, fit),
    additivity: {
      loads: loadFit.ok ? nonAdditivity(loads, loadFit) : null,
      logs: nonAdditivity(logs, fit),
    },
  };
}
