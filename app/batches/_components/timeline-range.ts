import type { BatchTimeline } from '@/lib/batch/timeline';
import { HOUR_MS, type Instant } from '@/lib/units/instant';

/** How much of a batch's time is drawn. */
export const SPANS = ['near', 'week', 'all'] as const;
export type Span = (typeof SPANS)[number];

export const SPAN_WORDS: { readonly [S in Span]: string } = {
  near: 'Around now',
  week: 'A week',
  all: 'All of it',
};

export interface TimeRange {
  readonly fromAt: Instant;
  readonly toAt: Instant;
}

/** Position of an instant along the drawing, in percent of its width. */
export type Place = (at: Instant) => number;

/** Hours before and after now that "around now" and "a week" draw. Chosen: last night and tomorrow; three and four days. */
const HOURS: { readonly [S in Exclude<Span, 'all'>]: readonly [number, number] } = { near: [18, 30], week: [72, 96] };
/** Room left on both ends. */
const MARGIN = 0.02;
const LEAST_MS = 2 * HOUR_MS;

/** The stretch of time to draw; null when the batch has no mix yet. */
export function timeRange({ fromAt, toAt }: BatchTimeline, span: Span, nowAt: Instant): TimeRange | null {
  if (fromAt === null || toAt === null) return null;
  if (span !== 'all') {
    const [before, after] = HOURS[span];
    return { fromAt: nowAt - before * HOUR_MS, toAt: nowAt + after * HOUR_MS };
  }
  const lengthMs = Math.max(toAt - fromAt, LEAST_MS);
  return { fromAt: fromAt - lengthMs * MARGIN, toAt: fromAt + lengthMs * (1 + MARGIN) };
}

/** The span a page begins with: around now while anything happens there, otherwise all of it. */
export function spanOf(word: string, { fromAt, toAt }: BatchTimeline, nowAt: Instant): Span {
  const chosen = SPANS.find((span) => span === word);
  if (chosen !== undefined) return chosen;
  const [before, after] = HOURS.near;
  const isNear =
    fromAt !== null && toAt !== null && toAt > nowAt - before * HOUR_MS && fromAt < nowAt + after * HOUR_MS;
  return isNear ? 'near' : 'all';
}
