import type { Release } from '@/lib/cure/release';
import type { Instant } from '@/lib/units/instant';

/** Whether a joint may be pulled now. */
export type PullTiming =
  | { readonly kind: 'cured'; readonly releasedAt: Instant }
  /** Sure to be cured only from `releasedAt`; null: not within the time that can be foreseen. */
  | { readonly kind: 'early'; readonly releasedAt: Instant | null }
  /** The sheet gives no hours for a pull, or the temperature is not known: the reading is marked. */
  | { readonly kind: 'not-judged' };

/**
 * Judges the moment of a pull by the latest instant of the joint's release for pull tests. An early pull is written
 * down if the maker insists, marked, and not counted.
 */
export function pullTiming(pulledAt: Instant, release: Release): PullTiming {
  switch (release.kind) {
    case 'release':
      return { kind: pulledAt >= release.latestAt ? 'cured' : 'early', releasedAt: release.latestAt };
    case 'beyond-horizon':
      return { kind: 'early', releasedAt: null };
    case 'not-stated':
    case 'not-judged':
      return { kind: 'not-judged' };
  }
}
