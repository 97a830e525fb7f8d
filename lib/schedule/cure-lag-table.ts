import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import type { CureLanes } from '@/lib/cure/cure-lanes';
import { release } from '@/lib/cure/release';
import type { LagTable } from '@/lib/schedule/lag';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';

/** A beginning every half hour: finer gains minutes, and a table of eight weeks stays below 3,000 entries. Chosen. */
export const CURE_TABLE_STEP_MINUTES = 30;

/**
 * The minutes from a beginning to a milestone of a sheet, for beginnings from `fromMinute` to `toMinute`: for what
 * opens the latest instant (count it from the task's finish), for `recoat-by` the earliest (count it from the task's
 * start, when the first cup is mixed). Rounded to the safe side. null where the sheet does not state the hours.
 * `lanes` must be those of the sheet, over a course that covers the beginnings.
 */
export function cureLagTable(
  id: string,
  sheet: AdhesiveSheet,
  lanes: CureLanes,
  milestone: Milestone,
  epochAt: Instant,
  fromMinute: number,
  toMinute: number,
): LagTable | null {
  if (sheet.milestoneHours[milestone] === undefined) return null;
  const minutes: (number | null)[] = [];
  let lastEnd = Number.NEGATIVE_INFINITY;
  for (let minute = fromMinute; minute < toMinute + CURE_TABLE_STEP_MINUTES; minute += CURE_TABLE_STEP_MINUTES) {
    const beganAt = epochAt + minute * MINUTE_MS;
    const length =
      beganAt > lanes.course.endAt
        ? null
        : lengthInMinutes({ setAt: beganAt, mixedAt: beganAt, sheet }, lanes, milestone);
    // Rounding to whole minutes must not make a later beginning end earlier.
    const end: number | null = length === null ? null : Math.max(minute + length, lastEnd);
    if (end !== null) lastEnd = end;
    minutes.push(end === null ? null : end - minute);
  }
  if (milestone !== 'recoat-by') fillFromLater(minutes);
  return { id, startMinute: fromMinute, stepMinutes: CURE_TABLE_STEP_MINUTES, minutes };
}

/**
 * A beginning that is not judged, since the log has a gap after it, is over with the next that is: what began earlier
 * in the same shop is never over later. What nothing judged follows stays not reached.
 */
function fillFromLater(minutes: (number | null)[]): void {
  for (let i = minutes.length - 2; i >= 0; i--) {
    const later = minutes[i + 1] ?? null;
    if (minutes[i] === null && later !== null) minutes[i] = later + CURE_TABLE_STEP_MINUTES;
  }
}

function lengthInMinutes(clock: Parameters<typeof release>[0], lanes: CureLanes, milestone: Milestone): number | null {
  const reached = release(clock, lanes, milestone);
  if (reached.kind !== 'release') return null;
  return milestone === 'recoat-by'
    ? Math.floor((reached.earliestAt - clock.mixedAt) / MINUTE_MS)
    : Math.ceil((reached.latestAt - clock.setAt) / MINUTE_MS);
}
