import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { ModelFacts } from '@/lib/spec/model-facts';
import {
  BODY_REFUSAL_WORDS,
  NO_ESTIMATE_WORDS,
  SHANK_REFUSAL_WORDS,
  WIRE_REFUSAL_WORDS,
  WOOD_REFUSAL_WORDS,
} from '@/lib/spec/reason-words';
import type { Judgement } from '@/lib/spec/rule';
import type { NoEstimate } from '@/lib/strength/estimate';

/** Not judged because there is no strength: what is missing, and why what is there cannot be used. */
export function strengthMissing(anchor: AnchorFacts, model: ModelFacts): Judgement {
  const why: string[] = [];
  if (model.bodyRefusal !== null) why.push(BODY_REFUSAL_WORDS[model.bodyRefusal.code]);
  if (model.woodRefusal !== null) why.push(WOOD_REFUSAL_WORDS[model.woodRefusal]);
  if (anchor.of.pathRefusal !== null) why.push(SHANK_REFUSAL_WORDS[anchor.of.pathRefusal]);
  if (anchor.of.wireRefusal !== null) why.push(WIRE_REFUSAL_WORDS[anchor.of.wireRefusal]);
  return { verdict: 'not-judged', words: why.length === 0 ? [] : [`${why.join('; ')}.`], missing: anchor.of.missing };
}

/** Not judged because the formula says nothing here. */
export function outsideFormula({ reasons }: NoEstimate): Judgement {
  return {
    verdict: 'not-judged',
    words: [`No estimate: ${reasons.map((reason) => NO_ESTIMATE_WORDS[reason]).join('; ')}.`],
  };
}
