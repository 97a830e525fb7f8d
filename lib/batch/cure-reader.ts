import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/**
 * The instants between which a milestone falls. For what opens (`handle`, `sand`, `recoat-from`, ...) an action is
 * allowed from `latestAt`; for what closes (`recoat-by`) it is over from `earliestAt`. Null: not within the time that
 * the temperature reaches (too cold, or too far ahead), so for an opening "not yet" and for a closing "not by then".
 */
export interface ReleaseBand {
  readonly earliestAt: Instant | null;
  readonly centralAt: Instant | null;
  readonly latestAt: Instant | null;
}

/** Why no release can be told. */
export const UNJUDGED_CODES = ['not-on-sheet', 'no-temperature', 'no-clock', 'bad-sheet'] as const;
/**
 * `not-on-sheet`: the data sheet gives no hours for this milestone. `no-temperature`: no temperature is known or
 * assumed for the time of the cure. `no-clock`: the operation waited for does not cure, or the plan does not name it
 * rightly. `bad-sheet`: the figures of the sheet cannot be computed with.
 */
export type UnjudgedCode = (typeof UNJUDGED_CODES)[number];

export type MilestoneRelease =
  | { readonly ok: true; readonly band: ReleaseBand }
  | { readonly ok: false; readonly code: UnjudgedCode };

/** What a cure clock is computed from: `ready` milestones count from `setAt`, `recoat-by` from `mixedAt`. */
export interface ClockStart {
  readonly sheet: AdhesiveSheet;
  readonly mixedAt: Instant;
  readonly setAt: Instant;
}

/** Tells when a clock reaches a milestone in the temperature of the shop. Pure: same clock, same answer. */
export interface CureReader {
  release(clock: ClockStart, milestone: Milestone): MilestoneRelease;
}
