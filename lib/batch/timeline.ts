import type { BatchClock, MixPotLife } from '@/lib/batch/batch-state';
import type { ReleaseBand, UnjudgedCode } from '@/lib/batch/cure-reader';
import type { KnownBatch, ReleaseBook } from '@/lib/batch/evaluation';
import { statedMilestones } from '@/lib/batch/next-releases';
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

/**
 * A batch's mixes and cure clocks as bars and marks for its page. Does not depend on the time of day. Milestones that
 * the sheet does not give are left out; what cannot be told for another reason keeps its reason.
 */
export function timelineOf({ state, releases }: KnownBatch): BatchTimeline {
  const mixes = state.mixes.map(
    (mix): MixSpan => ({
      mixId: mix.mixId,
      mixNumber: mix.number,
      operationId: mix.operationId,
      materialName: mix.materialName,
      mixedAt: mix.mixedAt,
      potLife: mix.potLife,
      closedAt: mix.closedAt,
    }),
  );
  const cures = state.clocks.map((clock) => cureSpan(clock, releases));
  const drawn = [...mixes.flatMap(mixInstants), ...cures.flatMap(cureInstants)].filter((at) => at !== null);
  let fromAt: Instant | null = null;
  let toAt: Instant | null = null;
  for (const at of drawn) {
    fromAt = Math.min(fromAt ?? at, at);
    toAt = Math.max(toAt ?? at, at);
  }
  return { fromAt, toAt, mixes, cures };
}

function cureSpan(clock: BatchClock, releases: ReleaseBook): CureSpan {
  const marks: MilestoneMark[] = [];
  for (const milestone of statedMilestones(clock.sheet)) {
    // The recoat window is drawn for itself.
    if (milestone === 'recoat-from' || milestone === 'recoat-by') continue;
    marks.push({ milestone, ...releases.release(clock, milestone) });
  }
  const opens = releases.release(clock, 'recoat-from');
  const closes = releases.release(clock, 'recoat-by');
  const { id: clockId, mixId, mixNumber, operationId, materialName, setAt, pieces, late } = clock;
  const recoatWindow =
    opens.ok || closes.ok
      ? { opensAt: opens.ok ? opens.band.latestAt : null, closesAt: closes.ok ? closes.band.earliestAt : null }
      : null;
  return { clockId, mixId, mixNumber, operationId, materialName, setAt, pieces, late, marks, recoatWindow };
}

function mixInstants({ mixedAt, potLife, closedAt }: MixSpan): readonly (Instant | null)[] {
  return [mixedAt, closedAt, potLife.ok ? potLife.upperAt : null];
}

function cureInstants({ setAt, marks, recoatWindow }: CureSpan): readonly (Instant | null)[] {
  const ends = marks.flatMap((mark) =>
    mark.ok ? [mark.band.earliestAt, mark.band.centralAt, mark.band.latestAt] : [],
  );
  return [setAt, ...ends, recoatWindow?.opensAt ?? null, recoatWindow?.closesAt ?? null];
}
