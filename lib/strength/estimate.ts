import type { FigureSource } from '@/lib/materials/figure-source';
import type { FormulaInput, Working } from '@/lib/materials/formula-card';
import { normalQuantile } from '@/lib/statistics/normal-distribution';
import type { QuantityUnit } from '@/lib/units/quantity';

/** A load with its scatter: never a mean alone, and never a rating. */
export interface Estimate {
  readonly kind: 'estimate';
  /** Half of all such anchors carry more, N. */
  readonly medianN: number;
  /** The load that all but the lower share (one in twenty unless set otherwise) carry, N. */
  readonly lowerN: number;
  /** Standard deviation of the logarithm of the load. */
  readonly logSd: number;
  readonly working: Working;
}

/** Why no load is given: outside the box the formula is good for, or something not known. */
export interface NoEstimate {
  readonly kind: 'no-estimate';
  readonly reasons: readonly NoEstimateReason[];
}

export const NO_ESTIMATE_REASONS = [
  'wire-diameter-outside',
  'embedment-outside',
  'gravity-outside',
  'too-warm',
  'fit-outside',
  'shank-leaves-body',
  'no-pulls-of-this-adhesive',
  'twist-too-steep',
  'eye-not-known',
  'strength-not-known',
] as const;
export type NoEstimateReason = (typeof NO_ESTIMATE_REASONS)[number];

/** Share of anchors that the lower value lets fall below it. */
export interface LowerShare {
  readonly share: number;
  /** Standard normal distance of that share below the middle. */
  readonly z: number;
}

/** Throws RangeError unless 0 < share < 0.5. */
export function lowerShare(share: number): LowerShare {
  if (!(share > 0 && share < 0.5)) throw new RangeError(`a lower share must be in (0, 0.5), got ${share}`);
  return { share, z: -normalQuantile(share) };
}

/** An estimate from its median and the scatter of its logarithm. */
export function scattered(medianN: number, logSd: number, lower: LowerShare, working: Working): Estimate {
  return { kind: 'estimate', medianN, lowerN: medianN * Math.exp(-lower.z * logSd), logSd, working };
}

/** An estimate from its median and its lower value. */
export function between(medianN: number, lowerN: number, lower: LowerShare, working: Working): Estimate {
  const logSd = medianN > 0 && lowerN > 0 ? Math.log(medianN / lowerN) / lower.z : 0;
  return { kind: 'estimate', medianN, lowerN, logSd, working };
}

export function noEstimate(...reasons: readonly NoEstimateReason[]): NoEstimate {
  return { kind: 'no-estimate', reasons };
}

/** One line of a working. */
export function input(
  symbol: string,
  name: string,
  value: number,
  unit: QuantityUnit,
  source: FigureSource,
): FormulaInput {
  return { symbol, name, quantity: { value, unit }, source };
}
