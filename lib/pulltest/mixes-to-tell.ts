import { comparisonPower, mixesNeeded } from '@/lib/statistics/depth-power';

/** Two depths that a series shall tell apart. */
export interface DepthsToTell {
  readonly shallowMm: number;
  readonly deepMm: number;
  /** Depth over which strength saturates, mm (see `lib/strength`); null: in proportion to depth. */
  readonly saturationMm: number | null;
  /** Expected scatter within a mix: 0.2 for 20 %. */
  readonly variation: number;
  /** Depths in the series. */
  readonly levels: number;
}

export interface MixesToTell {
  /** Expected load at the deeper over that at the shallower. */
  readonly ratio: number;
  /** Mixes for four chances in five, and for nine in ten; null: more than 200. */
  readonly forFourInFive: number | null;
  readonly forNineInTen: number | null;
  /** The chance with 3 mixes. */
  readonly withThree: number;
}

/**
 * How many mixes, each with one specimen of every depth, it takes to tell two depths apart. 12.7 and 19.05 mm, in
 * proportion, 20 %, 5 depths: ratio 1.5, 4 mixes (5 for nine in ten), 0.74 with three.
 *
 * Throws RangeError unless 0 < shallow < deep, variation > 0 and levels >= 2.
 */
export function mixesToTell({ shallowMm, deepMm, saturationMm, variation, levels }: DepthsToTell): MixesToTell {
  if (!(shallowMm > 0 && deepMm > shallowMm)) {
    throw new RangeError(`mixesToTell needs two rising depths, got ${shallowMm} and ${deepMm}`);
  }
  const ratio =
    saturationMm === null ? deepMm / shallowMm : Math.tanh(deepMm / saturationMm) / Math.tanh(shallowMm / saturationMm);
  const comparison = { ratio, variation, levels };
  return {
    ratio,
    forFourInFive: ratio > 1 ? mixesNeeded(comparison, 0.8) : null,
    forNineInTen: ratio > 1 ? mixesNeeded(comparison, 0.9) : null,
    withThree: ratio > 1 ? comparisonPower(comparison, 3) : 0,
  };
}
