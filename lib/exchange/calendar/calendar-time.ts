import { HOUR_MS, type Instant, MINUTE_MS, SECOND_MS } from '@/lib/units/instant';

/**
 * An instant in the UTC form: `20260308T140000Z`. Fractions of a second are cut off. Throws RangeError for an instant
 * that is no date or lies outside the years 0 to 9999. Source: RFC 5545 section 3.3.5, form 2 (seen).
 */
export function utcDateTime(at: Instant): string {
  const date = new Date(at);
  const year = date.getUTCFullYear();
  if (!(year >= 0 && year <= 9999)) throw new RangeError(`utcDateTime needs a date within year 9999, got ${at}`);
  return `${date.toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
}

/**
 * An exact length of time in hours, minutes and seconds: `PT24H`, `PT1H30M`, `-PT15M`, `PT0S`. Never in days or weeks,
 * which are nominal: a day of a clock change has 23 or 25 hours. Fractions of a second are cut off.
 * Source: RFC 5545 section 3.3.6 (seen). Example: 24 hours give `PT24H`.
 */
export function exactDuration(durationMs: number): string {
  if (!Number.isFinite(durationMs)) throw new RangeError(`exactDuration needs a finite duration, got ${durationMs}`);
  const sign = durationMs <= -SECOND_MS ? '-' : '';
  const wholeMs = Math.abs(durationMs);
  const hours = Math.floor(wholeMs / HOUR_MS);
  const minutes = Math.floor((wholeMs % HOUR_MS) / MINUTE_MS);
  const seconds = Math.floor((wholeMs % MINUTE_MS) / SECOND_MS);
  const parts = [hours > 0 ? `${hours}H` : '', minutes > 0 ? `${minutes}M` : '', seconds > 0 ? `${seconds}S` : ''];
  // Hours and seconds without minutes between them are not allowed by the grammar: PT1H0M5S.
  if (hours > 0 && minutes === 0 && seconds > 0) parts[1] = '0M';
  return `${sign}PT${parts.join('') || '0S'}`;
}
