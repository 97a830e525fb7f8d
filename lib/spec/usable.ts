import type { SpecAnchor, SpecLine } from '@/lib/spec/spec-model';
import type { FishingLine } from '@/lib/strength/fishing-line';

/** Sizes beyond this are typing errors, mm. */
const GREATEST_MM = 2000;

/** A size that can be one; anything else counts as not entered. */
export function sizeOrNull(value: number | null | undefined): number | null {
  return value !== null && value !== undefined && value > 0 && value <= GREATEST_MM ? value : null;
}

/** A positive finite figure; anything else counts as not entered. */
export function positiveOrNull(value: number | null | undefined): number | null {
  return value !== null && value !== undefined && value > 0 && Number.isFinite(value) ? value : null;
}

function withinOrNull(value: number | null, low: number, high: number): number | null {
  return value !== null && value >= low && value <= high ? value : null;
}

/** An anchor whose numbers can be what they say: what cannot counts as not entered, so that no rule trips over it. */
export function usableAnchor(anchor: SpecAnchor): SpecAnchor {
  return {
    ...anchor,
    xMm: withinOrNull(anchor.xMm, -GREATEST_MM, GREATEST_MM),
    zMm: withinOrNull(anchor.zMm, -GREATEST_MM, GREATEST_MM),
    slantDeg: withinOrNull(anchor.slantDeg, -90, 90),
    loadAngleDeg: withinOrNull(anchor.loadAngleDeg, 0, 90),
    wireDiameterMm: sizeOrNull(anchor.wireDiameterMm),
    twistPitchMm: sizeOrNull(anchor.twistPitchMm),
    eyeInsideMm: sizeOrNull(anchor.eyeInsideMm),
    bitDiameterMm: sizeOrNull(anchor.bitDiameterMm),
    drillDepthMm: sizeOrNull(anchor.drillDepthMm),
    embedmentMm: sizeOrNull(anchor.embedmentMm),
  };
}

/** A line that can be one; null: not entered, or not a line. */
export function usableLine(line: SpecLine | null): FishingLine | null {
  if (line === null || positiveOrNull(line.labelN) === null) return null;
  const isShare = (share: number | null) => share === null || (share > 0 && share <= 1);
  return isShare(line.knotShare) && isShare(line.dragShare) ? line : null;
}
