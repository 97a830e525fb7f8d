import type { BatchClock } from '@/lib/batch/batch-state';
import type { CureReader, MilestoneRelease } from '@/lib/batch/cure-reader';
import type { ReleaseBook } from '@/lib/batch/evaluation';
import type { Milestone } from '@/lib/cure/adhesive-sheet';
import type { Instant } from '@/lib/units/instant';

/**
 * A book of releases over one reading of the temperature. Each clock's milestone is computed when it is first asked
 * for. It does not know the time of day, so it stays right until the temperature or the batch's events change.
 */
export function releaseBook(cure: CureReader): ReleaseBook {
  const known = new Map<BatchClock, Map<Milestone, MilestoneRelease>>();
  return {
    release(clock, milestone) {
      const ofClock = known.get(clock) ?? new Map<Milestone, MilestoneRelease>();
      known.set(clock, ofClock);
      const before = ofClock.get(milestone);
      if (before !== undefined) return before;
      const computed = cure.release(clock, milestone);
      ofClock.set(milestone, computed);
      return computed;
    },
    nextEndAfter(at) {
      let next: Instant = Number.POSITIVE_INFINITY;
      for (const ofClock of known.values()) {
        for (const release of ofClock.values()) {
          if (!release.ok) continue;
          const { earliestAt, centralAt, latestAt } = release.band;
          for (const end of [earliestAt, centralAt, latestAt]) if (end !== null && end > at && end < next) next = end;
        }
      }
      return next;
    },
  };
}
