import { describe, expect, test } from 'vitest';
import { anchorsFormSchema } from '@/lib/contracts/anchor-forms';
import { benchExceptionFormSchema, benchHoursFormSchema } from '@/lib/contracts/bench-hours';
import { billFormSchema } from '@/lib/contracts/bill-forms';
import { lotFormSchema } from '@/lib/contracts/material-forms';
import { bodyFormSchema } from '@/lib/contracts/model-forms';
import { profileFormSchema } from '@/lib/contracts/profile-form';
import { routeFormSchema } from '@/lib/contracts/route-forms';
import { shopSettingsFormSchema } from '@/lib/contracts/shop-settings';
import type { UnitChoice } from '@/lib/units/unit-choice';

const US: UnitChoice = { lengthUnit: 'inch', temperatureUnit: 'F', massUnit: 'g', forceUnit: 'lbf' };
const METRIC: UnitChoice = { lengthUnit: 'mm', temperatureUnit: 'C', massUnit: 'g', forceUnit: 'N' };

interface Parses {
  safeParse(
    value: unknown,
  ): { success: true } | { success: false; error: { issues: { path: PropertyKey[]; message: string }[] } };
}

function errors(schema: Parses, form: unknown): Record<string, string> {
  const result = schema.safeParse(form);
  if (result.success) return {};
  return Object.fromEntries(result.error.issues.map((issue) => [issue.path.map(String).join('.'), issue.message]));
}

describe('the body', () => {
  const body = {
    seenAt: '5',
    woodMaterialId: '',
    length: '2 3/4',
    weighedDensity: '',
    moisture: '',
    lineLabel: '12 lb',
    lineType: '',
    knotShare: '',
    dragShare: '',
    fishMass: '',
    note: '',
  };
  const stations = [
    { x: '0', height: '1/4', width: '5/32' },
    { x: '70 mm', height: '.2', width: '4 mm' },
  ];

  test('is typed as makers write it', () => {
    const parsed = bodyFormSchema(US).parse({ ...body, length: '70 mm', stations });
    expect(parsed).toMatchObject({ seenAt: 5, woodMaterialId: null, length: 70 });
    expect(parsed.lineLabel).toBeCloseTo(53.379, 3);
    expect(parsed.stations[0]?.height).toBeCloseTo(6.35, 9);
    expect(parsed.stations[1]?.x).toBe(70);
  });

  test('may have no stations yet, but not one alone', () => {
    expect(bodyFormSchema(US).parse(body).stations).toEqual([]);
    expect(errors(bodyFormSchema(US), { ...body, stations: stations.slice(0, 1) })).toHaveProperty('stations.0.x');
  });

  test('begins at the nose, ends at the tail and never turns back', () => {
    const at = (...xs: string[]) =>
      errors(bodyFormSchema(METRIC), {
        ...body,
        length: '70',
        lineLabel: '',
        stations: xs.map((x) => ({ x, height: '5', width: '4' })),
      });
    expect(at('0', '30', '70')).toEqual({});
    expect(at('1', '70')).toHaveProperty('stations.0.x');
    expect(at('0', '69')).toHaveProperty('stations.1.x');
    expect(at('0', '30', '30', '70')).toHaveProperty('stations.2.x');
  });

  test('shares are typed in percent, moisture and density as numbers, and ballast where it sits', () => {
    const weight = { name: '', metal: 'lead', massG: '3.5', xMm: '1', zMm: '-1/8', place: 'inside' };
    const known = { moisture: '10', weighedDensity: '480', lineType: 'braid', knotShare: '80', dragShare: '30' };
    expect(bodyFormSchema(US).parse({ ...body, ...known, ballast: [weight] })).toMatchObject({
      moisture: 10,
      weighedDensity: 480,
      lineType: 'braid',
      knotShare: 0.8,
      dragShare: 0.3,
      ballast: [{ metal: 'lead', massG: 3.5, xMm: 25.4, zMm: -3.175, isInside: true }],
    });
    expect(errors(bodyFormSchema(US), { ...body, ballast: [{ ...weight, xMm: '3' }] })).toHaveProperty('ballast.0.xMm');
    expect(errors(bodyFormSchema(US), { ...body, ballast: [weight], hasNoBallast: 'on' })).toHaveProperty(
      'hasNoBallast',
    );
    expect(errors(bodyFormSchema(US), { ...body, moisture: '60' })).toHaveProperty('moisture');
  });

  test('refuses a unit that does not belong there, and says which do', () => {
    expect(errors(bodyFormSchema(US), { ...body, length: '3 kg' }).length).toBe(
      'The unit "kg" does not belong here. Use one of mm, cm, m, in, ft.',
    );
  });
});

describe('anchors', () => {
  const anchor = {
    id: '',
    name: 'Belly',
    role: 'belly-hanger',
    kind: 'twisted-wire',
    face: '',
    x: '',
    z: '',
    angle: '90',
    leansTo: '',
    loadAngle: '',
    wireMaterialId: '',
    wireDiameter: '.041',
    twist: '',
    eyeInside: '',
    eye: '',
    bitDiameter: '5/64',
    drillDepth: '1/2',
    embedment: '7/16',
    adhesiveMaterialId: '',
    hookMaterialId: '',
    splitRingMaterialId: '',
  };
  const check = (...anchors: object[]) => errors(anchorsFormSchema(US), { seenAt: '5', anchors });

  test('what is not known stays empty and is not zero', () => {
    const parsed = anchorsFormSchema(US).parse({ seenAt: '5', anchors: [{ ...anchor, embedment: '', angle: '' }] });
    expect(parsed.anchors[0]).toMatchObject({ id: null, x: null, embedment: null, angle: null });
    expect(parsed.anchors[0]?.wireDiameter).toBeCloseTo(1.0414, 6);
  });

  test('no shank sits deeper than its hole, and no wire goes into a narrower one but a screw eye’s', () => {
    expect(check({ ...anchor, embedment: '9/16' })).toHaveProperty('anchors.0.embedment');
    expect(check({ ...anchor, bitDiameter: '.039' })).toHaveProperty('anchors.0.bitDiameter');
    expect(check({ ...anchor, bitDiameter: '.039', kind: 'screw-eye' })).toEqual({});
  });

  test('angles lie between along and across', () => {
    expect(check({ ...anchor, angle: '91' })).toHaveProperty('anchors.0.angle');
    expect(check({ ...anchor, angle: '-5' })).toHaveProperty('anchors.0.angle');
    expect(check({ ...anchor, angle: '22,5' })).toEqual({});
  });

  test('twist is counted in turns an inch or in the length of one, an eye is open or closed, a hole leans where it can', () => {
    const typed = { ...anchor, twist: '4', eye: 'open', face: 'belly', leansTo: 'tail', angle: '60', loadAngle: '30' };
    expect(anchorsFormSchema(US).parse({ seenAt: '5', anchors: [typed] }).anchors[0]).toMatchObject({
      twist: 6.35,
      eye: false,
      face: 'belly',
      leansTo: 'tail',
      loadAngle: 30,
    });
    const metric = { ...typed, twist: '7', wireDiameter: '1', bitDiameter: '2.2', drillDepth: '15', embedment: '14' };
    expect(anchorsFormSchema(METRIC).parse({ seenAt: '5', anchors: [metric] }).anchors[0]?.twist).toBe(7);
    expect(check({ ...typed, leansTo: 'back' })).toHaveProperty('anchors.0.leansTo');
    expect(check({ ...typed, loadAngle: '95' })).toHaveProperty('anchors.0.loadAngle');
  });

  test('two anchors do not share a name', () => {
    expect(check(anchor, { ...anchor, name: 'BELLY' })).toHaveProperty('anchors.1.name');
  });
});

describe('the route', () => {
  const step = (ref: string, more: object = {}) => ({
    ref,
    name: `Step ${ref}`,
    kind: 'work',
    minutes: '2.5',
    materialId: '',
    caution: 'none',
    ...more,
  });
  const check = (...operations: object[]) => errors(routeFormSchema, { seenAt: '5', operations });

  test('a step waits for steps above it only, each once', () => {
    const wait = (after: string) => ({ needs: [{ after, wait: 'done' }] });
    expect(check(step('a'), step('b', wait('a')))).toEqual({});
    expect(check(step('a', wait('b')), step('b'))).toHaveProperty('operations.0.needs.0.after');
    expect(check(step('a', wait('a')))).toHaveProperty('operations.0.needs.0.after');
    const twice = {
      needs: [
        { after: 'a', wait: 'done' },
        { after: 'a', wait: 'done' },
      ],
    };
    expect(check(step('a'), step('b', twice))).toHaveProperty('operations.1.needs.1.after');
  });

  test('only what cures can be waited on to cure', () => {
    const sand = { needs: [{ after: 'a', wait: 'sand' }] };
    expect(check(step('a'), step('b', sand))).toHaveProperty('operations.1.needs.0.wait');
    expect(check(step('a', { kind: 'coat', materialId: 'gloss' }), step('b', sand))).toEqual({});
  });

  test('a glue-up and a coat name their material', () => {
    expect(check(step('a', { kind: 'glue' }))).toHaveProperty('operations.0.materialId');
    expect(check(step('a', { kind: 'coat' }))).toHaveProperty('operations.0.materialId');
  });

  test('minutes are minutes', () => {
    expect(check(step('a', { minutes: 'two' }))).toHaveProperty('operations.0.minutes');
    expect(check(step('a', { minutes: '601' }))).toHaveProperty('operations.0.minutes');
    expect(check(step('a', { minutes: '2,5' }))).toEqual({});
  });
});

describe('bill and lots', () => {
  test('a quantity is read by what it counts', () => {
    const line = (unit: string, quantity: string) => ({ materialId: 'm', unit, quantity, note: '' });
    const lines = [line('mm', '3 1/2'), line('g', '.6'), line('pieces', '2')];
    const parsed = billFormSchema(US).parse({ seenAt: '5', lines });
    const quantities = parsed.lines.map((row) => Number(row.quantity.toFixed(9)));
    expect(quantities).toEqual([88.9, 0.6, 2]);
    const wrong = errors(billFormSchema(US), { seenAt: '5', lines: [line('pieces', '3 1/2'), line('g', '2 in')] });
    expect(Object.keys(wrong)).toEqual(['lines.0.quantity', 'lines.1.quantity']);
  });

  test('a lot is not opened before it came', () => {
    const lot = {
      code: 'A-1',
      part: 'resin',
      unit: 'g',
      quantity: '1 kg',
      receivedOn: '2026-01-10',
      openedOn: '',
      expiresOn: '',
      supplierNote: '',
      priceMinor: '$12.5',
    };
    expect(lotFormSchema(US, 'USD').parse(lot)).toMatchObject({ quantity: 1000, openedOn: null, priceMinor: 1250 });
    expect(errors(lotFormSchema(US, 'USD'), { ...lot, openedOn: '2026-01-09' })).toHaveProperty('openedOn');
    expect(errors(lotFormSchema(US, 'USD'), { ...lot, receivedOn: '2026-02-30' })).toHaveProperty('receivedOn');
    expect(errors(lotFormSchema(US, 'USD'), { ...lot, code: 'a\u0000b' })).toHaveProperty('code');
  });
});

describe('the shop', () => {
  const week = {
    otherwiseC: '60',
    profileTolerance: '3.6',
    floorC: '40',
    ceilingC: '80',
    sensorTolerance: '.9',
    periods: [{ weekdays: ['1', '2'], from: '18:00', to: '00:00', temperatureC: '70' }],
  };

  test('a week in degrees Fahrenheit: setpoints are temperatures, tolerances are differences', () => {
    const parsed = profileFormSchema(US).parse(week);
    expect(parsed.otherwiseC).toBeCloseTo(15.5556, 4);
    expect(parsed.profileTolerance).toBeCloseTo(2, 9);
    expect(parsed.sensorTolerance).toBeCloseTo(0.5, 9);
    expect(parsed.periods[0]).toMatchObject({ weekdays: [1, 2], from: 1080, to: 1440 });
  });

  test('setpoints lie between the coldest and the warmest', () => {
    expect(errors(profileFormSchema(US), { ...week, otherwiseC: '35' })).toHaveProperty('otherwiseC');
    expect(errors(profileFormSchema(US), { ...week, ceilingC: '65' })).toHaveProperty('periods.0.temperatureC');
    expect(errors(profileFormSchema(US), { ...week, ceilingC: '30' })).toHaveProperty('ceilingC');
    const noDays = [{ from: '18:00', to: '20:00', temperatureC: '70' }];
    expect(errors(profileFormSchema(US), { ...week, periods: noDays })).toHaveProperty('periods.0.weekdays');
  });

  test('a zone is a place, not an offset', () => {
    const settings = { name: 'Shed', timeZone: 'America/Chicago', ...US, currency: 'usd' };
    expect(shopSettingsFormSchema.parse(settings).currency).toBe('USD');
    for (const timeZone of ['Chicago', '+05:00', 'Mars/Olympus', '']) {
      expect(errors(shopSettingsFormSchema, { ...settings, timeZone })).toHaveProperty('timeZone');
    }
  });

  test('hours of the bench, and days without any', () => {
    expect(benchHoursFormSchema.parse({}).stretches).toEqual([]);
    const stretch = { weekdays: ['7', '9'], from: '22:00', to: '01:00' };
    expect(benchHoursFormSchema.parse({ stretches: [stretch] }).stretches[0]).toEqual({
      weekdays: [7],
      from: 1320,
      to: 60,
    });
    const day = { onDate: '2026-03-20', from: '', to: '', reason: '' };
    expect(benchExceptionFormSchema.parse(day)).toMatchObject({ from: null, to: null });
    expect(errors(benchExceptionFormSchema, { ...day, from: '10:00' })).toHaveProperty('to');
    expect(errors(benchExceptionFormSchema, { ...day, from: '25:00', to: '26:00' })).toHaveProperty('from');
  });
});
