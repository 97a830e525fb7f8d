import type { MinuteSpan } from '@/lib/schedule/planning-problem';

/** When and by whom a task is done. */
export interface PlannedTask {
  readonly taskId: string;
  /** null: nobody is needed, or it is history without a name. */
  readonly personId: string | null;
  /** With its set-up. */
  readonly startMinute: number;
  /** End of the attended minutes. */
  readonly finishMinute: number;
  /** The stretches in which it is attended; one, unless it may be put down; none where nobody attends. */
  readonly pieces: readonly MinuteSpan[];
  /** Minutes of its set-up that it pays; 0 where another task of the session has. */
  readonly setUpMinutes: number;
  /** Greatest lags that it misses, with their remedies done. */
  readonly remedyLinkIds: readonly string[];
}

/** Why a task has no place in a plan. */
export type UnplacedReason =
  | { readonly kind: 'nobody-may' }
  | { readonly kind: 'no-session-long-enough'; readonly neededMinutes: number; readonly longestMinutes: number }
  | { readonly kind: 'resource-too-small'; readonly resourceId: string; readonly amount: number; readonly most: number }
  | { readonly kind: 'never-cured'; readonly linkId: string | null }
  | { readonly kind: 'window-cannot-be-met'; readonly linkId: string }
  | { readonly kind: 'no-room-before-horizon' }
  | { readonly kind: 'waits-for-unplaced'; readonly taskId: string };

export interface UnplacedTask {
  readonly taskId: string;
  readonly reason: UnplacedReason;
}

/** A plan: every task of the problem is either placed or said to have no place, with the reason. */
export interface ShopPlan {
  readonly placed: readonly PlannedTask[];
  readonly unplaced: readonly UnplacedTask[];
}
