import { ANCHOR_KINDS, ANCHOR_ROLES } from '@/lib/geometry/anchor';
import { BODY_KINDS, bodyShape } from '@/lib/geometry/body-shapes';
import { ANCHOR_FACES } from '@/lib/geometry/shank-path';
import { BOND_CLASSES, WATER_RATINGS } from '@/lib/materials/adhesive-strength-sheet';
import { WIRE_ALLOYS, WIRE_TEMPERS } from '@/lib/materials/wire-sheet';
import { WOOD_TABLE } from '@/lib/materials/wood-table';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { LINE_TYPES } from '@/lib/strength/fishing-line';

/** Figures nobody should be able to type, which must do no harm all the same. */
const ODD = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1, 0, 1e-300, 1e300, -0];

/** A spec with anything missing, odd or plain wrong. `random` in [0, 1). */
export function randomSpec(random: () => number): SpecModel {
  const oneOf = <T>(of: readonly [T, ...T[]] | readonly T[]): T => {
    const value = of[Math.floor(random() * of.length)];
    if (value === undefined) throw new Error('nothing to choose from');
    return value;
  };
  const maybe = <T>(share: number, make: () => T): T | null => (random() < share ? null : make());
  const size = (low: number, high: number) => (random() < 0.03 ? oneOf(ODD) : low + (high - low) * random());
  const number = (low: number, high: number) => maybe(0.06, () => size(low, high));
  const optional = <K extends string>(name: K, share: number, make: () => number): { readonly [N in K]?: number } =>
    random() < share ? {} : (Object.fromEntries([[name, make()]]) as { readonly [N in K]?: number });

  const wire = (wireMm: number) => ({
    materialId: oneOf(['w1', 'w2', 'w3']),
    name: 'wire',
    sheet: maybe(0.06, () => ({
      alloy: random() < 0.7 ? ('stainless-302-304' as const) : oneOf(WIRE_ALLOYS),
      temper: maybe(0.08, () => oneOf(WIRE_TEMPERS)),
      diameterMm: random() < 0.9 ? wireMm : size(0.3, 3),
      ...optional('tensileMpa', 0.7, () => size(300, 2500)),
      sources: {},
    })),
  });
  const fitting = (id: string) => ({
    materialId: id,
    name: id,
    sheet: maybe(0.1, () => ({
      ...optional('statedStrengthN', 0.2, () => size(20, 600)),
      ...optional('lengthMm', 0.2, () => size(4, 45)),
      sources: {},
    })),
  });
  const anchor = (index: number): SpecAnchor => {
    const wireMm = size(0.5, 1.6);
    const embedment = size(3, 42);
    return {
      anchorId: `a${index}`,
      name: `Anchor ${index}`,
      role: oneOf(ANCHOR_ROLES),
      kind: random() < 0.7 ? 'twisted-wire' : oneOf(ANCHOR_KINDS),
      face: maybe(0.05, () => oneOf(ANCHOR_FACES)),
      xMm: number(-10, 160),
      zMm: random() < 0.6 ? 0 : number(-20, 20),
      slantDeg: random() < 0.4 ? 0 : number(-95, 95),
      loadAngleDeg: random() < 0.3 ? 0 : number(-5, 95),
      wire: maybe(0.08, () => wire(wireMm)),
      wireDiameterMm: maybe(0.05, () => wireMm),
      twistPitchMm: number(2, 15),
      eyeInsideMm: number(1, 9),
      isEyeClosed: maybe(0.05, () => random() < 0.8),
      bitDiameterMm: random() < 0.5 ? 2 * wireMm : number(0.5, 5),
      drillDepthMm: random() < 0.6 ? embedment : number(2, 60),
      embedmentMm: maybe(0.05, () => embedment),
      adhesive: maybe(0.08, () => ({
        materialId: oneOf(['e1', 'e2']),
        name: 'glue',
        sheet: maybe(0.06, () => ({
          bondClass: random() < 0.7 ? ('slow-epoxy' as const) : oneOf(BOND_CLASSES),
          ...optional('maxGapMm', 0.2, () => size(0.05, 2)),
          ...(random() < 0.2 ? {} : { water: oneOf(WATER_RATINGS) }),
          ...optional('maxServiceC', 0.2, () => size(20, 90)),
          sources: {},
        })),
      })),
      screwEye: maybe(0.5, () => ({
        materialId: 'screw',
        name: 'screw eye',
        sheet: maybe(0.1, () => ({
          threadDiameterMm: size(1, 4),
          threadLengthMm: size(4, 25),
          isEyeClosed: random() < 0.5,
          ...optional('eyeInsideMm', 0.3, () => size(2, 8)),
          ...optional('statedStrengthN', 0.4, () => size(50, 800)),
          sources: {},
        })),
      })),
      hook: maybe(0.3, () => fitting('hook')),
      splitRing: maybe(0.4, () => fitting('ring')),
    };
  };

  const lengthMm = 20 + 160 * random();
  const measures = { lengthMm, heightMm: 4 + 50 * random(), widthMm: 3 + 40 * random() };
  return {
    modelId: 'm',
    modelName: 'Model',
    revisionId: 'r',
    revisionLetter: 'A',
    body: maybe(0.06, () => {
      const stations = bodyShape(oneOf(BODY_KINDS), measures, 9);
      const spoilt = stations.map((one, i) => (i === 4 ? { ...one, halfHeightMm: oneOf(ODD) } : one));
      return {
        stations: random() < 0.05 ? spoilt : random() < 0.02 ? [] : stations,
        lengthMm: number(lengthMm, lengthMm),
      };
    }),
    wood: maybe(0.06, () => {
      const { id, name, sheet } = oneOf(WOOD_TABLE);
      return {
        materialId: id,
        name,
        sheet: maybe(0.05, () => sheet),
        weighedDensityKgM3: random() < 0.6 ? null : size(90, 750),
        moisturePercent: random() < 0.6 ? null : size(4, 24),
      };
    }),
    anchors: Array.from({ length: Math.floor(5 * random()) }, (_, i) => anchor(i)),
    line: maybe(0.08, () => ({
      labelN: size(10, 400),
      type: oneOf(LINE_TYPES),
      knotShare: random() < 0.5 ? null : size(0.4, 1),
      dragShare: random() < 0.5 ? null : size(0.1, 0.5),
    })),
    fishMassG: random() < 0.7 ? null : size(200, 9000),
    bill: maybe(0.2, () =>
      ['w1', 'w2', 'e1', 'hook', 'ring', 'screw'].map((materialId) => ({
        materialId,
        quantity: size(0, 4) * (materialId.startsWith('w') ? 60 : 1),
        quantityUnit: oneOf(['g', 'mm', 'pieces'] as const),
      })),
    ),
    waivers: [],
  };
}
