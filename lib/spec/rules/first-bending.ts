import { derived } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { bendFixes } from '@/lib/spec/bend-fixes';
import { figure } from '@/lib/spec/finding';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { degrees, newtons } from '@/lib/spec/quantity-words';
import type { AnchorRule, Judgement } from '@/lib/spec/rule';
import { outsideFormula, strengthMissing } from '@/lib/spec/strength-judgement';

/** Whether a shank pulled aslant keeps its shape in an ordinary fight. Serviceability: it holds on though it bends. */
export const firstBendingRule: AnchorRule = {
  id: 'first-bending',
  about: 'anchor',
  title: 'No shank bends in an ordinary fight',
  formula: 'load of first bending at its angle (lower value) ≥ drag × label × surge',
  source: derived('Serviceability: past it the wire folds over and holds on, but the lure hangs crooked'),
  assumptions: ['Asked of the fight alone: a snag that breaks the line may bend the wire'],
  setFigure: null,
  check,
};

function check(facts: AnchorFacts, model: ModelFacts): Judgement | null {
  const { anchor, of } = facts;
  if (anchor.kind === 'through-wire' || anchor.loadAngleDeg === 0) return null;
  const { demand } = model;
  if (of.strength === null || demand === null) {
    const without = strengthMissing(facts, model);
    return demand === null ? { ...without, missing: [...(without.missing ?? []), 'line'] } : without;
  }
  const bends = of.strength.bendsAtAngle;
  if (bends === null) return null;
  if (bends.kind === 'no-estimate') return outsideFormula(bends);
  const holds = bends.lowerN >= demand.fightN;
  const angle = degrees(of.design?.loadAngleDeg ?? 0);
  return {
    verdict: holds ? 'holds' : 'short',
    words: [
      'Pulled at ',
      angle,
      holds ? ', it keeps its shape to ' : ', it bends from ',
      newtons(bends.lowerN),
      ' on (lower value); the fight asks ',
      newtons(demand.fightN),
      '.',
    ],
    figures: [figure('First bends at, lower value', bends.lowerN, 'N'), figure('Fight', demand.fightN, 'N')],
    advice: ['It holds on though it bends. Turn the shank into the pull, or take a thicker wire or a smaller eye.'],
    fixes: () => bendFixes(facts, model),
    working: bends.working,
  };
}
