import type { OperationKind } from '@/lib/batch/plan';
import type { Instant } from '@/lib/units/instant';

/** What a task of the planner is in the shop. */
export interface TaskAbout {
  readonly batchId: string;
  readonly batchNumber: number;
  readonly modelName: string;
  readonly operationId: string;
  /** The operation and its visit, from 0: names the task within its batch for good. */
  readonly taskKey: string;
  readonly operationName: string;
  readonly kind: OperationKind;
  readonly materialId: string | null;
  readonly materialName: string | null;
  /** Pieces still to be done in this visit, rising; of what is done, those that were. */
  readonly pieces: readonly number[];
  /** A material that it waits for; null: everything is there. */
  readonly materialWait: MaterialWait | null;
}

/** Stock that has to come in before a step can begin. */
export interface MaterialWait {
  readonly fromAt: Instant;
  /** What it waits for, to follow "since": `12 g of Slow epoxy, resin, are expected on Thu 12 Mar 2026`. */
  readonly because: string;
}

/** Something that keeps a step from being planned, in words. */
export interface PlanNote {
  readonly batchId: string;
  readonly text: string;
}
