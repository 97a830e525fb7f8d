import { type Finding, type FindingSubject, MODEL_SUBJECT } from '@/lib/spec/finding';
import { type ModelFacts, modelFacts } from '@/lib/spec/model-facts';
import type { Judgement, Rule } from '@/lib/spec/rule';
import { RULES } from '@/lib/spec/rules';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import { waiverFor } from '@/lib/spec/waivers';

/**
 * Everything the rules find of one revision: rule by rule, the model before its anchors. Never throws, whatever was
 * typed: what cannot be used counts as not entered, and what is not entered is never said to hold.
 */
export function findingsOf(model: SpecModel, context: SpecContext): readonly Finding[] {
  const facts = modelFacts(model, context);
  return RULES.flatMap((rule) => ofRule(rule, facts));
}

function ofRule(rule: Rule, facts: ModelFacts): readonly Finding[] {
  if (rule.about === 'model') {
    const subject = { key: MODEL_SUBJECT, name: facts.model.modelName };
    return finding(rule, subject, facts, rule.check(facts));
  }
  return facts.anchors.flatMap((anchor) => {
    const { anchorId, name } = anchor.anchor;
    return finding(rule, { key: anchorId, name }, facts, rule.check(anchor, facts));
  });
}

function finding(
  rule: Rule,
  subject: FindingSubject,
  { model }: ModelFacts,
  judgement: Judgement | null,
): readonly Finding[] {
  if (judgement === null) return [];
  const { verdict, words, figures, cautions, missing, advice, fixes, working } = judgement;
  return [
    {
      ruleId: rule.id,
      subject,
      verdict,
      words,
      figures: figures ?? [],
      cautions: cautions ?? [],
      missing: missing ?? [],
      advice: advice ?? null,
      fixes: [...(fixes ?? [])].sort((a, b) => a.size - b.size),
      formula: rule.formula,
      source: rule.source,
      assumptions: rule.assumptions,
      working: working ?? null,
      waiver: verdict === 'short' ? waiverFor(model, rule.id, subject.key) : null,
    },
  ];
}
