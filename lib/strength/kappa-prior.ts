import type { BondClass } from '@/lib/materials/adhesive-strength-sheet';
import { chosen, type FigureSource } from '@/lib/materials/figure-source';

/** What is believed of a bond's kappa before any pull. */
export interface KappaPrior {
  readonly median: number;
  /** Scatter of ln kappa from one wood, adhesive and wire to another. */
  readonly groupLogSd: number;
  /** Scatter of ln load from one joint to the next of the same kind. */
  readonly jointLogSd: number;
  /** Pulls that failed in the bond before anything is said at all; 0: the prior alone will do. */
  readonly leastPulls: number;
  readonly source: FigureSource;
}

/** 1.30 / 0.30 / 0.18: the practice value with slow epoxy gives 1.319, shear of clear wood scatters by 0.14. */
const SLOW_EPOXY: KappaPrior = {
  median: 1.3,
  groupLogSd: 0.3,
  jointLogSd: 0.18,
  leastPulls: 0,
  source: chosen(
    'Median 1.30 round one practice value (common practice, no source) and below published glued-in rods; scatter 0.30 between kinds of joint, 0.18 between joints',
  ),
};

/** No evidence at all: so wide that the shop's pulls alone decide. */
const NO_EVIDENCE: KappaPrior = {
  median: 1,
  groupLogSd: 0.7,
  jointLogSd: 0.25,
  leastPulls: 3,
  source: chosen("Nothing is known of this adhesive: the shop's own pulls decide, three at least"),
};

/** The prior of an adhesive's class. Only slow two-part epoxy has one that speaks before the first pull. */
export function kappaPrior(bondClass: BondClass): KappaPrior {
  return bondClass === 'slow-epoxy' ? SLOW_EPOXY : NO_EVIDENCE;
}
