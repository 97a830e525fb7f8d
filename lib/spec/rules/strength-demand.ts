import { derived } from '@/lib/materials/figure-source';
import type { Working } from '@/lib/materials/formula-card';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { DEMAND_WORDS } from '@/lib/spec/demand-words';
import { figure } from '@/lib/spec/finding';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { degrees, newtons, times } from '@/lib/spec/quantity-words';
import { FAILURE_WORDS } from '@/lib/spec/reason-words';
import type { AnchorRule, Judgement } from '@/lib/spec/rule';
import { strengthFixes } from '@/lib/spec/strength-fixes';
import { outsideFormula, strengthMissing } from '@/lib/spec/strength-judgement';
import { thinCoverWords } from '@/lib/spec/thin-cover';
import type { Governed } from '@/lib/strength/strength-result';
import type { Words } from '@/lib/units/quantity';

/** Whether each anchor carries what the line can ask of it, with the shop's factor between. */
export const strengthDemandRule: AnchorRule = {
  id: 'strength-demand',
  about: 'anchor',
  title: 'Every anchor carries what its line can ask, with the factor',
  formula: 'lower value at its angle ≥ factor × greatest load of the line',
  source: derived('The least of all ways to fail over the greatest of fight, snag and lift; each answers for itself'),
  assumptions: [
    'An estimate and never a rating: pull tests decide',
    'Every anchor may have to take the whole load alone',
    'Static load on a sound, dry, fully cured joint',
  ],
  setFigure: ({ requiredFactor }) => figure('Factor, lower value over greatest load', requiredFactor, 'times'),
  check,
};

function check(facts: AnchorFacts, model: ModelFacts): Judgement {
  const { strength } = facts.of;
  const { demand, context } = model;
  if (strength === null || demand === null) {
    const without = strengthMissing(facts, model);
    return demand === null ? { ...without, missing: [...(without.missing ?? []), 'line'] } : without;
  }
  const { atAngle } = strength;
  if (atAngle.kind === 'no-estimate') return outsideFormula(atAngle);
  const { requiredFactor } = context.settings;
  const { governing } = demand;
  const holds = atAngle.lowerN >= requiredFactor * governing.loadN;
  const factor = atAngle.lowerN / governing.loadN;
  const thin = thinWords(facts);
  const words: Words = [
    'Carries ',
    newtons(atAngle.lowerN),
    ...angleWords(facts),
    ` (lower value), governed by ${FAILURE_WORDS[atAngle.governs]}; ${DEMAND_WORDS[governing.name]} asks `,
    newtons(governing.loadN),
    ': ',
    times(factor),
    holds ? ', asked ' : ', but asked ',
    times(requiredFactor),
    '.',
    ...(holds ? [] : thin),
  ];
  return {
    verdict: holds ? 'holds' : 'short',
    words,
    figures: [
      figure('Lower value at its angle', atAngle.lowerN, 'N'),
      figure('Half of such anchors carry', atAngle.medianN, 'N'),
      figure('Greatest load', governing.loadN, 'N'),
      figure('Factor', factor, 'times'),
      figure('Factor asked', requiredFactor, 'times'),
    ],
    cautions: holds && thin.length > 0 ? [thin] : [],
    advice: ['Strengthen the anchor, or make the model for a lighter line.'],
    fixes: () => strengthFixes(facts, model),
    working: workingOf(facts, atAngle),
  };
}

function thinWords({ anchor, of: { thinCover, shankCover } }: AnchorFacts): Words {
  if (thinCover === null || shankCover === null) return [];
  return thinCoverWords(thinCover, shankCover, anchor.embedmentMm ?? 0, anchor.slantDeg ?? 0);
}

function angleWords({ of: { design } }: AnchorFacts): Words {
  const angle = design?.loadAngleDeg ?? 0;
  return angle === 0 ? [' in a straight pull'] : [' at ', degrees(angle)];
}

function workingOf({ of: { strength } }: AnchorFacts, { governs }: Governed): Working | null {
  const way = strength?.ways.find((one) => one.way === governs);
  return way?.result.kind === 'estimate' ? way.result.working : null;
}
