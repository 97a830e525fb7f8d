import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { BODY_REFUSAL_WORDS, SHANK_REFUSAL_WORDS } from '@/lib/spec/reason-words';
import type { Judgement } from '@/lib/spec/rule';

/** Not judged for want of a body, a place or `inputs`, or because what is there cannot be: always says at least one. */
export function placeMissing({ of }: AnchorFacts, model: ModelFacts, inputs: readonly InputName[]): Judgement {
  const { bodyRefusal, body } = model;
  const why: string[] = [];
  if (bodyRefusal !== null) why.push(BODY_REFUSAL_WORDS[bodyRefusal.code]);
  if (of.pathRefusal !== null) why.push(SHANK_REFUSAL_WORDS[of.pathRefusal]);
  const missing: InputName[] = [];
  if (body === null && bodyRefusal === null) missing.push('body');
  if (body !== null && of.path === null && of.pathRefusal === null) missing.push('place');
  missing.push(...inputs);
  return { verdict: 'not-judged', words: why.length === 0 ? [] : [`No estimate: ${why.join('; ')}.`], missing };
}
