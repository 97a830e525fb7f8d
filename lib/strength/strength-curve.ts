import type { AnchorDesign, TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { type Comparison, gluedComparisons } from '@/lib/strength/comparisons';
import type { Estimate, NoEstimate } from '@/lib/strength/estimate';
import type { FailureWay, Governed } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { gluedShankOf } from '@/lib/strength/twisted-wire-strength';

/** One depth of the strength-against-depth plot, straight pull. */
export interface DepthPoint {
  readonly embedmentMm: number;
  readonly straight: Governed | NoEstimate;
  /** What the wire or the eye allows however deep. */
  readonly wireLimitN: number | null;
  /** Independent formulas at the same depth. */
  readonly comparisons: readonly Comparison[];
}

/** Strength of a glued shank at each depth, with the published formulas beside it. */
export function strengthByDepth(
  design: TwistedWireAnchor,
  depthsMm: readonly number[],
  settings: StrengthSettings,
): readonly DepthPoint[] {
  return depthsMm.map((embedmentMm) => {
    const at: TwistedWireAnchor = { ...design, embedmentMm };
    const { straight, ways } = anchorStrength(at, settings);
    const eye = ways.find(({ way, role }) => role === 'ultimate' && WIRE_WAYS.includes(way))?.result;
    return {
      embedmentMm,
      straight,
      wireLimitN: eye?.kind === 'estimate' ? eye.lowerN : null,
      comparisons: gluedComparisons(gluedShankOf(at), settings.lower),
    };
  });
}

const WIRE_WAYS: readonly FailureWay[] = ['wire-in-eye', 'eye-opens'];

/** One angle of the load-angle plot. */
export interface AnglePoint {
  readonly loadAngleDeg: number;
  readonly ultimate: Governed | NoEstimate;
  readonly bends: Estimate | NoEstimate | null;
}

/** Strength of an anchor at each angle between load and shank. */
export function strengthByAngle(
  design: AnchorDesign,
  anglesDeg: readonly number[],
  settings: StrengthSettings,
): readonly AnglePoint[] {
  return anglesDeg.map((loadAngleDeg) => {
    const { atAngle, bendsAtAngle } = anchorStrength({ ...design, loadAngleDeg }, settings);
    return { loadAngleDeg, ultimate: atAngle, bends: bendsAtAngle };
  });
}
