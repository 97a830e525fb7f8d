import type { Instant } from '@/lib/units/instant';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';

/** The stretch of time that is in view. */
export interface Sight {
  readonly fromAt: Instant;
  readonly spanMs: number;
}

/** Where an instant is drawn: px from `originAt`, which stays the same for as long as a plan is looked at. */
export interface Scale {
  readonly originAt: Instant;
  readonly pxPerMs: number;
}

/** A stretch of time that is drawn: what is in view and a part of a span on either side, ready to be moved in. */
export interface Drawn {
  readonly fromAt: Instant;
  readonly toAt: Instant;
}

const DAY_MS = 24 * HOUR_MS;

/** Spans to zoom through, from a day to eight weeks. */
export const SPANS_MS = [1, 2, 4, 7, 14, 28, 56].map((days) => days * DAY_MS);

/** What is dragged comes to rest on five minutes. Chosen: nobody mixes by the minute. */
const STEP_MS = 5 * MINUTE_MS;

export function snapped(at: Instant): Instant {
  return Math.round(at / STEP_MS) * STEP_MS;
}

/** Px of an instant on a scale. */
export function placeOf(at: Instant, { originAt, pxPerMs }: Scale): number {
  return (at - originAt) * pxPerMs;
}

/**
 * What is drawn for a sight. It changes only when the sight has moved by half a span, so that moving by less draws
 * nothing anew.
 */
export function drawnAround({ fromAt, spanMs }: Sight, originAt: Instant): Drawn {
  const half = spanMs / 2;
  const first = originAt + Math.floor((fromAt - originAt) / half) * half;
  return { fromAt: first - half, toAt: first + spanMs + 2 * half };
}

/** The next wider (1) or closer (-1) span about the middle of what is in view, kept within what is planned. */
export function zoomed(sight: Sight, by: 1 | -1, least: Instant, most: Instant): Sight {
  const index = SPANS_MS.findIndex((span) => span >= sight.spanMs - 1);
  const spanMs = SPANS_MS[Math.min(SPANS_MS.length - 1, Math.max(0, index + by))] ?? sight.spanMs;
  const middle = sight.fromAt + sight.spanMs / 2;
  return kept({ fromAt: middle - spanMs / 2, spanMs }, least, most);
}

/** The same span moved by a part of it, kept within what is planned. */
export function panned(sight: Sight, ms: number, least: Instant, most: Instant): Sight {
  return kept({ ...sight, fromAt: sight.fromAt + ms }, least, most);
}

function kept({ fromAt, spanMs }: Sight, least: Instant, most: Instant): Sight {
  return { fromAt: Math.max(least, Math.min(fromAt, Math.max(least, most - spanMs))), spanMs };
}
