import type { Finding } from '@/lib/spec/finding';
import { findingsOf } from '@/lib/spec/findings-of';
import { RULES_VERSION } from '@/lib/spec/rules-version';
import type { SpecContext } from '@/lib/spec/spec-context';
import type { SpecModel } from '@/lib/spec/spec-model';
import type { Instant } from '@/lib/units/instant';

/** The findings of one revision as a batch takes them along: plain data that survives JSON. */
export interface SpecReport {
  readonly modelId: string;
  readonly revisionId: string;
  readonly rulesVersion: number;
  readonly judgedAt: Instant;
  readonly findings: readonly Finding[];
}

/** What is found of a revision now. */
export function specReport(model: SpecModel, context: SpecContext): SpecReport {
  return {
    modelId: model.modelId,
    revisionId: model.revisionId,
    rulesVersion: RULES_VERSION,
    judgedAt: context.now,
    findings: findingsOf(model, context),
  };
}
