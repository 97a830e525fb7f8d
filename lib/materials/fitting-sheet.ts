import type { FigureSource } from '@/lib/materials/figure-source';
import type { WireSheet } from '@/lib/materials/wire-sheet';

/**
 * A split ring or a hook by the strength its maker states. There is no standard for either, so a fitting without a
 * statement has no strength that could be computed.
 */
export interface FittingSheet {
  /** Load at which it opens or straightens, N. */
  readonly statedStrengthN?: number;
  /** Length it hangs down by: outside diameter of a ring, eye to bend of a hook, mm. */
  readonly lengthMm?: number;
  readonly massG?: number;
  readonly sources: { readonly statedStrengthN?: FigureSource };
}

/** A screw eye: a threaded shank and an eye bent from one wire. */
export interface ScrewEyeSheet {
  /** Outside diameter of the thread, mm. */
  readonly threadDiameterMm: number;
  /** Length of full thread, without the bevelled tip, mm. */
  readonly threadLengthMm: number;
  readonly eyeInsideMm?: number;
  /** Whether the eye is welded or brazed shut. */
  readonly isEyeClosed: boolean;
  /** Its wire, for the strength of eye and core. */
  readonly wire?: WireSheet;
  /** Load at which its maker says it opens or breaks, N. */
  readonly statedStrengthN?: number;
  readonly sources: { readonly statedStrengthN?: FigureSource };
}
