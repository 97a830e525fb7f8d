import { type FindingSubject, MODEL_SUBJECT } from '@/lib/spec/finding';
import type { ModelFacts } from '@/lib/spec/model-facts';
import type { Judgement, Rule } from '@/lib/spec/rule';
import { RULES } from '@/lib/spec/rules';

/** What a rule says of a subject. */
export interface Judged {
  readonly rule: Rule;
  readonly subject: FindingSubject;
  readonly judgement: Judgement;
}

/** What every rule says of a model and of each of its anchors; a rule that does not apply says nothing. */
export function judged(facts: ModelFacts): readonly Judged[] {
  const said: Judged[] = [];
  for (const rule of RULES) {
    if (rule.about === 'model') {
      const judgement = rule.check(facts);
      if (judgement !== null)
        said.push({ rule, subject: { key: MODEL_SUBJECT, name: facts.model.modelName }, judgement });
      continue;
    }
    for (const anchor of facts.anchors) {
      const judgement = rule.check(anchor, facts);
      const { anchorId, name } = anchor.anchor;
      if (judgement !== null) said.push({ rule, subject: { key: anchorId, name }, judgement });
    }
  }
  return said;
}

/** Whether two judgements are of the same rule about the same subject. */
export function isSameQuestion(a: Judged, b: Judged): boolean {
  return a.rule.id === b.rule.id && a.subject.key === b.subject.key;
}
