import type { Finding, FindingFigure, FindingSubject, Verdict } from '@/lib/spec/finding';
import type { SpecReport } from '@/lib/spec/spec-report';
import type { Instant } from '@/lib/units/instant';
import type { Words } from '@/lib/units/quantity';

/** A finding as a batch keeps it: what was found and who accepted it, without the workings. */
export interface TakenFinding {
  /** A rule that may be no more when it is read. */
  readonly ruleId: string;
  readonly subject: FindingSubject;
  readonly verdict: Verdict;
  readonly words: Words;
  readonly figures: readonly FindingFigure[];
  readonly waiver: { readonly reason: string; readonly personName: string; readonly grantedAt: Instant } | null;
}

/** What was found of a revision when a batch of it was opened. */
export interface TakenFindings {
  readonly judgedAt: Instant;
  readonly findings: readonly TakenFinding[];
}

/** The findings that a batch takes along. */
export function takenFindings({ judgedAt, findings }: SpecReport): TakenFindings {
  return { judgedAt, findings: findings.map(taken) };
}

function taken({ ruleId, subject, verdict, words, figures, waiver }: Finding): TakenFinding {
  const accepted =
    waiver === null ? null : { reason: waiver.reason, personName: waiver.personName, grantedAt: waiver.grantedAt };
  return { ruleId, subject, verdict, words, figures, waiver: accepted };
}
