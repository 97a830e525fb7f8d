import type { CouponBoard } from '@/lib/pulltest/coupon-layout';
import { couponLayout } from '@/lib/pulltest/coupon-layout';
import type { DesignInput, Digest, Specimen } from '@/lib/pulltest/pull-design';
import type { PullQuestion } from '@/lib/pulltest/pull-mode';
import type { SeriesGoal } from '@/lib/pulltest/series-analysis';

/** What a second factor of a series varies; `none`: depth alone. */
export const PULL_FACTORS = ['none', 'wood', 'adhesive', 'wire'] as const;
export type PullFactor = (typeof PULL_FACTORS)[number];

/** One level of the second factor: what its specimens are made of. */
export interface PlanCondition {
  /** Unique within the plan; what a reading's condition says. */
  readonly name: string;
  readonly woodMaterialId: string | null;
  readonly adhesiveMaterialId: string | null;
  readonly wireMaterialId: string | null;
  readonly wireDiameterMm: number;
  readonly bitDiameterMm: number;
}

/** What a series was meant to be, as it is stored with it. */
export interface PullPlan {
  /** Rising, mm. */
  readonly depthsMm: readonly number[];
  readonly factor: PullFactor;
  readonly conditions: readonly PlanCondition[];
  /** Of each kind of glue. */
  readonly mixes: number;
  readonly seed: string;
  readonly order: 'all' | 'mix-by-mix';
  readonly question: PullQuestion;
  readonly goal: {
    /** N; null: none named. */
    readonly demandN: number | null;
    readonly stepMm: number;
    readonly content: number;
    readonly confidence: number;
  };
  /** Null: no board is drawn, as for pieces of a batch. */
  readonly board: Omit<CouponBoard, 'shankDiameterMm'> | null;
}

/** The design that a plan asks for. A glue cannot share a mix with another glue; woods and wires can. */
export function designOfPlan({ depthsMm, conditions, factor, mixes, seed, order }: PullPlan): DesignInput {
  const names = conditions.map(({ name }) => name);
  return { depthsMm, conditions: names, sharesMixes: factor !== 'adhesive', mixes, seed, order };
}

/** Where the specimens stand; null where the plan draws no board. A wood goes on boards of its own. */
export function layoutOfPlan(plan: PullPlan, specimens: readonly Specimen[], digest: Digest) {
  if (plan.board === null) return null;
  const shankDiameterMm = Math.max(
    ...plan.conditions.map(({ wireDiameterMm, bitDiameterMm }) => Math.max(2 * wireDiameterMm, bitDiameterMm)),
  );
  const boardOf = plan.factor === 'wood' ? ({ condition }: Specimen) => condition : undefined;
  return couponLayout(specimens, { ...plan.board, shankDiameterMm }, plan.seed, digest, boardOf);
}

/** What a series of this plan is judged by. The seed of its rearrangements comes from the first digits of its digest. */
export function goalOfPlan({ goal, seed }: PullPlan, digest: Digest, depthMm: number | null = null): SeriesGoal {
  const { demandN, stepMm, content, confidence } = goal;
  const number = Number.parseInt(digest(`${seed}:rearranged`).slice(0, 8), 16);
  return { demandN, depthMm, stepMm, certainty: { content, confidence }, seed: number };
}
