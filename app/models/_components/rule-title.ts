import { RULES } from '@/lib/spec/rules';

/** What a rule asks, as a sentence without its stop; the id itself for a rule that is no more. */
export function ruleTitle(ruleId: string): string {
  return RULES.find(({ id }) => id === ruleId)?.title ?? ruleId;
}
