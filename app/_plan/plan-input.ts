import type { KnownBatch } from '@/lib/batch/evaluation';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { CureLanes } from '@/lib/cure/cure-lanes';
import type { CureLaw } from '@/lib/cure/lane-rate';
import type { Instant } from '@/lib/units/instant';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { BillNeedRow, StockedMaterial } from '@/prisma/data/batch-needs';
import type { BatchHead } from '@/prisma/data/batches';
import type { OperationPlanning } from '@/prisma/data/operation-planning';
import type { BenchException, BenchStretch, PersonName } from '@/prisma/data/people';
import type { PlanPin } from '@/prisma/data/plan-pins';
import type { ShopResource } from '@/prisma/data/resources';
import type { StockOrder } from '@/prisma/data/stock-orders';

/** An open batch as the plan takes it in. */
export interface PlanBatch {
  readonly head: BatchHead;
  readonly known: KnownBatch;
}

/** Someone who can be planned for. */
export interface PlanPerson extends PersonName {
  readonly skills: readonly string[];
  readonly benchHours: readonly BenchStretch[];
}

/** A material that a step mixes. */
export interface PlanMaterial {
  readonly name: string;
  /** null: no data sheet is entered. */
  readonly sheet: AdhesiveSheet | null;
}

/** What open batches need of materials, what is there and what is ordered. */
export interface PlanStock {
  readonly bills: readonly BillNeedRow[];
  /** What open batches took, by `needKey`. */
  readonly taken: ReadonlyMap<string, number>;
  readonly materials: readonly StockedMaterial[];
  readonly orders: readonly StockOrder[];
}

/** Everything the plan is made of, as it stands at one instant. */
export interface PlanInput {
  readonly nowAt: Instant;
  readonly zone: string;
  readonly batches: readonly PlanBatch[];
  /** By operation id. */
  readonly planning: ReadonlyMap<string, OperationPlanning>;
  /** By material id. */
  readonly materials: ReadonlyMap<string, PlanMaterial>;
  readonly people: readonly PlanPerson[];
  readonly exceptions: readonly Omit<BenchException, 'id' | 'reason'>[];
  readonly resources: readonly ShopResource[];
  readonly pins: readonly PlanPin[];
  readonly stock: PlanStock;
  /** How quantities are told. */
  readonly units: UnitChoice;
  /** The cure of a law in the shop's temperature, as logged and expected. */
  readonly lanesOf: (law: CureLaw) => CureLanes;
}

/** How far the plan looks ahead: the course of temperature reaches a little further. Chosen in the issue: 8 weeks. */
export const PLAN_DAYS = 56;
