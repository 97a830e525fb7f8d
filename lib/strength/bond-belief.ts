import type { FigureSource } from '@/lib/materials/figure-source';

/**
 * What is believed of a bond's factor kappa, mean bond strength over the wood's shear strength, for one wood, adhesive
 * and wire: before any test from the prior, afterwards from the shop's own pulls too.
 */
export interface BondBelief {
  readonly median: number;
  /** What the next joint's kappa exceeds with all but the lower share. */
  readonly lower: number;
  /** Standard deviation of the logarithm of the next joint's kappa. */
  readonly logSd: number;
  /** Pulls that failed in the bond, and pulls that only say "at least". */
  readonly exactPulls: number;
  readonly boundPulls: number;
  readonly source: FigureSource;
}
