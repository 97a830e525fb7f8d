import { type LowerShare, lowerShare } from '@/lib/strength/estimate';

/** What a shop may set about the estimates. */
export interface StrengthSettings {
  readonly lower: LowerShare;
  /** Depth over which a bond's strength saturates, mm. */
  readonly saturationMm: number;
  /** Share of a wire's strength that is left where it bends over a ring. */
  readonly bendShare: { readonly low: number; readonly central: number; readonly high: number };
  readonly combination: 'quadratic' | 'hankinson';
  /** Bearing of a shank in end grain pushed sideways, over that across the grain. */
  readonly endGrainBearing: number;
}

/**
 * Chosen: the fifth percentile; 1 in for the saturation (plausible 0.5 to 1.5 in from shear lag with elastic-brittle
 * to tough bonds); three quarters at a bend (0.6 to 0.9 from charts for rope over sheaves, from memory); half the
 * bearing in end grain (drafts for glued-in rods go down to a tenth; weak evidence).
 */
export const DEFAULT_STRENGTH_SETTINGS: StrengthSettings = {
  lower: lowerShare(0.05),
  saturationMm: 25.4,
  bendShare: { low: 0.6, central: 0.75, high: 0.9 },
  combination: 'quadratic',
  endGrainBearing: 0.5,
};
