import { expect, test } from 'vitest';
import { strengthFormSchema } from '@/lib/contracts/strength-form';
import { MPA_PER_PSI } from '@/lib/units/force-and-length';
import type { UnitChoice } from '@/lib/units/unit-choice';

const US: UnitChoice = { lengthUnit: 'inch', temperatureUnit: 'F', massUnit: 'oz', forceUnit: 'lbf' };
const NO_SOURCE = { kind: '', text: '' };
const SHEET = { kind: 'data-sheet', text: 'Sheet 3' };

const WIRE = {
  seenVersion: '2',
  source: NO_SOURCE,
  alloy: 'other',
  temper: '',
  diameterMm: '.041',
  tensileMpa: '275000',
  yieldMpa: '',
};

test('a wire in psi and thousandths; what is not known stays absent, and no source is named for what is the shop’s own', () => {
  const { figures, seenVersion } = strengthFormSchema('wire', US).parse(WIRE);
  expect(seenVersion).toBe(2);
  expect(figures).toEqual({
    kind: 'wire',
    sheet: {
      alloy: 'other',
      temper: null,
      diameterMm: expect.closeTo(1.0414, 9),
      tensileMpa: expect.closeTo(275_000 * MPA_PER_PSI, 6),
      sources: {},
    },
  });
});

test('a source stands for every figure that names no other', () => {
  const typed = {
    ...WIRE,
    source: SHEET,
    yieldMpa: '200000',
    sources: { yieldMpa: { kind: 'own', text: 'bent some' } },
  };
  expect(strengthFormSchema('wire', US).parse(typed).figures.sheet.sources).toEqual({
    tensileMpa: SHEET,
    yieldMpa: { kind: 'own', text: 'bent some' },
  });
});

test.each([
  ['wire', { ...WIRE, yieldMpa: '300000' }, 'yieldMpa'],
  ['wire', { ...WIRE, diameterMm: '41' }, 'diameterMm'],
  ['wire', { ...WIRE, source: { kind: 'published', text: '' } }, 'source.text'],
  [
    'hook',
    { seenVersion: '1', source: NO_SOURCE, statedStrengthN: '12 mm', lengthMm: '', massG: '' },
    'statedStrengthN',
  ],
] as const)('%s: what cannot be is refused beside its field', (kind, typed, field) => {
  const result = strengthFormSchema(kind, US).safeParse(typed);
  expect(result.success ? [] : result.error.issues.map(({ path }) => path.join('.'))).toEqual([field]);
});
