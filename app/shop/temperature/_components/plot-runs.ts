import { MINUTE_MS } from '@/lib/units/instant';
import type { ReadingBucket } from '@/prisma/data/sensors';

/** A shorter silence is no gap; the same limit as the cure clocks have. */
const LEAST_GAP_MS = 30 * MINUTE_MS;
const GAP_INTERVALS = 3;

/** The silence after which a log has a gap: three of its usual intervals, at least half an hour. */
export function gapLimitMs(buckets: readonly ReadingBucket[]): number {
  const intervals = buckets
    .flatMap((bucket, index) => {
      const next = buckets[index + 1];
      if (bucket.count > 1) return [(bucket.lastAt - bucket.firstAt) / (bucket.count - 1)];
      return next === undefined ? [] : [next.firstAt - bucket.lastAt];
    })
    .sort((a, b) => a - b);
  return Math.max(LEAST_GAP_MS, GAP_INTERVALS * (intervals[Math.floor(intervals.length / 2)] ?? 0));
}

/** Cuts readings where the log has a gap, so that no line is drawn over it. */
export function plotRuns(buckets: readonly ReadingBucket[]): readonly (readonly ReadingBucket[])[] {
  const limitMs = gapLimitMs(buckets);
  const runs: ReadingBucket[][] = [];
  let lastAt = Number.NEGATIVE_INFINITY;
  for (const bucket of buckets) {
    const run = runs.at(-1);
    if (run === undefined || bucket.firstAt - lastAt > limitMs) runs.push([bucket]);
    else run.push(bucket);
    lastAt = bucket.lastAt;
  }
  return runs;
}
