import {
  COURSE_KINDS,
  type CourseKind,
  type CourseSettings,
  type LogGap,
  type TemperatureCourse,
} from '@/lib/cure/course';
import type { ReadingSeries } from '@/lib/cure/reading-series';
import type { ProfilePiece } from '@/lib/cure/temperature-profile';
import type { Instant } from '@/lib/units/instant';

/** Puts a course together stretch by stretch, in order of time; `temperatureCourse` holds the rules. */
export class CourseBuilder {
  private at: Float64Array;
  private lowC: Float64Array;
  private centralC: Float64Array;
  private highC: Float64Array;
  private kinds: Uint8Array;
  private length = 0;
  private readonly gaps: LogGap[] = [];

  constructor(
    expectedReadings: number,
    private readonly settings: CourseSettings,
  ) {
    const capacity = expectedReadings + 256;
    this.at = new Float64Array(capacity);
    this.lowC = new Float64Array(capacity);
    this.centralC = new Float64Array(capacity);
    this.highC = new Float64Array(capacity);
    this.kinds = new Uint8Array(capacity);
  }

  /** Readings `first` to `end - 1`, none of which is followed by a gap but the last. */
  readings(series: ReadingSeries, first: number, end: number): void {
    const count = end - first;
    this.reserve(count);
    const { at, lowC, centralC, highC, length } = this;
    const toleranceC = this.settings.sensorToleranceC;
    at.set(series.at.subarray(first, end), length);
    centralC.set(series.temperatureC.subarray(first, end), length);
    for (let i = length; i < length + count; i++) {
      const temperatureC = centralC[i] ?? 0;
      lowC[i] = temperatureC - toleranceC;
      highC[i] = temperatureC + toleranceC;
    }
    this.kinds.fill(COURSE_KINDS.indexOf('reading'), length, length + count);
    this.length += count;
  }

  /** A short gap of the log: a straight line, bounded by its ends and the room's range. */
  bridge(startAt: Instant, beforeC: number, endAt: Instant, afterC: number): void {
    const [lowC, highC] = this.gapBounds(beforeC, afterC);
    this.vertex(startAt, lowC, beforeC, highC, 'bridge');
    this.vertex(endAt, lowC, afterC, highC, 'bridge');
    this.gaps.push({ startAt, endAt, kind: 'bridge' });
  }

  /** A long gap of the log: the profile, bounded by the gap's ends and the room's range. */
  gap(beforeC: number, afterC: number, pieces: readonly ProfilePiece[]): void {
    const [lowC, highC] = this.gapBounds(beforeC, afterC);
    for (const { startAt, endAt, temperatureC } of pieces) {
      this.level(startAt, endAt, Math.min(lowC, temperatureC), temperatureC, Math.max(highC, temperatureC), 'gap');
    }
    const startAt = pieces[0]?.startAt;
    const endAt = pieces.at(-1)?.endAt;
    if (startAt !== undefined && endAt !== undefined) this.gaps.push({ startAt, endAt, kind: 'gap' });
  }

  /** A reading held before the first or after the last one, next to what the profile says. */
  held(readingC: number, pieces: readonly ProfilePiece[]): void {
    const { sensorToleranceC, profileToleranceC } = this.settings;
    for (const { startAt, endAt, temperatureC } of pieces) {
      const lowC = Math.min(readingC - sensorToleranceC, temperatureC - profileToleranceC);
      const highC = Math.max(readingC + sensorToleranceC, temperatureC + profileToleranceC);
      this.level(startAt, endAt, lowC, readingC, highC, 'held');
    }
  }

  /** The profile where no reading is near. */
  profile(pieces: readonly ProfilePiece[]): void {
    const toleranceC = this.settings.profileToleranceC;
    for (const { startAt, endAt, temperatureC } of pieces) {
      this.level(startAt, endAt, temperatureC - toleranceC, temperatureC, temperatureC + toleranceC, 'profile');
    }
  }

  course(gapLimitMs: number): TemperatureCourse {
    const { length } = this;
    return {
      startAt: this.at[0] ?? 0,
      endAt: this.at[length - 1] ?? 0,
      length,
      at: this.at.subarray(0, length),
      lowC: this.lowC.subarray(0, length),
      centralC: this.centralC.subarray(0, length),
      highC: this.highC.subarray(0, length),
      kinds: this.kinds.subarray(0, length),
      gaps: this.gaps,
      gapLimitMs,
    };
  }

  private gapBounds(beforeC: number, afterC: number): readonly [number, number] {
    const { sensorToleranceC, floorC, ceilingC } = this.settings;
    const lowC = Math.min(beforeC - sensorToleranceC, afterC - sensorToleranceC, floorC);
    return [lowC, Math.max(beforeC + sensorToleranceC, afterC + sensorToleranceC, ceilingC)];
  }

  private level(
    startAt: Instant,
    endAt: Instant,
    lowC: number,
    centralC: number,
    highC: number,
    kind: CourseKind,
  ): void {
    this.vertex(startAt, lowC, centralC, highC, kind);
    this.vertex(endAt, lowC, centralC, highC, kind);
  }

  private vertex(at: Instant, lowC: number, centralC: number, highC: number, kind: CourseKind): void {
    this.reserve(1);
    this.at[this.length] = at;
    this.lowC[this.length] = lowC;
    this.centralC[this.length] = centralC;
    this.highC[this.length] = highC;
    this.kinds[this.length] = COURSE_KINDS.indexOf(kind);
    this.length++;
  }

  private reserve(count: number): void {
    const needed = this.length + count;
    if (needed <= this.at.length) return;
    const capacity = Math.max(needed, this.at.length * 2);
    this.at = grown(this.at, capacity);
    this.lowC = grown(this.lowC, capacity);
    this.centralC = grown(this.centralC, capacity);
    this.highC = grown(this.highC, capacity);
    const kinds = new Uint8Array(capacity);
    kinds.set(this.kinds);
    this.kinds = kinds;
  }
}

function grown(column: Float64Array, capacity: number): Float64Array {
  const larger = new Float64Array(capacity);
  larger.set(column);
  return larger;
}
