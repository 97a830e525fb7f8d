import { type ComparedFinding, type Standing, standingOf } from '@/lib/spec/finding-changes';

/** Where findings stand, in the order in which they need a hand. */
export const STANDINGS: readonly Standing[] = ['short', 'not-judged', 'waived', 'holds'];

/** "2 short, 1 not judged, 9 hold": how many stand where. */
export function tallyText(findings: readonly Pick<ComparedFinding, 'verdict' | 'waiver'>[]): string {
  const count = (standing: Standing) => findings.filter((finding) => standingOf(finding) === standing).length;
  const parts: readonly (readonly [number, string])[] = [
    [count('short'), 'short'],
    [count('waived'), 'waived'],
    [count('not-judged'), 'not judged'],
    [count('holds'), count('holds') === 1 ? 'holds' : 'hold'],
  ];
  return parts.flatMap(([number, word]) => (number === 0 ? [] : [`${number} ${word}`])).join(', ') || 'nothing judged';
}
