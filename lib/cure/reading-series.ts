import type { Instant } from '@/lib/units/instant';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** A temperature log as two columns of one length, rising strictly in time: an instant and its temperature, degC. */
export interface ReadingSeries {
  readonly at: Float64Array;
  readonly temperatureC: Float64Array;
}

/** No workshop is colder or hotter, degC; a reading outside is a fault that should have been refused on its way in. */
const COLDEST_C = -90;
const HOTTEST_C = 150;

/** A shorter silence is never a gap. Chosen: a heated room changes little in half an hour. */
const LEAST_GAP_MS = 30 * MINUTE_MS;
const GAP_MEDIANS = 3;
/** A longer gap is not bridged by a straight line. Chosen: a night is longer. */
export const LONGEST_BRIDGE_MS = 6 * HOUR_MS;

/**
 * Brings readings into the form of a series: sorted by time, readings of one instant averaged (the same reading
 * twice counts once). Neither the order nor a repetition of readings changes the result. Columns that are already
 * in that form are taken as they are, not copied.
 * Throws RangeError when the columns differ in length, or hold an instant or a temperature that cannot be
 * (temperatures outside -90 to 150 degC).
 */
export function readingSeries(at: ArrayLike<Instant>, temperatureC: ArrayLike<number>): ReadingSeries {
  if (at.length !== temperatureC.length) {
    throw new RangeError(`readingSeries needs columns of one length, got ${at.length} and ${temperatureC.length}`);
  }
  const sorted = refuseImpossible(at, temperatureC);
  if (sorted && at instanceof Float64Array && temperatureC instanceof Float64Array) return { at, temperatureC };
  const order = Array.from({ length: at.length }, (_, index) => index);
  const instantOf = (index: number) => at[index] ?? 0;
  const degreesOf = (index: number) => temperatureC[index] ?? 0;
  order.sort((a, b) => instantOf(a) - instantOf(b) || degreesOf(a) - degreesOf(b));
  const outAt: number[] = [];
  const outC: number[] = [];
  for (let start = 0; start < order.length; ) {
    const instant = instantOf(order[start] ?? 0);
    let sum = 0;
    let count = 0;
    let last = Number.NaN;
    let end = start;
    for (; end < order.length && instantOf(order[end] ?? 0) === instant; end++) {
      const value = degreesOf(order[end] ?? 0);
      if (value === last) continue;
      sum += value;
      count++;
      last = value;
    }
    outAt.push(instant);
    outC.push(sum / count);
    start = end;
  }
  return { at: Float64Array.from(outAt), temperatureC: Float64Array.from(outC) };
}

/** The series of no readings at all. */
export const NO_READINGS: ReadingSeries = { at: new Float64Array(0), temperatureC: new Float64Array(0) };

/**
 * The silence after which a log has a gap, ms: three times its median interval, at least half an hour.
 * Chosen: one reading missed is no gap, two are.
 */
export function gapLimitMs(series: ReadingSeries): number {
  const { at } = series;
  const count = at.length - 1;
  // Most logs write every few minutes: when half of the intervals are below a third of the least gap, the limit is
  // the least gap, and there is nothing to sort.
  let short = 0;
  for (let i = 0; i < count; i++) if ((at[i + 1] ?? 0) - (at[i] ?? 0) <= LEAST_GAP_MS / GAP_MEDIANS) short++;
  if (count < 1 || short * 2 > count) return LEAST_GAP_MS;
  const intervals = new Float64Array(count);
  for (let i = 0; i < count; i++) intervals[i] = (at[i + 1] ?? 0) - (at[i] ?? 0);
  intervals.sort();
  const middle = Math.floor(count / 2);
  const upper = intervals[middle] ?? 0;
  const median = count % 2 === 1 ? upper : (upper + (intervals[middle - 1] ?? 0)) / 2;
  return Math.max(GAP_MEDIANS * median, LEAST_GAP_MS);
}

/** Throws for impossible readings; tells whether the instants rise strictly. */
function refuseImpossible(at: ArrayLike<number>, temperatureC: ArrayLike<number>): boolean {
  let rising = true;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < at.length; i++) {
    const instant = at[i] ?? Number.NaN;
    const value = temperatureC[i] ?? Number.NaN;
    if (!Number.isFinite(instant)) throw new RangeError(`readingSeries needs finite instants, got ${instant}`);
    if (!(value >= COLDEST_C && value <= HOTTEST_C)) {
      throw new RangeError(`readingSeries needs ${COLDEST_C} to ${HOTTEST_C} degC, got ${value}`);
    }
    if (instant <= last) rising = false;
    last = instant;
  }
  return rising;
}
