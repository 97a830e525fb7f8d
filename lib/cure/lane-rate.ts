import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { arrheniusCurve, doublingCurve, PLAIN_HOURS_CURVE, type RateCurve } from '@/lib/cure/rate-curve';

/**
 * The three histories every clock is computed along. `slow`: lowest plausible temperature, slowest plausible rate,
 * no cure below the sheet's least temperature; what "ready" is allowed on. `fast`: highest plausible temperature,
 * fastest rate, no stop in the cold; what "still open" is judged on. `central`: the best estimate, and it stops too.
 */
export const LANES = ['slow', 'central', 'fast'] as const;
export type Lane = (typeof LANES)[number];

/** The figures of a sheet that govern the rate of its cure. */
export type CureLaw = Pick<AdhesiveSheet, 'referenceC' | 'rateLaw' | 'minCureC'>;

/** A rate made of at most three stretches of temperature: nothing, one curve, another curve. */
export interface LaneRate {
  /** Below this the rate is 0, degC; at it the cure counts. Minus infinity: never stops. */
  readonly stopBelowC: number;
  /** Below this `below` holds, from it on `above`; both are 1 there. */
  readonly splitC: number;
  readonly below: RateCurve;
  readonly above: RateCurve;
}

/**
 * The relative rate a sheet has on a lane: 1 at its reference temperature. The extremes over the box of the
 * activation energy lie at its ends, and change sides at the reference temperature: below it the strongest
 * dependence on temperature is the slowest, above it the fastest.
 */
export function laneRate(law: CureLaw, lane: Lane): LaneRate {
  const { referenceC, rateLaw } = law;
  const stopBelowC = lane === 'fast' ? Number.NEGATIVE_INFINITY : law.minCureC;
  switch (rateLaw.kind) {
    case 'arrhenius': {
      const { low, central, high } = rateLaw.activationEnergyKjPerMol;
      const curve = (kjPerMol: number) => arrheniusCurve(kjPerMol, referenceC);
      return pick(lane, stopBelowC, referenceC, curve(low), curve(central), curve(high));
    }
    case 'doubling': {
      const { low, central, high } = rateLaw.doublingC;
      const curve = (doublingC: number) => doublingCurve(doublingC, referenceC);
      // Doubling within fewer degrees is the stronger dependence.
      return pick(lane, stopBelowC, referenceC, curve(high), curve(central), curve(low));
    }
    case 'plain-hours':
      return oneCurve(PLAIN_HOURS_CURVE, Number.NEGATIVE_INFINITY);
  }
}

/** A rate of one curve, with or without a temperature below which it stands still. */
export function oneCurve(curve: RateCurve, stopBelowC: number): LaneRate {
  return { stopBelowC, splitC: Number.NEGATIVE_INFINITY, below: curve, above: curve };
}

/** The relative rate at one temperature. */
export function rateOn(rate: LaneRate, temperatureC: number): number {
  if (temperatureC < rate.stopBelowC) return 0;
  return (temperatureC < rate.splitC ? rate.below : rate.above).rateAt(temperatureC);
}

function pick(
  lane: Lane,
  stopBelowC: number,
  splitC: number,
  weak: RateCurve,
  central: RateCurve,
  strong: RateCurve,
): LaneRate {
  switch (lane) {
    case 'slow':
      return { stopBelowC, splitC, below: strong, above: weak };
    case 'central':
      return oneCurve(central, stopBelowC);
    case 'fast':
      return { stopBelowC, splitC, below: weak, above: strong };
  }
}
