import { HOUR_MS, MINUTE_MS, SECOND_MS } from '@/lib/units/instant';

/**
 * A length of time to plan by: `45 min`, `2 h 05`, `3 d 4 h`. Rounded to the minute below a day and to the hour from
 * a day on; a day here is 24 hours. `durationMs` is finite; a negative one is printed with a minus sign.
 */
export function durationText(durationMs: number): string {
  if (!Number.isFinite(durationMs)) throw new RangeError(`durationText needs a finite duration, got ${durationMs}`);
  const sign = durationMs <= -MINUTE_MS / 2 ? '\u2212' : '';
  const minutes = Math.round(Math.abs(durationMs) / MINUTE_MS);
  if (minutes < 60) return `${sign}${minutes} min`;
  if (minutes < 24 * 60) return `${sign}${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
  const hours = Math.round(minutes / 60);
  return hours % 24 === 0 ? `${sign}${hours / 24} d` : `${sign}${Math.floor(hours / 24)} d ${hours % 24} h`;
}

/**
 * A countdown of even width: `12:05` (minutes and seconds), `1:02:05` from an hour on. It shows 0:00 only when the
 * time is up (a started second counts as whole); past that it counts up with a minus sign: `−0:30`.
 */
export function countdownText(remainingMs: number): string {
  if (!Number.isFinite(remainingMs)) throw new RangeError(`countdownText needs a finite duration, got ${remainingMs}`);
  const sign = remainingMs <= -SECOND_MS ? '\u2212' : '';
  const seconds = remainingMs > 0 ? Math.ceil(remainingMs / SECOND_MS) : Math.floor(-remainingMs / SECOND_MS);
  const secondText = String(seconds % 60).padStart(2, '0');
  const minutes = Math.floor((seconds * SECOND_MS) / MINUTE_MS);
  if (minutes < 60) return `${sign}${minutes}:${secondText}`;
  const hours = Math.floor((minutes * MINUTE_MS) / HOUR_MS);
  return `${sign}${hours}:${String(minutes % 60).padStart(2, '0')}:${secondText}`;
}
