import type { RecordedAs } from '@/lib/batch/decision';
import { recordedAs } from '@/lib/batch/decision';
import type { BatchPlan, PlannedOperation, Wait } from '@/lib/batch/plan';

/** A need with the position of the operation it names; -1 when the plan has no such earlier operation. */
export interface IndexedNeed {
  readonly operationId: string;
  readonly index: number;
  readonly wait: Wait;
}

export interface IndexedOperation {
  readonly operation: PlannedOperation;
  readonly recordedAs: RecordedAs;
  readonly needs: readonly IndexedNeed[];
  /** Positions of the operations that need this one. */
  readonly neededBy: readonly number[];
}

/** A plan prepared for looking up. */
export interface PlanIndex {
  readonly operations: readonly IndexedOperation[];
  readonly indexOf: ReadonlyMap<string, number>;
}

const indexes = new WeakMap<BatchPlan, PlanIndex>();

/**
 * The plan with its operations found by id and its needs by position. Made once for each plan object. Of two
 * operations with one id the first counts; a need that names no earlier operation keeps position -1.
 */
export function planIndex(plan: BatchPlan): PlanIndex {
  const known = indexes.get(plan);
  if (known !== undefined) return known;
  const indexOf = new Map<string, number>();
  plan.operations.forEach((operation, index) => {
    if (!indexOf.has(operation.id)) indexOf.set(operation.id, index);
  });
  const neededBy: number[][] = plan.operations.map(() => []);
  const needs = plan.operations.map((operation, own) =>
    operation.needs.map((need): IndexedNeed => {
      const index = indexOf.get(need.operationId) ?? -1;
      if (index < 0 || index >= own) return { ...need, index: -1 };
      neededBy[index]?.push(own);
      return { ...need, index };
    }),
  );
  const operations = plan.operations.map(
    (operation, index): IndexedOperation => ({
      operation,
      recordedAs: recordedAs(operation),
      needs: needs[index] ?? [],
      neededBy: neededBy[index] ?? [],
    }),
  );
  const made = { operations, indexOf };
  indexes.set(plan, made);
  return made;
}
