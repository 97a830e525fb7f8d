import type { RuleId } from '@/lib/spec/rule-id';
import type { SpecModel, SpecWaiver } from '@/lib/spec/spec-model';

/** A waiver counts with a reason, a name and a date. */
export function isWaiverComplete({ reason, personName, grantedAt }: SpecWaiver): boolean {
  return reason.trim() !== '' && personName.trim() !== '' && Number.isFinite(grantedAt);
}

/** The waiver of this very revision for a rule and a subject, the latest if there are several; else null. */
export function waiverFor(model: SpecModel, ruleId: RuleId, subject: string): SpecWaiver | null {
  let latest: SpecWaiver | null = null;
  for (const waiver of model.waivers) {
    if (waiver.revisionId !== model.revisionId || waiver.ruleId !== ruleId || waiver.subject !== subject) continue;
    if (isWaiverComplete(waiver) && (latest === null || waiver.grantedAt > latest.grantedAt)) latest = waiver;
  }
  return latest;
}
