import { fUpperTail } from '@/lib/statistics/f-distribution';
import { centre, sumOfSquares } from '@/lib/statistics/summary';

/** A ratio of mean squares with its p. */
export interface FTest {
  readonly f: number;
  readonly top: number;
  readonly bottom: number;
  readonly p: number;
}

/**
 * The test of one mean square against another; null where either has no freedom or the error has no scatter beyond
 * rounding, so that no ratio can be formed.
 */
export function fTest(topSquares: number, top: number, errorSquares: number, bottom: number): FTest | null {
  if (!(top > 0 && bottom > 0)) return null;
  const error = errorSquares / bottom;
  const f = topSquares / top / error;
  if (!(error > 0 && Number.isFinite(f))) return null;
  return { f, top, bottom, p: fUpperTail(Math.max(0, f), top, bottom) };
}

export interface OneWayAnova {
  readonly betweenSquares: number;
  readonly betweenFreedom: number;
  readonly withinSquares: number;
  readonly withinFreedom: number;
  /** Null where the groups leave no freedom or show no scatter. */
  readonly test: FTest | null;
}

/**
 * Variation between and within groups. Groups may differ in size; empty ones are left out; null where none is left.
 * Source: textbook; centred on the grand mean, then on the groups' means (see `summary`).
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova | null {
  const filled = groups.filter((group) => group.length > 0);
  if (filled.length === 0) return null;
  const all = filled.flat();
  const grand = centre(all);
  const offsets = filled.map((group) => centre(group.map((value) => value - grand)));
  const weighted = filled.reduce((sum, group, i) => sum + group.length * (offsets[i] ?? 0), 0) / all.length;
  const betweenSquares = filled.reduce((sum, group, i) => sum + group.length * ((offsets[i] ?? 0) - weighted) ** 2, 0);
  const withinSquares = filled.reduce((sum, group) => sum + sumOfSquares(group), 0);
  const betweenFreedom = filled.length - 1;
  const withinFreedom = all.length - filled.length;
  const test = fTest(betweenSquares, betweenFreedom, withinSquares, withinFreedom);
  return { betweenSquares, betweenFreedom, withinSquares, withinFreedom, test };
}
