import type { Exclusion } from '@/lib/pulltest/exclusion';
import type { PullMode } from '@/lib/pulltest/pull-mode';
import type { Instant } from '@/lib/units/instant';

/** The scale a pull was read on. */
export interface PullScale {
  readonly name: string;
  /** What it can show at most, N. */
  readonly greatestN: number;
  /** When it was last checked against a known weight; null: never. */
  readonly checkedAt: Instant | null;
}

/** One pull as it was written down. */
export interface PullRecord {
  readonly id: string;
  readonly specimenId: string;
  /** The mix the joint was set with. */
  readonly mixId: string;
  /** Depth of shank in glue, mm. */
  readonly embedmentMm: number;
  /** Level of the second factor (wood, glue, wire); the same text for all where there is none. */
  readonly condition: string;
  readonly pulledAt: Instant;
  /** Greatest load, N; 0: it fell out; null: not read. */
  readonly loadN: number | null;
  /** The scale topped out, or the pull was stopped. */
  readonly isLowerBound: boolean;
  readonly mode: PullMode;
  /** A pull after which nothing had broken, but something had slipped or cracked. */
  readonly leftDamage: boolean;
  /** Between the pull and the shank: 0 is straight. */
  readonly angleDeg: number;
  /** From when on the joint was sure to be cured for pulling; null: not known. */
  readonly releasedAt: Instant | null;
  readonly scale: PullScale | null;
  readonly exclusion: Exclusion | null;
}
