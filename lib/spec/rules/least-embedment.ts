import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { deepestHoleMm, drillFor, roundedUpMm } from '@/lib/spec/deepest-hole';
import { figure } from '@/lib/spec/finding';
import { runThrough } from '@/lib/spec/fix-kinds';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';

/** Figures typed in inches miss by rounding; a thousandth of a millimetre is none. */
const ROUNDING_MM = 0.001;

/** However strong the estimate: a glued shank goes in at least so deep. */
export const leastEmbedmentRule: AnchorRule = {
  id: 'least-embedment',
  about: 'anchor',
  title: 'Every glued shank goes in deep enough',
  formula: "embedment ≥ the shop's least",
  source: { kind: 'common-practice', text: 'Half an inch, common practice, no source' },
  assumptions: ['Asked besides the strength: a short shank forgives neither a void nor a slip of the drill'],
  setFigure: ({ leastEmbedmentMm }) => figure('Least embedment', leastEmbedmentMm, 'mm'),
  check,
};

function check(facts: AnchorFacts, { context }: ModelFacts): Judgement | null {
  const { kind, embedmentMm } = facts.anchor;
  if (kind !== 'twisted-wire') return null;
  if (embedmentMm === null) return missing(['embedment']);
  const least = context.settings.leastEmbedmentMm;
  const figures = [figure('Embedment', embedmentMm, 'mm'), figure('Least embedment', least, 'mm')];
  const depth = { value: embedmentMm, unit: 'mm' } as const;
  if (embedmentMm >= least - ROUNDING_MM) return { verdict: 'holds', words: ['Glued ', depth, ' deep.'], figures };
  const needed = { value: roundedUpMm(least, context.settings), unit: 'mm' } as const;
  const room = deepestHoleMm(facts, context.settings);
  const hasRoom = room === null || room >= needed.value;
  return {
    verdict: 'short',
    words: ['Glued only ', depth, ' deep.'],
    figures,
    advice: hasRoom
      ? ['Glue it ', needed, ' deep.']
      : ['The body has no room for ', needed, ' here: move or turn the hole, or run the wire through.'],
    fixes: () => (hasRoom ? [deeper(facts, needed.value, context.settings.incrementMm)] : runThrough(facts)),
  };
}

function deeper({ anchor }: AnchorFacts, embedmentMm: number, incrementMm: number): SpecFix {
  const { anchorId, drillDepthMm } = anchor;
  return {
    way: 'deeper',
    words: ['Glue it ', { value: embedmentMm, unit: 'mm' }, ' deep.'],
    changes: [{ kind: 'anchor', anchorId, set: { embedmentMm, drillDepthMm: drillFor(embedmentMm, drillDepthMm) } }],
    size: (embedmentMm - (anchor.embedmentMm ?? 0)) / incrementMm,
    carries: null,
  };
}
