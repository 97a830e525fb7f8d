import type { Instant } from '@/lib/units/instant';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** A stretch of a log, from one reading to another. */
export interface Stretch {
  readonly fromAt: Instant;
  readonly toAt: Instant;
}

/** What is worth knowing of a log in order of time. Stretches are listed up to LISTED_STRETCHES, and all counted. */
export interface SeriesNotes {
  readonly firstAt: Instant;
  readonly lastAt: Instant;
  readonly lowestC: number;
  readonly highestC: number;
  /** The middle one of the steps between readings, in ms; 0 for a single reading. */
  readonly medianStepMs: number;
  readonly gapCount: number;
  readonly gaps: readonly Stretch[];
  /** Stretches of more than 6 h without any change, which a sensor that died also shows: a hint, not a fault. */
  readonly flatCount: number;
  readonly flats: readonly Stretch[];
}

/** Stretches that are listed. Chosen. */
const LISTED_STRETCHES = 50;

/** Source: rule 8 of section 7 of the reference pack. */
const FLAT_LONGER_THAN_MS = 6 * HOUR_MS;

/** Least readings of a flat stretch: two equal daily readings are no sign of anything. Chosen. */
const FLAT_READINGS = 4;

/**
 * Gaps, flat stretches and range of a log. `at`: strictly rising, n >= 1; `temperatureC`: as many.
 *
 * A gap is a step longer than max(3 x median step, 30 min). Source: section 2.4 of the reference pack.
 */
export function seriesNotes(at: Float64Array, temperatureC: Float64Array): SeriesNotes {
  if (at.length === 0) throw new RangeError('seriesNotes needs at least one reading');
  const medianStepMs = medianStep(at);
  const longest = Math.max(3 * medianStepMs, 30 * MINUTE_MS);
  const gaps = new StretchList();
  const flats = new StretchList();
  let lowestC = Number.POSITIVE_INFINITY;
  let highestC = Number.NEGATIVE_INFINITY;
  let flatFrom = 0;
  for (let row = 0; row < at.length; row += 1) {
    const value = temperatureC[row] ?? 0;
    if (value < lowestC) lowestC = value;
    if (value > highestC) highestC = value;
    const isGap = row > 0 && (at[row] ?? 0) - (at[row - 1] ?? 0) > longest;
    if (isGap) gaps.add(at[row - 1] ?? 0, at[row] ?? 0);
    if (isGap || value !== temperatureC[flatFrom]) {
      noteFlat(flats, at, flatFrom, row - 1);
      flatFrom = row;
    }
  }
  noteFlat(flats, at, flatFrom, at.length - 1);
  return {
    firstAt: at[0] ?? 0,
    lastAt: at.at(-1) ?? 0,
    lowestC,
    highestC,
    medianStepMs,
    gapCount: gaps.count,
    gaps: gaps.listed,
    flatCount: flats.count,
    flats: flats.listed,
  };
}

class StretchList {
  count = 0;
  readonly listed: Stretch[] = [];

  add(fromAt: Instant, toAt: Instant): void {
    this.count += 1;
    if (this.listed.length < LISTED_STRETCHES) this.listed.push({ fromAt, toAt });
  }
}

function noteFlat(flats: StretchList, at: Float64Array, from: number, to: number): void {
  const fromAt = at[from] ?? 0;
  const toAt = at[to] ?? 0;
  if (to - from + 1 >= FLAT_READINGS && toAt - fromAt > FLAT_LONGER_THAN_MS) flats.add(fromAt, toAt);
}

/** The lower middle one of the steps. Most logs have a handful of different steps, so these are counted, not sorted. */
function medianStep(at: Float64Array): number {
  if (at.length < 2) return 0;
  const counts = new Map<number, number>();
  for (let row = 1; row < at.length; row += 1) {
    const step = (at[row] ?? 0) - (at[row - 1] ?? 0);
    counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  let left = Math.floor((at.length - 2) / 2);
  for (const step of Float64Array.from(counts.keys()).sort()) {
    left -= counts.get(step) ?? 0;
    if (left < 0) return step;
  }
  throw new RangeError('a log without steps');
}
