import type { TemperatureProfile } from '@/lib/cure/temperature-profile';
import type { Instant } from '@/lib/units/instant';

/** What a stretch of a course rests on, and the code it has in `TemperatureCourse.kinds`. */
export const COURSE_KINDS = ['reading', 'bridge', 'gap', 'held', 'profile'] as const;
/**
 * `reading`: between two readings. `bridge`: a gap in the log of at most six hours, bridged by a straight line.
 * `gap`: a longer gap, where the profile holds. `held`: within one gap limit before the first or after the last
 * reading, which is held. `profile`: no reading near, the shop's usual temperature.
 */
export type CourseKind = (typeof COURSE_KINDS)[number];

/** A gap in the log, between two readings. */
export interface LogGap {
  readonly startAt: Instant;
  readonly endAt: Instant;
  readonly kind: 'bridge' | 'gap';
}

/**
 * The temperature over time as three lanes of straight pieces through common vertices. A jump is two vertices at one
 * instant. Piece `i` runs from vertex `i` to `i + 1`. Columns have `length` entries; `lowC <= centralC <= highC`.
 */
export interface TemperatureCourse {
  readonly startAt: Instant;
  readonly endAt: Instant;
  readonly length: number;
  /** Instants of the vertices, never falling. */
  readonly at: Float64Array;
  readonly lowC: Float64Array;
  readonly centralC: Float64Array;
  readonly highC: Float64Array;
  /** Index into COURSE_KINDS of the piece that begins at each vertex. */
  readonly kinds: Uint8Array;
  readonly gaps: readonly LogGap[];
  /** The silence after which the log counts as having a gap, ms. */
  readonly gapLimitMs: number;
}

/** The shop's settings that a course is built with. */
export interface CourseSettings {
  readonly zone: string;
  readonly profile: TemperatureProfile;
  /** Half-width of what the profile may be off, degC. */
  readonly profileToleranceC: number;
  /** Half-width of what the sensor may be off, degC. */
  readonly sensorToleranceC: number;
  /** The range of the room that bounds an unlogged gap, degC. */
  readonly floorC: number;
  readonly ceilingC: number;
}

/** Time within `[fromAt, toAt]` that lies in gaps of the log, bridged or not, ms. */
export function gapMsBetween(course: TemperatureCourse, fromAt: Instant, toAt: Instant): number {
  let sumMs = 0;
  for (const gap of course.gaps) {
    sumMs += Math.max(0, Math.min(toAt, gap.endAt) - Math.max(fromAt, gap.startAt));
  }
  return sumMs;
}

/** The first index whose instant is after `instant`, by halving; the length when there is none. */
export function firstAfter(at: Float64Array, instant: Instant, length = at.length): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((at[middle] ?? 0) <= instant) low = middle + 1;
    else high = middle;
  }
  return low;
}
