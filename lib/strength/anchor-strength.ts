import type { AnchorDesign } from '@/lib/strength/anchor-design';
import { screwEyeStrength } from '@/lib/strength/screw-eye-strength';
import type { AnchorStrength } from '@/lib/strength/strength-result';
import type { StrengthSettings } from '@/lib/strength/strength-settings';
import { throughWireStrength } from '@/lib/strength/through-wire-strength';
import { twistedWireStrength } from '@/lib/strength/twisted-wire-strength';

/**
 * What an anchor carries, straight and at its load's angle, by every way it can fail: an estimate, never a rating.
 *
 * Throws RangeError for sizes that are not positive and angles outside 0 to 90: the caller checks what was typed.
 */
export function anchorStrength(design: AnchorDesign, settings: StrengthSettings): AnchorStrength {
  switch (design.kind) {
    case 'twisted-wire':
      return twistedWireStrength(design, settings);
    case 'screw-eye':
      return screwEyeStrength(design, settings);
    case 'through-wire':
      return throughWireStrength(design, settings);
  }
}
