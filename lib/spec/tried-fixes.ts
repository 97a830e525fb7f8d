import { applyFix } from '@/lib/spec/apply-fix';
import { isSameQuestion, type Judged, judged } from '@/lib/spec/judged';
import { modelFacts } from '@/lib/spec/model-facts';
import { billMatchesRule } from '@/lib/spec/rules/bill-matches';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { FixWay, SpecFix, TriedFix } from '@/lib/spec/spec-fix';
import type { SpecModel } from '@/lib/spec/spec-model';

/** Candidates of one way that are tried before it is given up. */
const MOST_TRIED = 6;

/**
 * The fixes of a short that do make it hold, each tried on the model, one a way: those that make nothing else short
 * first, then the least change.
 */
export function triedFixes(
  short: Judged,
  before: readonly Judged[],
  model: SpecModel,
  context: SpecContext,
): readonly TriedFix[] {
  const byWay = new Map<FixWay, SpecFix[]>();
  for (const fix of short.judgement.fixes?.() ?? []) {
    byWay.set(fix.way, [...(byWay.get(fix.way) ?? []), fix]);
  }
  return [...byWay.values()]
    .flatMap((fixes) => best(fixes, (fix) => tried(fix, short, before, model, context)) ?? [])
    .sort((a, b) => Math.sign(a.makesShort.length) - Math.sign(b.makesShort.length) || a.size - b.size);
}

/** The least change of one way that holds; one that makes nothing else short before one that does. */
function best(fixes: readonly SpecFix[], attempt: (fix: SpecFix) => TriedFix | null): TriedFix | null {
  let second: TriedFix | null = null;
  for (const fix of [...fixes].sort((a, b) => a.size - b.size).slice(0, MOST_TRIED)) {
    const result = attempt(fix);
    if (result?.makesShort.length === 0) return result;
    second ??= result;
  }
  return second;
}

function tried(
  fix: SpecFix,
  short: Judged,
  before: readonly Judged[],
  model: SpecModel,
  context: SpecContext,
): TriedFix | null {
  const change = withBill(fix, before, model, context);
  const after = judged(modelFacts(applyFix(model, change), context));
  const now = after.find((one) => isSameQuestion(one, short));
  // A rule that no longer applies no longer stands in the way: a wire that runs through is not glued too short.
  if (now !== undefined && now.judgement.verdict !== 'holds') return null;
  const wasShort = (one: Judged) => before.some((old) => isSameQuestion(old, one) && old.judgement.verdict === 'short');
  const makesShort = after
    .filter((one) => one.judgement.verdict === 'short' && !wasShort(one))
    .map(({ rule, subject }) => ({ ruleId: rule.id, subjectName: subject.name }));
  return { ...change, makesShort };
}

/** A fix with the bill brought along, where it was right before and is not after. */
function withBill(fix: SpecFix, before: readonly Judged[], model: SpecModel, context: SpecContext): SpecFix {
  const was = before.find(({ rule }) => rule.id === billMatchesRule.id);
  if (was?.judgement.verdict !== 'holds') return fix;
  const now = billMatchesRule.check(modelFacts(applyFix(model, fix), context));
  const bill = now?.verdict === 'short' ? (now.fixes?.()[0]?.changes ?? []) : [];
  return bill.length === 0 ? fix : { ...fix, changes: [...fix.changes, ...bill] };
}
