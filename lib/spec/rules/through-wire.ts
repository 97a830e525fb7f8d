import { chosen } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import { runThrough } from '@/lib/spec/fix-kinds';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { bare, mm, newtons } from '@/lib/spec/quantity-words';
import { WOOD_REFUSAL_WORDS } from '@/lib/spec/reason-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import { softWoodBondN } from '@/lib/spec/soft-wood-bond';

/** Whether the wood is hard enough for an anchor that it must hold by itself, or the wire should run through. */
export const throughWireRule: AnchorRule = {
  id: 'through-wire',
  about: 'anchor',
  title: 'A wood too soft to hold an anchor gets a wire that runs through',
  formula: "specific gravity ≥ the least, and bond at the shop's least depth (lower value) ≥ greatest load of the line",
  source: chosen(
    '0.20: balsa is wired through by common practice, no source; the list of woods is no rule, the density is',
  ),
  assumptions: ['Ample wood all round, straight pull, no factor: the most that the wood could do for such a wire'],
  setFigure: ({ throughWireBelowGravity }) => figure('Least specific gravity', throughWireBelowGravity, 'none'),
  check,
};

function check(facts: AnchorFacts, model: ModelFacts): Judgement | null {
  const { settings } = model.context;
  const { kind } = facts.anchor;
  const { wood } = model;
  if (wood === null) {
    if (kind === 'through-wire') return null;
    if (model.woodRefusal === null) return missing([model.model.wood === null ? 'wood' : 'wood-figures']);
    return { verdict: 'not-judged', words: [`No estimate: ${WOOD_REFUSAL_WORDS[model.woodRefusal]}.`] };
  }
  const gravity = wood.gravity12.value;
  const least = settings.throughWireBelowGravity;
  const figures = [figure('Specific gravity at 12 %', gravity, 'none'), figure('Least asked', least, 'none')];
  const isSoft = gravity < least;
  if (kind === 'through-wire') {
    if (!isSoft) return null;
    return { verdict: 'holds', words: ['The wire runs through: it does not ask the soft wood to hold.'], figures };
  }
  if (isSoft) {
    return {
      verdict: 'short',
      words: [
        'With a specific gravity of ',
        bare(gravity),
        ' (below ',
        bare(least),
        ') the wood is too soft to hold an anchor.',
      ],
      figures,
      advice: ['Run the wire through the body, or set the anchor in a plug of hardwood.'],
      fixes: () => runThrough(facts),
    };
  }
  if (kind === 'screw-eye') {
    return { verdict: 'holds', words: ['The wood is hard enough, ', bare(gravity), '.'], figures };
  }
  const bondN = softWoodBondN(facts, wood, settings);
  if (bondN === null || model.demand === null) {
    const missingInputs = [...facts.of.missing.filter((input) => BOND_INPUTS.has(input))];
    const inputs = model.demand === null ? [...missingInputs, 'line' as const] : missingInputs;
    return {
      verdict: 'not-judged',
      words: ['Hard enough by its density; its bond is not known.'],
      figures,
      missing: inputs,
    };
  }
  const { loadN } = model.demand.governing;
  const all = [...figures, figure("Bond at the shop's least depth", bondN, 'N'), figure('Greatest load', loadN, 'N')];
  const atDepth = [mm(settings.leastEmbedmentMm), ' deep it would carry ', newtons(bondN), ' at most (lower value)'];
  if (bondN >= loadN) return { verdict: 'holds', words: ['The wood is hard enough: ', ...atDepth, '.'], figures: all };
  return {
    verdict: 'short',
    words: [...atDepth, ', less than the line can pull, ', newtons(loadN), '.'],
    figures: all,
    advice: ['Run the wire through the body, or take a harder wood or a lighter line.'],
    fixes: () => runThrough(facts),
  };
}

const BOND_INPUTS: ReadonlySet<string> = new Set(['wire', 'wire-diameter', 'bit', 'adhesive', 'adhesive-figures']);
