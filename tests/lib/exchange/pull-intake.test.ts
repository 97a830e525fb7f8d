import { expect, test } from 'vitest';
import { INTAKE_REFUSALS, type IntakeSeries, intakeRefusalText, pullIntake } from '@/lib/exchange/pull-intake';
import type { PullRow } from '@/lib/exchange/pull-row';

const SERIES: IntakeSeries = {
  conditions: ['Basswood'],
  mixes: ['A', 'B'],
  specimens: [
    { code: 'A-1', mix: 'A', condition: 'Basswood', depthMm: 9.525 },
    { code: 'A-2', mix: 'A', condition: 'Basswood', depthMm: 12.7 },
    { code: 'B-1', mix: 'B', condition: 'Basswood', depthMm: 9.525 },
  ],
  pulls: [{ code: 'A-1', loadN: 300, mode: 'slid-out', pulledAt: 1_000_000 }],
};

const ROW: PullRow = {
  line: 2,
  specimen: null,
  mix: null,
  condition: null,
  embedmentMm: null,
  loadN: 420,
  isLowerBound: false,
  mode: 'wood-sleeve',
  angleDeg: null,
  pulledAt: null,
  note: '',
};

const kinds = (rows: readonly Partial<PullRow>[], nowAt = 2_000_000) =>
  pullIntake(
    SERIES,
    rows.map((row) => ({ ...ROW, ...row })),
    nowAt,
  ).map((taken) => {
    if (taken.kind === 'refused') return taken.reason;
    if (taken.kind === 'new')
      return `${taken.specimen.code} of ${taken.specimen.mix}${taken.specimen.isNew ? ', added' : ''}`;
    return taken.kind;
  });

test('a row finds its specimen by code, in whatever case, or by mix and depth', () => {
  expect(kinds([{ specimen: 'a-2' }, { mix: 'b', embedmentMm: 9.53 }])).toEqual(['A-2 of A', 'B-1 of B']);
});

test('a specimen or a mix that the series does not have is added', () => {
  expect(
    kinds([
      { specimen: 'C-1', embedmentMm: 19.05 },
      { mix: 'C', embedmentMm: 12.7 },
    ]),
  ).toEqual(['C-1 of C, added', 'C-2 of C, added']);
  // The cell of mix A at 9.5 mm was pulled already: another load there is another specimen.
  expect(kinds([{ mix: 'A', embedmentMm: 9.525 }])).toEqual(['A-3 of A, added']);
  expect(kinds([{ specimen: 'D-9' }])).toEqual(['no-depth']);
});

test('what is written down already is known, with or without its time, and counts once', () => {
  const same = { loadN: 300.02, mode: 'slid-out' } as const;
  expect(
    kinds([
      { specimen: 'A-1', ...same },
      { specimen: 'A-1', ...same, pulledAt: 1_030_000 },
    ]),
  ).toEqual(['known', 'known']);
  expect(kinds([{ mix: 'A', embedmentMm: 9.525, ...same }])).toEqual(['known']);
  expect(kinds([{ specimen: 'A-1', ...same, pulledAt: 1_900_000 }])).toEqual(['A-1 of A']);
});

test('a row that contradicts the plan, or lacks what a pull needs, is refused with its reason', () => {
  expect(kinds([{ specimen: 'A-2', embedmentMm: 15 }])).toEqual(['not-as-planned']);
  expect(kinds([{ specimen: 'A-2', mix: 'B' }])).toEqual(['not-as-planned']);
  expect(kinds([{ mix: 'A', embedmentMm: 12.7, condition: 'Pine' }])).toEqual(['no-condition']);
  expect(kinds([{ specimen: 'A-2', mode: null }])).toEqual(['no-mode']);
  expect(kinds([{ specimen: 'A-2', loadN: null }])).toEqual(['no-load']);
  expect(kinds([{ specimen: 'A-2', pulledAt: 2_000_001 }])).toEqual(['in-future']);
  expect(kinds([{ specimen: 'A-2', loadN: null, mode: null }])).toEqual(['empty']);
  expect(kinds([{ specimen: 'A-2', loadN: null, mode: 'scale-failed' }])).toEqual(['A-2 of A']);
});

test('every refusal says what to do', () => {
  for (const refusal of INTAKE_REFUSALS) expect(intakeRefusalText(refusal)).toMatch(/\.$/);
});
