import type { ReleaseBand } from '@/lib/batch/cure-reader';
import type { Instant } from '@/lib/units/instant';

/** The later of two instants where null means "not within reach", later than any. */
export function laterOf(a: Instant | null, b: Instant | null): Instant | null {
  return a === null || b === null ? null : Math.max(a, b);
}

/** The band of whichever comes last, when all of them are waited for. */
export function lastBand(a: ReleaseBand, b: ReleaseBand): ReleaseBand {
  return {
    earliestAt: laterOf(a.earliestAt, b.earliestAt),
    centralAt: laterOf(a.centralAt, b.centralAt),
    latestAt: laterOf(a.latestAt, b.latestAt),
  };
}

/** Orders instants rising, with "not within reach" last. */
export function byInstant(a: Instant | null, b: Instant | null): number {
  return (a ?? Number.POSITIVE_INFINITY) === (b ?? Number.POSITIVE_INFINITY)
    ? 0
    : (a ?? Number.POSITIVE_INFINITY) - (b ?? Number.POSITIVE_INFINITY);
}
