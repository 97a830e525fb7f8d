import type { Instant } from '@/lib/units/instant';
import { addDays, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';
import type { ReadingBucket } from '@/prisma/data/sensors';
import { gapLimitMs } from './plot-runs';

/** A calendar day of the shop, as far as it lies in the plot. */
export interface PlotDay {
  /** YYYY-MM-DD. */
  readonly day: string;
  readonly startAt: Instant;
  readonly endAt: Instant;
  readonly lowestC: number | null;
  readonly highestC: number | null;
  readonly count: number;
  /** Time of the day without readings, ms. */
  readonly gapMs: number;
}

/** Cuts a stretch of readings into the shop's days. A bucket counts to the day in which it begins. */
export function plotDays(
  buckets: readonly ReadingBucket[],
  zone: string,
  fromAt: Instant,
  toAt: Instant,
): readonly PlotDay[] {
  const days: PlotDay[] = [];
  const limitMs = gapLimitMs(buckets);
  for (let day = wallTimeAt(fromAt, zone).day; instantOfWallTime(day, 0, zone) < toAt; day = addDays(day, 1)) {
    const startAt = Math.max(fromAt, instantOfWallTime(day, 0, zone));
    const endAt = Math.min(toAt, instantOfWallTime(day, 1440, zone));
    const own = buckets.filter((bucket) => bucket.firstAt >= startAt && bucket.firstAt < endAt);
    days.push({
      day,
      startAt,
      endAt,
      lowestC: own.length === 0 ? null : Math.min(...own.map((bucket) => bucket.lowestC)),
      highestC: own.length === 0 ? null : Math.max(...own.map((bucket) => bucket.highestC)),
      count: own.reduce((sum, bucket) => sum + bucket.count, 0),
      gapMs: silence(own, startAt, endAt, limitMs),
    });
  }
  return days;
}

function silence(buckets: readonly ReadingBucket[], startAt: Instant, endAt: Instant, limitMs: number): number {
  let sumMs = 0;
  let lastAt = startAt;
  for (const bucket of buckets) {
    if (bucket.firstAt - lastAt > limitMs) sumMs += bucket.firstAt - lastAt;
    lastAt = bucket.lastAt;
  }
  return endAt - lastAt > limitMs ? sumMs + (endAt - lastAt) : sumMs;
}
