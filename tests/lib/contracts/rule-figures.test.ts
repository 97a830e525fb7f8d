import { expect, test } from 'vitest';
import { ruleFiguresFormSchema, ruleFiguresSchema } from '@/lib/contracts/rule-figures';
import { DEFAULT_RULE_FIGURES, specSettingsOf } from '@/lib/spec/rule-figures';
import { DEFAULT_SPEC_SETTINGS } from '@/lib/spec/spec-settings';
import type { UnitChoice } from '@/lib/units/unit-choice';

const INCHES: UnitChoice = { lengthUnit: 'inch', temperatureUnit: 'F', massUnit: 'oz', forceUnit: 'lbf' };

const TYPED = {
  requiredFactor: '1.95',
  lowerShare: '5',
  leastEmbedmentMm: '1/2',
  incrementMm: '1/16',
  drillSlackMm: '1/16',
  woodBelowMm: '1/8',
  throughWireBelowGravity: '0.2',
  serviceTemperatureC: '86',
  calibrationMaxAgeDays: '365',
  surgeFactor: '1.5',
  liftFactor: '2',
  saturationMm: '1',
  endGrainBearing: '0.5',
  combination: 'quadratic',
};

test('what a shop has before it set anything is what the rules take by themselves', () => {
  expect(ruleFiguresSchema.parse(DEFAULT_RULE_FIGURES)).toEqual(DEFAULT_RULE_FIGURES);
  expect(specSettingsOf(DEFAULT_RULE_FIGURES)).toEqual(DEFAULT_SPEC_SETTINGS);
});

test('the form in inches and percent gives the same figures', () => {
  const read = ruleFiguresFormSchema(INCHES).parse(TYPED);
  expect({ ...read, serviceTemperatureC: Math.round(read.serviceTemperatureC * 1e9) / 1e9 }).toEqual(
    DEFAULT_RULE_FIGURES,
  );
});

test.each([
  ['requiredFactor', '0.5'],
  ['lowerShare', '50'],
  ['leastEmbedmentMm', '5 ft'],
  ['combination', 'other'],
])('%s of %s is refused beside its field', (name, value) => {
  const result = ruleFiguresFormSchema(INCHES).safeParse({ ...TYPED, [name]: value });
  expect(result.success ? [] : result.error.issues.map(({ path }) => path.join('.'))).toEqual([name]);
});
