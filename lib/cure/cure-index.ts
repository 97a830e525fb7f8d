import { firstAfter, type TemperatureCourse } from '@/lib/cure/course';
import { type Lane, type LaneRate, rateOn } from '@/lib/cure/lane-rate';
import { MAX_LOG_STEP, rampAge } from '@/lib/cure/ramp-age';
import type { RateCurve } from '@/lib/cure/rate-curve';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS } from '@/lib/units/instant';

/** A thousandth of a millisecond: when the inverse has found its instant. */
const INSTANT_TOLERANCE_MS = 1e-3;
/** Halving alone is done with a year to that accuracy after 45 steps. */
const MOST_STEPS = 60;

/**
 * The equivalent age along one lane of a course, summed once, so that any stretch of it and the instant at which an
 * age is reached are found by halving. Equivalent hours are hours at the sheet's reference temperature.
 * Source: equivalent age in the form of ASTM C1074, integrated exactly on straight ramps (`ramp-age.ts`).
 */
export class CureIndex {
  private readonly at: Float64Array;
  private readonly temperatureC: Float64Array;
  /** Equivalent time from the course's start to each vertex, ms. */
  private readonly ageMs: Float64Array;

  constructor(
    course: TemperatureCourse,
    lane: Lane,
    private readonly rate: LaneRate,
  ) {
    this.at = course.at;
    this.temperatureC = laneTemperatures(course, lane);
    this.ageMs = cumulativeAge(this.at, this.temperatureC, rate);
  }

  /** The last instant the index knows about. */
  get endAt(): Instant {
    return this.at[this.at.length - 1] ?? 0;
  }

  /**
   * Equivalent hours from `fromAt` to `toAt`; relative error below 1e-9. Throws RangeError when the instants are in
   * the wrong order or outside the course.
   */
  ageBetween(fromAt: Instant, toAt: Instant): number {
    if (!(fromAt <= toAt)) throw new RangeError(`ageBetween needs fromAt <= toAt, got ${fromAt} and ${toAt}`);
    // Rounding must not make the age of next to no time negative.
    return Math.max(0, this.ageMsAt(toAt) - this.ageMsAt(fromAt)) / HOUR_MS;
  }

  /**
   * The first instant, with a fraction of a millisecond, at which the age counted from `fromAt` is `hours` (0 or
   * more); null when the course ends before. Agrees with `ageBetween` to a thousandth of a millisecond.
   * Throws RangeError when `fromAt` is outside the course or `hours` is negative.
   */
  instantAtAge(fromAt: Instant, hours: number): Instant | null {
    if (!(hours >= 0)) throw new RangeError(`instantAtAge needs hours of at least 0, got ${hours}`);
    const targetMs = this.ageMsAt(fromAt) + hours * HOUR_MS;
    const vertex = firstAtLeast(this.ageMs, targetMs);
    if (vertex === this.ageMs.length) return null;
    if (vertex === 0) return fromAt;
    return Math.max(fromAt, this.instantWithin(vertex - 1, targetMs - (this.ageMs[vertex - 1] ?? 0)));
  }

  private ageMsAt(at: Instant): number {
    const startAt = this.at[0] ?? 0;
    if (!(at >= startAt && at <= this.endAt)) {
      throw new RangeError(`an instant needs to lie within the course ${startAt} to ${this.endAt}, got ${at}`);
    }
    const piece = firstAfter(this.at, at) - 1;
    const elapsedMs = at - (this.at[piece] ?? 0);
    if (elapsedMs === 0) return this.ageMs[piece] ?? 0;
    const ageMs = (this.ageMs[piece] ?? 0) + this.ageWithin(piece, elapsedMs);
    // Two ways of summing may differ in the last digit; an age inside a piece is never above the one at its end.
    return Math.min(ageMs, this.ageMs[piece + 1] ?? ageMs);
  }

  /** Equivalent time of the first `elapsedMs` of a piece. */
  private ageWithin(piece: number, elapsedMs: number): number {
    const startC = this.temperatureC[piece] ?? 0;
    return rampAge(this.rate, startC, this.temperatureAt(piece, elapsedMs), elapsedMs);
  }

  private temperatureAt(piece: number, elapsedMs: number): number {
    const startC = this.temperatureC[piece] ?? 0;
    const endC = this.temperatureC[piece + 1] ?? startC;
    const lengthMs = (this.at[piece + 1] ?? 0) - (this.at[piece] ?? 0);
    return startC + ((endC - startC) * elapsedMs) / lengthMs;
  }

  /** Newton's steps towards the instant, kept within bounds that halve when a step would leave them. */
  private instantWithin(piece: number, targetMs: number): Instant {
    const startAt = this.at[piece] ?? 0;
    let low = 0;
    let high = (this.at[piece + 1] ?? 0) - startAt;
    let elapsedMs = Math.min(high, high * (targetMs / ((this.ageMs[piece + 1] ?? 0) - (this.ageMs[piece] ?? 0))));
    for (let step = 0; step < MOST_STEPS && high - low > INSTANT_TOLERANCE_MS; step++) {
      const missingMs = targetMs - this.ageWithin(piece, elapsedMs);
      if (missingMs > 0) low = elapsedMs;
      else high = elapsedMs;
      const stepMs = missingMs / rateOn(this.rate, this.temperatureAt(piece, elapsedMs));
      const next = elapsedMs + stepMs;
      if (Math.abs(stepMs) < INSTANT_TOLERANCE_MS) return startAt + Math.min(high, Math.max(low, next));
      elapsedMs = next > low && next < high ? next : (low + high) / 2;
    }
    return startAt + elapsedMs;
  }
}

function laneTemperatures(course: TemperatureCourse, lane: Lane): Float64Array {
  switch (lane) {
    case 'slow':
      return course.lowC;
    case 'central':
      return course.centralC;
    case 'fast':
      return course.highC;
  }
}

/**
 * Running sum of the pieces' equivalent time. Pieces that stay on one curve and change the rate little, as nearly all
 * pieces of a log do, are summed here by the rule of `rampAge` with what neighbours share; all others go there.
 * The sum is compensated (Kahan), so that a short stretch late in a long log is as exact as an early one.
 */
function cumulativeAge(at: Float64Array, temperatureC: Float64Array, rate: LaneRate): Float64Array {
  const ageMs = new Float64Array(at.length);
  let lost = 0;
  let sum = 0;
  let startC = temperatureC[0] ?? 0;
  let side = sideOf(rate, startC);
  let curve = curveOf(rate, startC);
  let rate0 = rateOn(rate, startC);
  let slope0 = curve.logSlopeAt(startC);
  let curvature0 = curve.logCurvatureAt(startC);
  for (let i = 1; i < at.length; i++) {
    const endC = temperatureC[i] ?? 0;
    const spanMs = (at[i] ?? 0) - (at[i - 1] ?? 0);
    let pieceMs: number;
    if (endC === startC) {
      pieceMs = spanMs * rate0;
    } else {
      const endSide = sideOf(rate, endC);
      if (endSide !== side) curve = curveOf(rate, endC);
      const rate1 = endSide === 0 ? 0 : curve.rateAt(endC);
      const slope1 = curve.logSlopeAt(endC);
      const curvature1 = curve.logCurvatureAt(endC);
      const stepC = endC - startC;
      if (spanMs === 0 || (side === 0 && endSide === 0)) {
        pieceMs = 0;
      } else if (side === endSide && Math.abs(stepC) * Math.max(slope0, slope1) <= MAX_LOG_STEP) {
        const slopes = (rate0 * slope0 - rate1 * slope1) / 10;
        const curvatures = (stepC * (rate0 * curvature0 + rate1 * curvature1)) / 120;
        pieceMs = spanMs * ((rate0 + rate1) / 2 + stepC * (slopes + curvatures));
      } else {
        pieceMs = rampAge(rate, startC, endC, spanMs);
      }
      startC = endC;
      side = endSide;
      rate0 = rate1;
      slope0 = slope1;
      curvature0 = curvature1;
    }
    const added = pieceMs - lost;
    const next = sum + added;
    lost = next - sum - added;
    sum = next;
    ageMs[i] = sum;
  }
  return ageMs;
}

/** 0 where nothing cures, 1 on the curve below the split, 2 above. */
function sideOf(rate: LaneRate, temperatureC: number): 0 | 1 | 2 {
  if (temperatureC < rate.stopBelowC) return 0;
  return temperatureC < rate.splitC ? 1 : 2;
}

function curveOf(rate: LaneRate, temperatureC: number): RateCurve {
  return temperatureC < rate.splitC ? rate.below : rate.above;
}

/** The first index whose value is at least `value` in a never falling column; its length when there is none. */
function firstAtLeast(column: Float64Array, value: number): number {
  let low = 0;
  let high = column.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((column[middle] ?? 0) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
