import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import { gapMsBetween } from '@/lib/cure/course';
import type { CureLanes } from '@/lib/cure/cure-lanes';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';

/** A joint's or a coat's clock: when it was set or applied, when its cup was mixed, and the sheet of that mix. */
export interface CureClock {
  readonly setAt: Instant;
  readonly mixedAt: Instant;
  readonly sheet: AdhesiveSheet;
}

/** When a clock reaches a milestone. */
export type Release =
  /** `earliestAt <= centralAt <= latestAt`. What opens is allowed after `latestAt`; what closes ends at `earliestAt`. */
  | {
      readonly kind: 'release';
      readonly milestone: Milestone;
      readonly earliestAt: Instant;
      readonly centralAt: Instant;
      readonly latestAt: Instant;
      /** Time from the start to `latestAt` for which the log has a gap, ms. */
      readonly gapMs: number;
    }
  /** The sheet does not give the hours. */
  | { readonly kind: 'not-stated'; readonly milestone: Milestone }
  /** Not sure to be reached before the end of the course: say "not within N days", and why: it stays too cold. */
  | {
      readonly kind: 'beyond-horizon';
      readonly milestone: Milestone;
      readonly earliestAt: Instant | null;
      readonly centralAt: Instant | null;
      readonly horizonAt: Instant;
    }
  /** The log has no readings for more than half of the time: no claim of readiness can rest on it. */
  | {
      readonly kind: 'not-judged';
      readonly milestone: Milestone;
      readonly reason: 'log-has-a-gap';
      readonly gapMs: number;
      readonly ofMs: number;
    };

/** A claim of readiness is refused when more than this share of its time is a gap. Chosen. */
const MOST_GAP_SHARE = 0.5;

/**
 * When a clock reaches one milestone.
 *
 * What opens counts from `setAt`: the latest instant is the slow lane's, rounded up to the millisecond. `recoat-by`
 * counts from `mixedAt`, and no lane of it lies beyond the wall-clock limit `recoatCapHours` (or the hours of
 * `recoat-by` itself): cold never stretches a window, warmth shortens it. It is judged even over a gap, because the
 * fast lane and the wall clock bound it from the safe side.
 * `lanes` must be those of the clock's own sheet. Throws RangeError when the clock began outside the course.
 * Source: equivalent age in the form of ASTM C1074, taken at both ends of what is plausible. Example: 24 h at 25 degC, 55 kJ/mol, held at 15 degC: 51.83 h.
 */
export function release(clock: CureClock, lanes: CureLanes, milestone: Milestone): Release {
  const hours = clock.sheet.milestoneHours[milestone];
  if (hours === undefined) return { kind: 'not-stated', milestone };
  if (milestone === 'recoat-by') return closing(clock, lanes, hours);
  const { setAt } = clock;
  const horizonAt = lanes.course.endAt;
  const earliestAt = rounded(lanes.fast.instantAtAge(setAt, hours), Math.floor);
  const centralAt = rounded(lanes.central.instantAtAge(setAt, hours), Math.round);
  const latestAt = rounded(lanes.slow.instantAtAge(setAt, hours), Math.ceil);
  const ofMs = (latestAt ?? horizonAt) - setAt;
  const gapMs = gapMsBehind(clock, lanes, setAt, setAt + ofMs);
  if (gapMs > MOST_GAP_SHARE * ofMs) return { kind: 'not-judged', milestone, reason: 'log-has-a-gap', gapMs, ofMs };
  if (earliestAt === null || centralAt === null || latestAt === null) {
    return { kind: 'beyond-horizon', milestone, earliestAt, centralAt, horizonAt };
  }
  return { kind: 'release', milestone, earliestAt, centralAt, latestAt, gapMs };
}

function closing(clock: CureClock, lanes: CureLanes, hours: number): Release {
  const { mixedAt, sheet } = clock;
  const capAt = Math.floor(mixedAt + (sheet.recoatCapHours ?? hours) * HOUR_MS);
  const capped = (at: Instant | null, round: (value: number) => number) =>
    at === null ? capAt : Math.min(capAt, round(at));
  const latestAt = capped(lanes.slow.instantAtAge(mixedAt, hours), Math.ceil);
  return {
    kind: 'release',
    milestone: 'recoat-by',
    earliestAt: capped(lanes.fast.instantAtAge(mixedAt, hours), Math.floor),
    centralAt: capped(lanes.central.instantAtAge(mixedAt, hours), Math.round),
    latestAt,
    gapMs: gapMsBehind(clock, lanes, mixedAt, latestAt),
  };
}

/** Plain hours do not rest on the log, so no gap of it matters to them. */
function gapMsBehind(clock: CureClock, lanes: CureLanes, fromAt: Instant, toAt: Instant): number {
  return clock.sheet.rateLaw.kind === 'plain-hours' ? 0 : gapMsBetween(lanes.course, fromAt, toAt);
}

function rounded(at: Instant | null, round: (value: number) => number): Instant | null {
  return at === null ? null : round(at);
}
