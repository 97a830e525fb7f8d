import { expect, test } from 'vitest';
import { type ComparedFinding, findingChanges } from '@/lib/spec/finding-changes';

function finding(ruleId: string, verdict: ComparedFinding['verdict'], key = 'a', more: Partial<ComparedFinding> = {}) {
  return { ruleId, verdict, subject: { key, name: `Anchor ${key}` }, words: [ruleId], waiver: null, ...more };
}

test('what is found the same is no change', () => {
  const same = [finding('cover', 'holds'), finding('cover', 'short', 'b')];
  expect(findingChanges(same, [...same].reverse())).toEqual([]);
});

test('a verdict that changed, a waiver, a rule that is new and one that is gone', () => {
  const before = [finding('cover', 'holds'), finding('bit-fit', 'short'), finding('old-rule', 'holds')];
  const after = [
    finding('cover', 'not-judged'),
    finding('bit-fit', 'short', 'a', { waiver: { reason: 'pulled' } }),
    finding('new-rule', 'short'),
  ];
  expect(findingChanges(before, after).map(({ ruleId, before: was, after: is }) => [ruleId, was, is])).toEqual([
    ['cover', 'holds', 'not-judged'],
    ['bit-fit', 'short', 'waived'],
    ['new-rule', null, 'short'],
    ['old-rule', 'holds', null],
  ]);
});

test('between two revisions, whose anchors have ids of their own, the name tells which is which', () => {
  const before = [finding('cover', 'holds', 'id-1', { subject: { key: 'id-1', name: 'Belly' } })];
  const after = [finding('cover', 'holds', 'id-2', { subject: { key: 'id-2', name: 'Belly' } })];
  expect(findingChanges(before, after)).toHaveLength(2);
  expect(findingChanges(before, after, ({ name }) => name)).toEqual([]);
});
