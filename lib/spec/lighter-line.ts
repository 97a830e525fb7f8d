import type { ModelFacts } from '@/lib/spec/model-facts';
import { newtons } from '@/lib/spec/quantity-words';
import type { SpecFix } from '@/lib/spec/spec-fix';
import { greatestLine } from '@/lib/strength/greatest-line';
import { poundsForce } from '@/lib/units/force-and-length';

/** Lines are sold by the pound; a kilogram's class is no whole number of anything. Chosen. */
const STEP_N = poundsForce(1);

/** The heaviest line that an anchor of a lower value holds with the factor, as a fix; none if that is no lighter. */
export function lighterLine(lowerN: number, { model, line, fishMassG, context }: ModelFacts): readonly SpecFix[] {
  if (line === null || model.line === null || !(lowerN > 0)) return [];
  const { requiredFactor, demand } = context.settings;
  const answer = greatestLine({ lowerN, line, fishMassG, requiredFactor, stepN: STEP_N }, demand);
  if (!answer.ok || answer.labelN >= line.labelN) return [];
  return [toLine(answer.labelN, line.labelN, { ...model.line, labelN: answer.labelN })];
}

function toLine(labelN: number, fromN: number, line: NonNullable<ModelFacts['model']['line']>): SpecFix {
  return {
    way: 'line',
    words: ['Make it for a line of ', newtons(labelN), '.'],
    changes: [{ kind: 'model', set: { line } }],
    // The scale of `whatWouldHold`: a line is a greater change than a wire.
    size: 8 + 10 * (1 - labelN / fromN),
    carries: null,
  };
}
