/** What a batch takes over from its revision when it opens, and never changes afterwards. */

/** `work` is attended only; `glue` sets joints with a mix; `coat` applies a film that cures. */
export const OPERATION_KINDS = ['work', 'glue', 'coat'] as const;
export type OperationKind = (typeof OPERATION_KINDS)[number];

/** What must be true of an earlier operation on the same piece: only done, or cured to a milestone. */
export const WAITS = ['done', 'handle', 'sand', 'recoat', 'paint', 'pull-test', 'ship'] as const;
export type Wait = (typeof WAITS)[number];

export interface OperationNeed {
  readonly operationId: string;
  /** `recoat` opens at recoat-from and closes at recoat-by; the others only open. */
  readonly wait: Wait;
}

export interface PlannedOperation {
  readonly id: string;
  readonly name: string;
  readonly kind: OperationKind;
  /** Attended minutes for one piece. */
  readonly attendedMinutes: number;
  /** The adhesive or coating material of a glue or coat operation. */
  readonly materialId: string | null;
  /** Anchors that a glue operation sets; empty otherwise. */
  readonly anchorIds: readonly string[];
  readonly needs: readonly OperationNeed[];
}

export interface PlannedAnchor {
  readonly id: string;
  readonly name: string;
}

export interface BatchPlan {
  readonly quantity: number;
  readonly anchors: readonly PlannedAnchor[];
  /** In route order: an operation's needs name only operations before it. */
  readonly operations: readonly PlannedOperation[];
}
