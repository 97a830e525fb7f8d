import { DEFAULT_DEMAND_SETTINGS, type DemandSettings, demand } from '@/lib/strength/demand';
import type { FishingLine } from '@/lib/strength/fishing-line';

export interface LineQuestion {
  /** Lower value that the anchor carries. */
  readonly lowerN: number;
  /** The line whose label is asked for; its own label is not read. */
  readonly line: Omit<FishingLine, 'labelN'>;
  readonly fishMassG: number | null;
  readonly requiredFactor: number;
  /** Labels are whole multiples of this: a pound or a newton. */
  readonly stepN: number;
}

export type GreatestLine =
  | { readonly ok: true; readonly labelN: number; readonly steps: number }
  /** Not even the lightest line, or the fish alone is too heavy to be lifted. */
  | { readonly ok: false; readonly code: 'no-line-light-enough' };

const MOST_STEPS = 2000;

/**
 * The heaviest line, a whole multiple of the step, that an anchor holds against with the factor. Exact: the demand
 * never falls with the label.
 *
 * Throws RangeError unless step and factor are positive.
 */
export function greatestLine(question: LineQuestion, settings: DemandSettings = DEFAULT_DEMAND_SETTINGS): GreatestLine {
  const { lowerN, line, fishMassG, requiredFactor, stepN } = question;
  if (!(stepN > 0 && requiredFactor > 0)) {
    throw new RangeError(`greatestLine needs a positive step and factor, got ${stepN}, ${requiredFactor}`);
  }
  const holds = (steps: number) =>
    requiredFactor * demand({ ...line, labelN: steps * stepN }, fishMassG, settings).governing.loadN <= lowerN;
  if (!holds(1)) return { ok: false, code: 'no-line-light-enough' };
  let low = 1;
  let high = MOST_STEPS + 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return { ok: true, labelN: low * stepN, steps: low };
}
