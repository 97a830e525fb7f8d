import type { Finding } from '@/lib/spec/finding';
import { type Judged, judged } from '@/lib/spec/judged';
import { modelFacts } from '@/lib/spec/model-facts';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import { triedFixes } from '@/lib/spec/tried-fixes';
import { waiverFor } from '@/lib/spec/waivers';

/**
 * Everything the rules find of one revision, rule by rule. Never throws, whatever was typed: what cannot be used counts
 * as not entered, and what is not entered is never said to hold.
 */
export function findingsOf(model: SpecModel, context: SpecContext): readonly Finding[] {
  const all = judged(modelFacts(model, context));
  return all.map((one) => finding(one, all, model, context));
}

function finding(one: Judged, all: readonly Judged[], model: SpecModel, context: SpecContext): Finding {
  const { rule, subject, judgement } = one;
  const { verdict, words, figures, cautions, missing, advice, working } = judgement;
  const isShort = verdict === 'short';
  return {
    ruleId: rule.id,
    subject,
    verdict,
    words,
    figures: figures ?? [],
    cautions: cautions ?? [],
    missing: missing ?? [],
    advice: advice ?? null,
    fixes: isShort && context.withFixes ? triedFixes(one, all, model, context) : [],
    formula: rule.formula,
    source: rule.source,
    assumptions: rule.assumptions,
    working: working ?? null,
    waiver: isShort ? waiverFor(model, rule.id, subject.key) : null,
  };
}
