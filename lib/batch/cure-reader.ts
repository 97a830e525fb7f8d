import type { AdhesiveSheet, Box, Milestone, RateLaw } from '@/lib/cure/adhesive-sheet';
import type { CureLanes } from '@/lib/cure/cure-lanes';
import type { CureLaw } from '@/lib/cure/lane-rate';
import type { CureClock } from '@/lib/cure/release';
import { release } from '@/lib/cure/release';
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

/**
 * Why no release can be told. `not-on-sheet`: the data sheet gives no hours for this milestone. `log-has-a-gap`: the
 * log has no readings for most of the time. `no-temperature`: the temperature is not known so far back. `no-clock`:
 * the operation waited for does not cure, or the plan does not name it rightly. `bad-sheet`: the figures of the sheet
 * cannot be computed with.
 */
export const UNJUDGED_CODES = ['not-on-sheet', 'log-has-a-gap', 'no-temperature', 'no-clock', 'bad-sheet'] as const;
export type UnjudgedCode = (typeof UNJUDGED_CODES)[number];

export type MilestoneRelease =
  | { readonly ok: true; readonly band: ReleaseBand }
  | { readonly ok: false; readonly code: UnjudgedCode };

/** Tells when a clock reaches a milestone in the temperature of the shop. Pure: same clock, same answer. */
export interface CureReader {
  release(clock: CureClock, milestone: Milestone): MilestoneRelease;
}

/**
 * A reader over the temperature course of the shop; `lanesOf` as `lanesOfCourse` makes it. The course must begin
 * before the first mix: a clock that began outside it is not judged.
 */
export function courseReader(lanesOf: (law: CureLaw) => CureLanes): CureReader {
  const known = new WeakMap<AdhesiveSheet, CureLanes | null>();
  return {
    release(clock, milestone) {
      let lanes = known.get(clock.sheet);
      if (lanes === undefined) {
        lanes = lanesOrNull(lanesOf, clock.sheet);
        known.set(clock.sheet, lanes);
      }
      if (lanes === null) return { ok: false, code: 'bad-sheet' };
      const { startAt, endAt } = lanes.course;
      if (!(clock.mixedAt >= startAt && clock.setAt >= startAt && clock.mixedAt <= endAt && clock.setAt <= endAt)) {
        return { ok: false, code: 'no-temperature' };
      }
      const answer = release(clock, lanes, milestone);
      switch (answer.kind) {
        case 'release': {
          const { earliestAt, centralAt, latestAt } = answer;
          return { ok: true, band: { earliestAt, centralAt, latestAt } };
        }
        case 'beyond-horizon':
          return { ok: true, band: { earliestAt: answer.earliestAt, centralAt: answer.centralAt, latestAt: null } };
        case 'not-stated':
          return { ok: false, code: 'not-on-sheet' };
        case 'not-judged':
          return { ok: false, code: answer.reason };
      }
    },
  };
}

/**
 * One sheet that cannot be computed with must not take the other batches' clocks down with it, nor release anything.
 */
function lanesOrNull(lanesOf: (law: CureLaw) => CureLanes, sheet: AdhesiveSheet): CureLanes | null {
  if (!hasSoundFigures(sheet)) return null;
  try {
    return lanesOf(sheet);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function hasSoundFigures({ referenceC, minCureC, rateLaw, milestoneHours, recoatCapHours }: AdhesiveSheet): boolean {
  const hours = [...Object.values(milestoneHours), recoatCapHours ?? 0];
  return (
    [referenceC, minCureC].every(Number.isFinite) &&
    hours.every((value) => value >= 0 && Number.isFinite(value)) &&
    hasSoundBox(rateLaw)
  );
}

function hasSoundBox(rateLaw: RateLaw): boolean {
  switch (rateLaw.kind) {
    case 'arrhenius':
      return isRising(rateLaw.activationEnergyKjPerMol);
    case 'doubling':
      return isRising(rateLaw.doublingC);
    case 'plain-hours':
      return true;
  }
}

function isRising({ low, central, high }: Box): boolean {
  return low > 0 && low <= central && central <= high && Number.isFinite(high);
}
