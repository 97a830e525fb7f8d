import type { BatchClock, BatchState } from '@/lib/batch/batch-state';
import type { MilestoneRelease, ReleaseBand, UnjudgedCode } from '@/lib/batch/cure-reader';
import type { BatchPlan } from '@/lib/batch/plan';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/** The releases of a batch's clocks, each computed when first asked for and then remembered. Does not know the time. */
export interface ReleaseBook {
  release(clock: BatchClock, milestone: Milestone): MilestoneRelease;
  /** The soonest end of a band told so far that lies after `at`; plus infinity without one. */
  nextEndAfter(at: Instant): Instant;
}

/** A batch as far as its events and the temperature tell: everything but the time of day. */
export interface KnownBatch {
  readonly plan: BatchPlan;
  readonly state: BatchState;
  /** Keep it for as long as events and temperature are the same. */
  readonly releases: ReleaseBook;
}

/** What an operation on a piece still waits for. Several joints: the band of the last of them. */
export interface WaitingFor {
  /** The earlier operation whose cure is waited for. */
  readonly operationId: string;
  /** `done`: it is recorded as done later than the time in question. */
  readonly milestone: Milestone | 'done';
  readonly mixIds: readonly string[];
  readonly band: ReleaseBand;
}

/** Why nobody can say whether an operation may be done. */
export interface NotJudged {
  readonly operationId: string;
  readonly milestone: Milestone | 'done';
  readonly code: UnjudgedCode;
}

/** What stands between a piece and an operation that is not done yet. */
export type OperationStatus =
  /** Can be done now: `sinceAt` its needs are met; `closesAt` when a recoat window ends, null without one. */
  | { readonly kind: 'ready'; readonly sinceAt: Instant; readonly closesAt: Instant | null }
  | { readonly kind: 'waits'; readonly waiting: WaitingFor }
  /** The recoat window of `operationId` closed at `closedAt`; `remedy` in the sheet's words, null: wash, dry, sand. */
  | {
      readonly kind: 'window-closed';
      readonly operationId: string;
      readonly closedAt: Instant;
      readonly remedy: string | null;
    }
  /** Everything that can be judged is met, but this cannot be judged: not shown as ready. */
  | { readonly kind: 'not-judged'; readonly missing: NotJudged }
  /** Earlier operations of the route are not done on the piece. */
  | { readonly kind: 'blocked'; readonly byOperationIds: readonly string[] };

/** Pieces that stand equally before one operation. */
export interface StageGroup {
  readonly operationId: string;
  /** Rising. */
  readonly pieces: readonly number[];
  readonly status: OperationStatus;
}

/** A clock and the next milestone it reaches. */
export interface ClockRelease {
  readonly clock: BatchClock;
  readonly milestone: Milestone;
  readonly band: ReleaseBand;
}

/** What a batch's state means at one instant. */
export interface BatchEvaluation {
  readonly nowAt: Instant;
  /** In route order; within an operation by first piece. */
  readonly groups: readonly StageGroup[];
  /** For every clock that something still waits for, the next milestone not reached for sure; soonest first. */
  readonly nextReleases: readonly ClockRelease[];
  readonly livePieces: number;
  /** Live pieces with every operation done. */
  readonly donePieces: number;
}
