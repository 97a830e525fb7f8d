import { lowerModel, lowerN } from '@/lib/pulltest/lower-model';
import type { MixFinding } from '@/lib/pulltest/mix-effects';
import type { OutlierCheck } from '@/lib/pulltest/outlier-flags';
import { readingsWithout, type SeriesReading, type SeriesReadings } from '@/lib/pulltest/series-readings';
import type { SeriesRefusal } from '@/lib/pulltest/series-refusal';
import type { Certainty } from '@/lib/statistics/interpolated-factor';

/** What the lower value would be without something that stands out. For judging how much hangs on it, not for use. */
export interface SensitivityLine {
  readonly without: { readonly kind: 'pull' | 'mix'; readonly id: string };
  readonly result: /** At the depth of comparison, and against the value with everything in, as a share. */
    | { readonly ok: true; readonly lowerN: number; readonly change: number }
    | { readonly ok: false; readonly code: SeriesRefusal | 'depth-not-tested' };
}

/** Leaving out more than this many one by one says nothing any more. */
const MOST_LINES = 10;

/**
 * The lower value at the depth of comparison without each flagged reading, and without the mix that was named. Empty
 * where nothing stands out or there is no lower value to compare with.
 */
export function sensitivity(
  series: SeriesReadings,
  certainty: Certainty,
  found: {
    readonly atDepth: { readonly depthMm: number; readonly lowerN: number } | null;
    readonly mixes: MixFinding | null;
    readonly outliers: OutlierCheck;
  },
): SensitivityLine[] {
  const { atDepth } = found;
  if (atDepth === null) return [];
  const line = (
    without: SensitivityLine['without'],
    leaveOut: (reading: SeriesReading) => boolean,
  ): SensitivityLine => {
    const model = lowerModel(readingsWithout(series, leaveOut), certainty);
    if (!model.ok) return { without, result: model };
    const lower = lowerN(model.model, atDepth.depthMm);
    if (lower === null) return { without, result: { ok: false, code: 'depth-not-tested' } };
    return { without, result: { ok: true, lowerN: lower, change: lower / atDepth.lowerN - 1 } };
  };
  const flags = found.outliers.ok ? found.outliers.flags.slice(0, MOST_LINES) : [];
  const pulls = flags.map(({ pullId }) => line({ kind: 'pull', id: pullId }, ({ record }) => record.id === pullId));
  const mixId = found.mixes?.named?.mixId;
  if (mixId === undefined) return pulls;
  return [...pulls, line({ kind: 'mix', id: mixId }, ({ record }) => record.mixId === mixId)];
}
