import { chosen } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { days } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';

const DAY_MS = 86_400_000;

/** Whether the shop has pulled joints of this very wood, glue and wire, not too long ago and with the lot in use. */
export const calibrationFreshRule: AnchorRule = {
  id: 'calibration-fresh',
  about: 'anchor',
  title: "The estimate rests on the shop's own, fresh pulls",
  formula: 'age of the latest pull ≤ the greatest, and the lot of glue in use among those pulled',
  source: chosen('A year: glue ages on the shelf, and hands change'),
  assumptions: ['Pulls of the same wood, adhesive and wire; everything else of the spec may differ'],
  setFigure: ({ calibrationMaxAgeDays }) => figure('Greatest age of pulls', calibrationMaxAgeDays, 'days'),
  check,
};

function check({ anchor, of }: AnchorFacts, { model, context }: ModelFacts): Judgement | null {
  if (anchor.kind !== 'twisted-wire') return null;
  const { adhesive, wire } = anchor;
  if (of.bond === null || adhesive === null || wire === null) {
    const inputs: InputName[] = [];
    if (model.wood === null) inputs.push('wood');
    if (wire === null) inputs.push('wire');
    if (adhesive === null) inputs.push('adhesive');
    else if (adhesive.sheet === null) inputs.push('adhesive-figures');
    return missing(inputs);
  }
  const { latestPulledAt, adhesiveLotCodes } = of.bond;
  if (latestPulledAt === null) {
    return {
      ...missing(['pulls']),
      words: ['No pulls of this wood, glue and wire: the estimate rests on what is generally believed.'],
      advice: ['Pull five joints of it.'],
    };
  }
  const { calibrationMaxAgeDays } = context.settings;
  const age = Math.max(0, (context.now - latestPulledAt) / DAY_MS);
  const figures = [
    figure('Age of the latest pull', age, 'days'),
    figure('Greatest age', calibrationMaxAgeDays, 'days'),
  ];
  const advice = ['Pull joints of the lot in use.'];
  if (age > calibrationMaxAgeDays) {
    return { verdict: 'short', words: ['The latest pull is ', days(age), ' old.'], figures, advice };
  }
  const lot = context.lotInUse.get(adhesive.materialId);
  if (lot === undefined || adhesiveLotCodes.length === 0) {
    const why = lot === undefined ? 'no lot of it is in use' : 'the pulls name no lot';
    return { verdict: 'not-judged', words: [`Pulled lately, but ${why}.`], figures, missing: ['lot'], advice };
  }
  if (!adhesiveLotCodes.includes(lot)) {
    return {
      verdict: 'short',
      words: [`Pulled with lot ${adhesiveLotCodes.join(', ')}; in use is lot ${lot}.`],
      figures,
      advice,
    };
  }
  return { verdict: 'holds', words: [`Lot ${lot} was pulled `, days(age), ' ago.'], figures };
}
