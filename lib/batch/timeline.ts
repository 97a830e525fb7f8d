import type { MixPotLife } from '@/lib/batch/batch-state';
import type { ReleaseBand, UnjudgedCode } from '@/lib/batch/cure-reader';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/** A mix as a bar: from mixing through its pot life to its closing. */
export interface MixSpan {
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationId: string;
  readonly materialName: string;
  readonly mixedAt: Instant;
  readonly potLife: MixPotLife;
  readonly closedAt: Instant | null;
}

/** A milestone on a cure bar, or why it cannot be told. */
export type MilestoneMark =
  | { readonly milestone: Milestone; readonly ok: true; readonly band: ReleaseBand }
  | { readonly milestone: Milestone; readonly ok: false; readonly code: UnjudgedCode };

/** A cure clock as a bar: from setting through its milestones. */
export interface CureSpan {
  readonly clockId: string;
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationId: string;
  readonly materialName: string;
  readonly setAt: Instant;
  readonly pieces: readonly number[];
  readonly late: boolean;
  /** The milestones on the sheet but `recoat-from` and `recoat-by`, in the order they are reached. */
  readonly marks: readonly MilestoneMark[];
  /** Open for sure from `opensAt` until `closesAt`; `opensAt` may lie after `closesAt`: then there is no sure window. */
  readonly recoatWindow: { readonly opensAt: Instant | null; readonly closesAt: Instant | null } | null;
}

export interface BatchTimeline {
  /** The first mixing and the last thing drawn; null when there is nothing to draw. */
  readonly fromAt: Instant | null;
  readonly toAt: Instant | null;
  readonly mixes: readonly MixSpan[];
  readonly cures: readonly CureSpan[];
}
