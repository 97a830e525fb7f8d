import type { Finding } from '@/lib/spec/finding';

/** Where a finding stands: a short that was accepted in writing is waived. */
export type FindingStatus = 'short' | 'not-judged' | 'waived' | 'holds';

/** In the order in which they need a hand. */
export const FINDING_STATUSES: readonly FindingStatus[] = ['short', 'not-judged', 'waived', 'holds'];

export function findingStatus({ verdict, waiver }: Pick<Finding, 'verdict' | 'waiver'>): FindingStatus {
  return verdict === 'short' && waiver !== null ? 'waived' : verdict;
}

/** "2 short, 1 not judged, 9 hold": how many stand where. */
export function tallyText(findings: readonly Pick<Finding, 'verdict' | 'waiver'>[]): string {
  const count = (status: FindingStatus) => findings.filter((finding) => findingStatus(finding) === status).length;
  const parts: readonly (readonly [number, string])[] = [
    [count('short'), 'short'],
    [count('waived'), 'waived'],
    [count('not-judged'), 'not judged'],
    [count('holds'), count('holds') === 1 ? 'holds' : 'hold'],
  ];
  return parts.flatMap(([number, word]) => (number === 0 ? [] : [`${number} ${word}`])).join(', ') || 'nothing judged';
}
