import type { FindingSubject, Verdict } from '@/lib/spec/finding';
import type { Words } from '@/lib/units/quantity';

/** Where a finding stands: its verdict, or `waived` for a short that was accepted. */
export type Standing = Verdict | 'waived';

/** What is compared of a finding, whether it was kept or is new. */
export interface ComparedFinding {
  readonly ruleId: string;
  readonly subject: FindingSubject;
  readonly verdict: Verdict;
  readonly words: Words;
  readonly waiver: object | null;
}

/** One thing that is found otherwise than before. Null: not asked of it then, or not any more. */
export interface FindingChange {
  readonly ruleId: string;
  readonly subjectName: string;
  readonly before: Standing | null;
  readonly after: Standing | null;
  /** What is found now; what was found where nothing is any more. */
  readonly words: Words;
}

export function standingOf({ verdict, waiver }: Pick<ComparedFinding, 'verdict' | 'waiver'>): Standing {
  return verdict === 'short' && waiver !== null ? 'waived' : verdict;
}

/**
 * What is found otherwise than before, rule by rule. `subjectOf` tells which findings are about the same thing: by its
 * key within one revision, by its name between two, whose anchors have ids of their own.
 */
export function findingChanges(
  before: readonly ComparedFinding[],
  after: readonly ComparedFinding[],
  subjectOf: (subject: FindingSubject) => string = ({ key }) => key,
): readonly FindingChange[] {
  const keyOf = ({ ruleId, subject }: ComparedFinding) => `${ruleId}\n${subjectOf(subject)}`;
  const old = new Map(before.map((finding) => [keyOf(finding), finding]));
  const now = new Map(after.map((finding) => [keyOf(finding), finding]));
  const keys = [...new Set([...now.keys(), ...old.keys()])];
  return keys.flatMap((key) => {
    const was = old.get(key);
    const is = now.get(key);
    const shown = is ?? was;
    const standings = {
      before: was === undefined ? null : standingOf(was),
      after: is === undefined ? null : standingOf(is),
    };
    if (shown === undefined || standings.before === standings.after) return [];
    return [{ ruleId: shown.ruleId, subjectName: shown.subject.name, ...standings, words: shown.words }];
  });
}
