import { describe, expect, test } from 'vitest';
import { bodyShape } from '@/lib/geometry/body-shapes';
import { bodySolid } from '@/lib/geometry/body-solid';
import { type CarriedItem, flotation } from '@/lib/geometry/flotation';
import { submergedPart } from '@/lib/geometry/submerged';
import { bar, body, ellipsoid } from './bodies';

const ballast = (massG: number, xMm: number, more: Partial<CarriedItem> = {}): CarriedItem => ({
  massG,
  xMm,
  zMm: 0,
  volumeMl: 0,
  isInside: true,
  ...more,
});

describe('the part under water', () => {
  test('of a bar cut through its axis is half of it, with the centre of a half circle', () => {
    const half = submergedPart(bar(100, 10), 0, 0);
    expect(half.volumeMm3).toBeCloseTo(5000 * Math.PI, 4);
    expect(half.centreXMm).toBeCloseTo(50, 8);
    expect(half.centreZMm).toBeCloseTo(-40 / (3 * Math.PI), 6);
  });

  test('of a bar cut aslant through its middle is half of it too', () => {
    const half = submergedPart(bar(100, 10), -10, 0.2);
    expect(half.volumeMm3 / (5000 * Math.PI)).toBeCloseTo(1, 9);
    expect(half.centreXMm).toBeGreaterThan(50);
  });

  test('of an ellipsoid follows the cap of a sphere', () => {
    const shape = ellipsoid(40, 20, 20, 801);
    // Cap of height 8 of a sphere of radius 20: pi h^2 (3 r - h) / 3.
    expect(submergedPart(shape, -12, 0).volumeMm3 / ((Math.PI * 64 * 52) / 3)).toBeCloseTo(1, 3);
  });
});

describe('floating', () => {
  test('a bar of half the density of water lies level, half under', () => {
    const rest = flotation(bar(100, 10), 500, []);
    expect(rest).toMatchObject({ floats: true, isLevel: true });
    expect(rest.trimDeg).toBeCloseTo(0, 6);
    expect(rest.waterline?.heightMm).toBeCloseTo(0, 6);
    expect(rest.submergedShare).toBeCloseTo(0.5, 12);
    expect(rest.massG).toBeCloseTo(5 * Math.PI, 9);
  });

  test('ballast towards the tail lowers it, towards the nose raises it', () => {
    const shape = body(bodyShape('minnow', { lengthMm: 90, heightMm: 18, widthMm: 12 }));
    const centre = bodySolid(shape).centreXMm;
    const level = flotation(shape, 400, [ballast(2, centre)]).trimDeg;
    expect(flotation(shape, 400, [ballast(2, centre + 6)]).trimDeg).toBeGreaterThan(level + 1);
    expect(flotation(shape, 400, [ballast(2, centre - 6)]).trimDeg).toBeLessThan(level - 1);
  });

  test('at rest, buoyancy stands under the weight', () => {
    const shape = body(bodyShape('jerkbait', { lengthMm: 120, heightMm: 30, widthMm: 18 }));
    const rest = flotation(shape, 450, [ballast(6, 70, { zMm: -10, volumeMl: 0.5 })]);
    if (rest.waterline === null) throw new Error('stands on end');
    const part = submergedPart(shape, rest.waterline.heightMm, rest.waterline.slope);
    const angle = (rest.trimDeg * Math.PI) / 180;
    const lead =
      (part.centreXMm - rest.gravityXMm) * Math.cos(angle) + (part.centreZMm - rest.gravityZMm) * Math.sin(angle);
    expect(lead).toBeCloseTo(0, 5);
    expect(part.volumeMm3).toBeCloseTo(rest.submergedShare * bodySolid(shape).volumeMl * 1000, 1);
  });

  test('ballast moved tailwards raises the nose step by step', () => {
    const shape = body(bodyShape('jerkbait', { lengthMm: 120, heightMm: 30, widthMm: 18 }));
    const rests = [-3, -1, 1, 3].map((x) => flotation(shape, 450, [ballast(6, 60 + x, { zMm: -10 })]).trimDeg);
    expect(rests).toEqual([...rests].sort((a, b) => a - b));
  });

  test('a heavy tail stands it on end or nearly so', () => {
    expect(flotation(bar(100, 8), 300, [ballast(6, 99)]).trimDeg).toBeGreaterThan(60);
  });

  test('what hangs outside counts less its own water, what lies inside replaces wood', () => {
    const dry = flotation(bar(100, 10), 500, []).submergedShare;
    const hanging = flotation(bar(100, 10), 500, [ballast(7.9, 50, { volumeMl: 1, isInside: false })]);
    expect(hanging.submergedShare - dry).toBeCloseTo(6.9 / (10 * Math.PI), 9);
    const inside = flotation(bar(100, 10), 500, [ballast(7.9, 50, { volumeMl: 1 })]);
    expect(inside.submergedShare - dry).toBeCloseTo(7.4 / (10 * Math.PI), 9);
  });

  test('too much ballast sinks it, at the angle its weights ask for', () => {
    const sunk = flotation(bar(100, 10), 700, [ballast(30, 60, { zMm: -8 })]);
    expect(sunk).toMatchObject({ floats: false, waterline: null, submergedShare: 1 });
    expect(sunk.trimDeg).toBeGreaterThan(0);
  });

  test('refuses weights that are none', () => {
    expect(() => flotation(bar(100, 10), 0, [])).toThrow(RangeError);
    expect(() => flotation(bar(100, 10), 500, [ballast(Number.NaN, 50)])).toThrow(RangeError);
  });
});
