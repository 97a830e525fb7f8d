import type { Box } from '@/lib/cure/adhesive-sheet';
import { GAS_CONSTANT, ZERO_C_IN_K } from '@/lib/cure/rate-curve';

/**
 * For amine-cured epoxies whose sheet gives one temperature only. Chosen, around published values of 44 to 67 kJ/mol:
 * Thermochim. Acta 447 (2006) 167-177; Barral et al., J. Appl. Polym. Sci. 56 (1995) 1029-1037 (abstracts seen).
 */
export const COMMON_ACTIVATION_ENERGY_KJ_PER_MOL: Box = { low: 45, central: 55, high: 65 };

/** A fit outside these cannot be a cure; one outside the narrower pair deserves a second look. Chosen. */
const POSSIBLE_KJ_PER_MOL = { low: 10, high: 120 };
const USUAL_KJ_PER_MOL = { low: 35, high: 80 };
/** Chosen: half of the common box, as two bracketing points about halve the uncertainty of a time. */
const FITTED_HALF_WIDTH_KJ_PER_MOL = 5;

/** The same step of a cure at one temperature: how long it took. */
export interface TimedStep {
  readonly temperatureC: number;
  readonly minutes: number;
}

export type ActivationEnergyFit =
  | {
      readonly ok: true;
      readonly kjPerMol: number;
      /** The fit with its uncertainty, ready for a sheet's rate law. */
      readonly box: Box;
      /** Outside 35 to 80 kJ/mol: check the two points, but they may be right. */
      readonly isUnusual: boolean;
    }
  | { readonly ok: false; readonly code: 'not-positive' | 'same-temperature' | 'not-faster-when-warmer' }
  /** Outside 10 to 120 kJ/mol: one of the two points is wrong, or they are not of the same step. */
  | { readonly ok: false; readonly code: 'impossible'; readonly kjPerMol: number };

/**
 * The activation energy behind two times of the same step at two temperatures, in either order.
 * `Ea = R ln(t1/t2) / (1/T1 - 1/T2)`. Source: Arrhenius' law solved for Ea. Example: 45 min at 20 degC and 22 min at 30 degC
 * give 52.8767 kJ/mol.
 */
export function fitActivationEnergy(first: TimedStep, second: TimedStep): ActivationEnergyFit {
  if (!(first.minutes > 0 && second.minutes > 0)) return { ok: false, code: 'not-positive' };
  if (first.temperatureC === second.temperatureC) return { ok: false, code: 'same-temperature' };
  const inverse = 1 / (first.temperatureC + ZERO_C_IN_K) - 1 / (second.temperatureC + ZERO_C_IN_K);
  const kjPerMol = (GAS_CONSTANT * Math.log(first.minutes / second.minutes)) / inverse / 1000;
  if (kjPerMol <= 0) return { ok: false, code: 'not-faster-when-warmer' };
  return judgedActivationEnergy(kjPerMol);
}

/** Whether a fitted activation energy can be, and its box. */
export function judgedActivationEnergy(kjPerMol: number): ActivationEnergyFit {
  const { low, high } = POSSIBLE_KJ_PER_MOL;
  if (!(kjPerMol >= low && kjPerMol <= high)) return { ok: false, code: 'impossible', kjPerMol };
  const box = {
    low: Math.max(low, kjPerMol - FITTED_HALF_WIDTH_KJ_PER_MOL),
    central: kjPerMol,
    high: Math.min(high, kjPerMol + FITTED_HALF_WIDTH_KJ_PER_MOL),
  };
  return { ok: true, kjPerMol, box, isUnusual: kjPerMol < USUAL_KJ_PER_MOL.low || kjPerMol > USUAL_KJ_PER_MOL.high };
}

/**
 * The activation energy, kJ/mol, of a rate that doubles from `fromC` to `fromC + doublingC`: `R ln2 T1 T2 / N`.
 * Exact over that span only: an Arrhenius rate doubles over fewer degrees in the cold and over more in the heat.
 * Source: Arrhenius' law at two temperatures. Example: 10 degrees from 15 degC: 49.5123 kJ/mol.
 */
export function activationEnergyOfDoubling(doublingC: number, fromC: number): number {
  const kelvin = fromC + ZERO_C_IN_K;
  return (GAS_CONSTANT * Math.LN2 * kelvin * (kelvin + doublingC)) / doublingC / 1000;
}

/**
 * The inverse: over how many degrees from `fromC` on an Arrhenius rate doubles. Throws RangeError when it never does
 * (an activation energy at or below R T ln2, about 1.7 kJ/mol). Example: 49.5123 kJ/mol from 15 degC: 10.
 */
export function doublingOfActivationEnergy(kjPerMol: number, fromC: number): number {
  const kelvin = fromC + ZERO_C_IN_K;
  const least = GAS_CONSTANT * Math.LN2 * kelvin;
  if (!(kjPerMol * 1000 > least)) {
    throw new RangeError(`doublingOfActivationEnergy needs more than ${least / 1000} kJ/mol, got ${kjPerMol}`);
  }
  return (least * kelvin) / (kjPerMol * 1000 - least);
}
