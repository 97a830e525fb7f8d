import { Why } from '@/app/_ui/why';
import type { PullAnalysis } from '@/lib/pulltest/pull-analysis';
import { percentText, pText } from '@/lib/pulltest/pull-words';
import type { SeriesGoal } from '@/lib/pulltest/series-analysis';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface LowerWhyProps {
  readonly analysis: PullAnalysis;
  readonly goal: SeriesGoal;
  readonly units: UnitChoice;
}

/** How the lower value was found, and how far it may be trusted. */
export function LowerWhy({ analysis: { answer }, goal, units }: LowerWhyProps) {
  const { lower, atDepth, anova, additivity } = answer;
  if (!lower.ok) return null;
  const { model } = lower;
  const { mixes } = model.kind === 'line' ? model.line.scatter : model.levels.scatter;
  const inputs = [
    { label: 'Scatter of a joint of a future mix', value: percentText(Math.expm1(model.scatter)) },
    { label: 'Mixes', value: String(mixes) },
    ...(atDepth === null
      ? []
      : [
          {
            label: `At ${lengthText(atDepth.depthMm, units.lengthUnit)}`,
            value: `${forceText(atDepth.lowerN, units.forceUnit)}, with a factor of ${atDepth.factor.toFixed(2)}`,
          },
        ]),
    ...(model.lackOfFit === null
      ? []
      : [{ label: 'Does the line fit?', value: `lack of fit ${pText(model.lackOfFit.p)}` }]),
    ...(anova?.block.test == null ? [] : [{ label: 'Do mixes differ?', value: pText(anova.block.test.p) }]),
    ...(additivity?.logs == null
      ? []
      : [{ label: 'Do mixes differ alike at all depths?', value: `non-additivity ${pText(additivity.logs.test.p)}` }]),
  ];
  return (
    <Why
      about="this lower value"
      formula="lower = exp(fitted ln load − factor × scatter), the fit of ln load on ln depth with the mixes as blocks"
      inputs={inputs}
      source="One-sided tolerance factor by the noncentral t distribution, between the factor for pulls of one mix and that for mixes of one pull by their share in the scatter (chosen; checked by simulation: 74 to 80 % right at a nominal 75). Least scatter 0.05 as in EN 14358."
      assumption="The next joint is glued with a mix that is not among these; loads scatter in percent; a reading that ended elsewhere says at least."
      uncertainty={`In ${percentText(1 - goal.certainty.confidence)} of such series more than ${percentText(1 - goal.certainty.content)} of the joints hold less than this.`}
    />
  );
}
