import { describe, expect, test } from 'vitest';
import { sheetFormSchema } from '@/lib/contracts/sheet-form';
import type { UnitChoice } from '@/lib/units/unit-choice';

const METRIC: UnitChoice = { lengthUnit: 'mm', temperatureUnit: 'C', massUnit: 'g', forceUnit: 'N' };
const US: UnitChoice = { lengthUnit: 'inch', temperatureUnit: 'F', massUnit: 'oz', forceUnit: 'lbf' };

const NO_BOX = { low: '', central: '', high: '' };
const FORM = {
  seenVersion: '1',
  sheetRevision: '3',
  sheetOn: '2026-01-02',
  source: { kind: 'data-sheet', text: 'Sheet 12, page 2' },
  referenceC: '25',
  minCureC: '13',
  rate: { kind: 'common' },
  potLife: [{ minutes: '30', massG: '100', temperatureC: '25', criterion: 'gel' }],
  massExponent: NO_BOX,
  milestoneHours: {
    handle: '8',
    sand: '1 d',
    'recoat-from': '',
    'recoat-by': '',
    paint: '',
    'pull-test': '',
    ship: '',
  },
  recoatCapHours: '',
  recoatRemedy: '',
  maxMassG: '',
  densityA: '',
  densityB: '',
  ratio: { partsA: '2', partsB: '1', basis: 'volume' },
};

function errors(form: object, units = METRIC): Record<string, string> {
  const result = sheetFormSchema(units).safeParse(form);
  const issues = result.success ? [] : result.error.issues;
  return Object.fromEntries(issues.map((issue) => [issue.path.join('.'), issue.message]));
}

describe('the form of a data sheet', () => {
  test('becomes the sheet, each figure with the source at the top', () => {
    const { sheet, sheetRevision, sheetOn, seenVersion } = sheetFormSchema(METRIC).parse(FORM);
    const source = { kind: 'data-sheet', text: 'Sheet 12, page 2' };
    expect({ sheetRevision, sheetOn, seenVersion }).toEqual({
      sheetRevision: '3',
      sheetOn: '2026-01-02',
      seenVersion: 1,
    });
    expect(sheet).toMatchObject({
      referenceC: 25,
      minCureC: 13,
      rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
      potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'gel' }],
      milestoneHours: { handle: 8, sand: 24 },
      ratio: { partsA: 2, partsB: 1, basis: 'volume' },
    });
    expect(Object.keys(sheet.sources).sort()).toEqual(['handle', 'minCureC', 'potLife', 'rateLaw', 'ratio', 'sand']);
    expect(sheet.sources.handle).toEqual(source);
    expect(sheet.sources.rateLaw?.kind).toBe('published');
  });

  test('is read in the shop’s units', () => {
    const potLife = [{ minutes: '0:30', massG: '1', temperatureC: '77', criterion: 'gel' }];
    const { sheet } = sheetFormSchema(US).parse({ ...FORM, referenceC: '77', minCureC: '10 C', potLife });
    expect(sheet.referenceC).toBeCloseTo(25, 9);
    expect(sheet.minCureC).toBe(10);
    expect(sheet.potLife[0]?.minutes).toBe(30);
    expect(sheet.potLife[0]?.massG).toBeCloseTo(28.3495, 4);
  });

  // 45 min at 20 degC and 22 min at 30 degC: 52.8767 kJ/mol, worked example of lib/cure/activation-energy.
  test('two temperatures give the activation energy, and the source says from what', () => {
    const rate = { kind: 'two-temperatures', firstC: '20', firstTime: '45 min', secondC: '30', secondTime: '22 min' };
    const { sheet } = sheetFormSchema(METRIC).parse({ ...FORM, rate });
    const law = sheet.rateLaw.kind === 'arrhenius' ? sheet.rateLaw.activationEnergyKjPerMol : null;
    expect(law?.central).toBeCloseTo(52.8767, 4);
    expect(law?.low).toBeCloseTo(47.8767, 4);
    expect(sheet.sources.rateLaw?.text).toBe(
      'Sheet 12, page 2: the same step takes 45 min at 20 degC and 22 min at 30 degC, which gives 52.9 kJ/mol; 5 either way are chosen.',
    );
  });

  test.each([
    [{ firstC: '20', firstTime: '20 min', secondC: '30', secondTime: '45 min' }, /swapped/],
    [{ firstC: '20', firstTime: '45 min', secondC: '20', secondTime: '22 min' }, /two different temperatures/],
    [{ firstC: '20', firstTime: '45 h', secondC: '21', secondTime: '1 min' }, /same step/],
  ])('two temperatures that cannot be are refused beside the second time', (rate, message) => {
    expect(errors({ ...FORM, rate: { kind: 'two-temperatures', ...rate } })['rate.secondTime']).toMatch(message);
  });

  test('a doubling rule is typed in the shop’s degrees', () => {
    const rate = { kind: 'doubling', low: '14.4', central: '18', high: '21.6' };
    const { sheet } = sheetFormSchema(US).parse({
      ...FORM,
      referenceC: '77',
      minCureC: '55',
      potLife: FORM.potLife.map((point) => ({ ...point, temperatureC: '77' })),
      rate,
    });
    const box = sheet.rateLaw.kind === 'doubling' ? sheet.rateLaw.doublingC : null;
    expect(box?.low).toBeCloseTo(8, 9);
    expect(box?.central).toBeCloseTo(10, 9);
    expect(box?.high).toBeCloseTo(12, 9);
  });

  test('a figure may have a source of its own', () => {
    const own = { kind: 'own', text: 'Stick test, 3 March' };
    const { sheet } = sheetFormSchema(METRIC).parse({
      ...FORM,
      sources: { handle: own, sand: { kind: '', text: '' } },
    });
    expect(sheet.sources.handle).toEqual(own);
    expect(sheet.sources.sand?.kind).toBe('data-sheet');
    expect(errors({ ...FORM, sources: { handle: { kind: '', text: 'Stick test' } } })).toHaveProperty(
      'sources.handle.text',
    );
  });

  test('what contradicts itself is refused beside its field', () => {
    const hours = { ...FORM.milestoneHours, handle: '30' };
    expect(errors({ ...FORM, milestoneHours: hours })).toHaveProperty('milestoneHours.sand');
    expect(errors({ ...FORM, minCureC: '30' })).toHaveProperty('minCureC');
    expect(errors({ ...FORM, rate: { kind: 'own', low: '60', central: '55', high: '65' } })).toHaveProperty('rate.low');
    expect(errors({ ...FORM, potLife: [] })).toHaveProperty('potLife');
    expect(errors({ ...FORM, ratio: { partsA: '2', partsB: '', basis: 'mass' } })).toHaveProperty('ratio.partsB');
    expect(errors({ ...FORM, massExponent: { ...NO_BOX, low: '0.1' } })).toHaveProperty('massExponent.low');
    expect(errors({ ...FORM, recoatCapHours: '20' })).toHaveProperty('milestoneHours.recoat-by');
  });

  test('everything that cannot be read is said at once', () => {
    const wrong = errors({ ...FORM, referenceC: 'warm', minCureC: '', densityA: 'x', source: { kind: '', text: '' } });
    expect(Object.keys(wrong).sort()).toEqual(['densityA', 'minCureC', 'referenceC', 'source.kind', 'source.text']);
    expect(errors({ ...FORM, extra: 'x' })).not.toEqual({});
  });
});
