import { between, type Estimate, type NoEstimate } from '@/lib/strength/estimate';
import { hankinson, quadraticCombination } from '@/lib/strength/load-angle';
import type { Governed } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

/**
 * Load at an angle at which the shank first bends visibly, from the straight strength and the square first bending. A
 * shank is never taken to carry more sideways than straight.
 */
export function bendsAtAngle(
  straight: Governed | NoEstimate,
  square: Estimate,
  angleDeg: number,
  settings: StrengthSettings,
): Estimate | NoEstimate {
  if (straight.kind === 'no-estimate') return straight;
  const combine = settings.combination === 'quadratic' ? quadraticCombination : hankinson;
  const at = (straightN: number, squareN: number) =>
    straightN > 0 ? combine(straightN, Math.min(straightN, squareN), angleDeg) : 0;
  return between(
    at(straight.medianN, square.medianN),
    at(straight.lowerN, square.lowerN),
    settings.lower,
    square.working,
  );
}
