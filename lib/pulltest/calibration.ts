import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import type { PullMode } from '@/lib/pulltest/pull-mode';
import { outReasonText } from '@/lib/pulltest/pull-words';
import { type SaturatingCurve, saturatingCurve } from '@/lib/statistics/saturating-curve';
import type { GluedShank } from '@/lib/strength/bond-pull-out';
import type { PullFailure, PullReading } from '@/lib/strength/pull-reading';
import type { Instant } from '@/lib/units/instant';

/** The combination a calibration speaks for: one wood, adhesive and wire. */
export interface CalibrationKey {
  readonly woodId: string;
  readonly adhesiveId: string;
  readonly wireId: string;
}

/** An accepted analysis. Never changed: the next one supersedes it. */
export interface Calibration {
  readonly key: CalibrationKey;
  /** From 1 for each key. */
  readonly version: number;
  readonly acceptedAt: Instant;
  readonly personId: string | null;
  readonly seriesIds: readonly string[];
  /** Every pull of those series, counted or not, as `lib/strength` takes them. */
  readonly pulls: readonly CalibrationPull[];
  readonly note: string;
}

/** A pull as it was when the calibration was accepted, with the id it can be looked up by. */
export interface CalibrationPull {
  readonly pullId: string;
  readonly loadN: number;
  readonly failure: PullFailure;
  readonly isLowerBound: boolean;
  readonly excludedReason: string | null;
}

export type CalibrationRefusal =
  /** No pull counts. */
  | 'no-readings'
  /** A joint came out by hand: a strength of 0 has no place in a calibration, and leaving it out would be a lie. */
  | 'fell-out';

export type CalibrationWarning =
  | 'fewer-than-3-mixes'
  | 'fewer-than-3-depths'
  | 'fewer-than-8-failed'
  | 'scale-not-checked';

/** What accepting these pulls would write down, or why it may not be accepted. */
export type CalibrationDraft =
  | {
      readonly ok: true;
      readonly pulls: readonly CalibrationPull[];
      readonly warnings: readonly CalibrationWarning[];
      /** How strength bends over depth in these pulls, for setting `saturationMm` (1 / rate); see its refusals. */
      readonly saturation: SaturatingCurve;
    }
  | { readonly ok: false; readonly code: CalibrationRefusal };

/**
 * Turns the judged pulls of a combination into a calibration. Excluded and early pulls go along with their reason.
 */
export function calibrationDraft(pulls: readonly JudgedPull[]): CalibrationDraft {
  if (pulls.some(({ use }) => use.kind === 'fell-out')) return { ok: false, code: 'fell-out' };
  const counted = pulls.flatMap(({ record, use }) =>
    use.kind === 'exact' || use.kind === 'at-least'
      ? [{ record, loadN: use.loadN, isExact: use.kind === 'exact' }]
      : [],
  );
  if (counted.length === 0) return { ok: false, code: 'no-readings' };
  const exact = counted.filter(({ isExact }) => isExact);
  const warnings: CalibrationWarning[] = [];
  if (new Set(counted.map(({ record }) => record.mixId)).size < 3) warnings.push('fewer-than-3-mixes');
  if (new Set(counted.map(({ record }) => record.embedmentMm)).size < 3) warnings.push('fewer-than-3-depths');
  if (exact.length < 8) warnings.push('fewer-than-8-failed');
  if (pulls.some(({ marks }) => marks.includes('scale-not-checked') || marks.includes('scale-not-named'))) {
    warnings.push('scale-not-checked');
  }
  return {
    ok: true,
    pulls: pulls.map(calibrationPull),
    warnings,
    saturation: saturatingCurve({
      x: exact.map(({ record }) => record.embedmentMm),
      y: exact.map(({ loadN }) => loadN),
      form: 'tanh',
      scale: 'log',
    }),
  };
}

function calibrationPull({ record, use }: JudgedPull): CalibrationPull {
  return {
    pullId: record.id,
    loadN: use.kind === 'exact' || use.kind === 'at-least' ? use.loadN : (record.loadN ?? 0),
    failure: strengthFailure(record.mode),
    isLowerBound: use.kind === 'at-least',
    excludedReason: use.kind === 'out' ? outReasonText(use.reason) : null,
  };
}

/** A pull that was stopped is to `lib/strength` one that ended outside the joint, like a jig that slipped. */
function strengthFailure(mode: PullMode): PullFailure {
  return mode === 'held' || mode === 'scale-failed' ? 'jig-failed' : mode;
}

/** The pulls of a calibration as `lib/strength` takes them, with each specimen as it was made. */
export function strengthReadings(
  calibration: Pick<Calibration, 'pulls'>,
  specimenOf: (pullId: string) => GluedShank | null,
): PullReading[] {
  return calibration.pulls.flatMap(({ pullId, ...pull }) => {
    const specimen = specimenOf(pullId);
    return specimen === null ? [] : [{ ...pull, specimen }];
  });
}
