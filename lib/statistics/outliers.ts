import { studentUpperQuantile } from '@/lib/statistics/student-t';
import { summary } from '@/lib/statistics/summary';

/** Which way a reading must lie to count as far out. */
export type OutlierSide = 'low' | 'high' | 'either';

export type GrubbsResult =
  | {
      readonly ok: true;
      /** Position of the most extreme reading. */
      readonly index: number;
      /** Its distance from the mean in standard deviations, at most (n - 1)/sqrt(n). */
      readonly g: number;
      readonly critical: number;
      readonly isFlagged: boolean;
    }
  | { readonly ok: false; readonly code: 'too-few' | 'no-scatter' };

/**
 * Whether the most extreme reading of a sample lies further out than one sample in 1/alpha would show. Says nothing
 * about why: a flagged reading stays in. Meant for one suspect, n >= 3; at n = 3 it can say next to nothing.
 * Source: F. E. Grubbs (1969), NIST/SEMATECH e-Handbook 1.3.5.17.1.
 */
export function grubbs(values: readonly number[], alpha = 0.05, side: OutlierSide = 'either'): GrubbsResult {
  if (values.length < 3) return { ok: false, code: 'too-few' };
  const most = furthest(values, side);
  if (most === null) return { ok: false, code: 'no-scatter' };
  const critical = grubbsCritical(values.length, alpha, side);
  return { ok: true, index: most.index, g: most.distance, critical, isFlagged: most.distance > critical };
}

/** The critical value of Grubbs's test. Throws RangeError unless n >= 3. n = 8, 0.05, one side: 2.031652. */
export function grubbsCritical(n: number, alpha: number, side: OutlierSide = 'either'): number {
  if (!(Number.isInteger(n) && n >= 3)) throw new RangeError(`grubbsCritical needs n of 3 or more, got ${n}`);
  const t = studentUpperQuantile(alpha / (side === 'either' ? 2 * n : n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

export interface EsdStep {
  /** Position of the reading taken out in this step. */
  readonly index: number;
  readonly r: number;
  readonly critical: number;
}

export interface EsdResult {
  readonly steps: readonly EsdStep[];
  /** The largest step whose r exceeds its critical value: 0 where none does. */
  readonly count: number;
}

/**
 * How many of at most `most` readings lie too far out, by the generalised extreme studentized deviate. The count is
 * the LAST step that exceeds, not the first failure: several outliers hide each other. Meant for n >= 25; rough from
 * 15. Steps stop where fewer than 3 readings or no scatter would be left.
 * Source: B. Rosner, Technometrics 25 (1983); NIST/SEMATECH e-Handbook 1.3.5.17.3.
 */
export function generalisedEsd(values: readonly number[], most: number, alpha = 0.05): EsdResult {
  const n = values.length;
  const left = values.map((value, index) => ({ value, index }));
  const steps: EsdStep[] = [];
  for (let i = 1; i <= most && left.length >= 3; i++) {
    const furthestLeft = furthest(
      left.map(({ value }) => value),
      'either',
    );
    if (furthestLeft === null) break;
    const [gone] = left.splice(furthestLeft.index, 1);
    const t = studentUpperQuantile(alpha / (2 * (n - i + 1)), n - i - 1);
    const critical = ((n - i) * t) / Math.sqrt((n - i - 1 + t * t) * (n - i + 1));
    steps.push({ index: gone?.index ?? 0, r: furthestLeft.distance, critical });
  }
  return { steps, count: steps.findLastIndex(({ r, critical }) => r > critical) + 1 };
}

/** The reading furthest from the mean, in standard deviations; null where all are equal up to rounding. */
function furthest(values: readonly number[], side: OutlierSide): { index: number; distance: number } | null {
  const sample = summary(values);
  const sd = sample?.sd ?? 0;
  if (sample === null || !(sd > 1e-14 * Math.max(Math.abs(sample.least), Math.abs(sample.greatest)))) return null;
  let index = 0;
  let distance = Number.NEGATIVE_INFINITY;
  values.forEach((value, i) => {
    const off = (value - sample.mean) / sd;
    const seen = side === 'low' ? -off : side === 'high' ? off : Math.abs(off);
    if (seen > distance) {
      distance = seen;
      index = i;
    }
  });
  return { index, distance };
}
