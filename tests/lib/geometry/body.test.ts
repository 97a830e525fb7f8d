import { describe, expect, test } from 'vitest';
import { bodyFromProfile, sectionAt } from '@/lib/geometry/body';
import { BODY_KINDS, bodyShape } from '@/lib/geometry/body-shapes';
import { bodySolid } from '@/lib/geometry/body-solid';
import { ellipseBelow, ellipsePerimeter } from '@/lib/geometry/ellipse';
import { twistedPair } from '@/lib/geometry/twisted-pair';
import { bar, body, ellipsoid } from './bodies';

const point = (xMm: number, half: number) => ({ xMm, halfHeightMm: half, halfWidthMm: half });

describe('a profile is checked', () => {
  test.each([
    ['one station', [point(0, 5)], 'too-few-stations', 0],
    ['stations out of order', [point(0, 5), point(10, 5), point(8, 5)], 'not-rising', 2],
    ['two stations at one place', [point(0, 5), point(0, 5)], 'not-rising', 1],
    ['a waist of nothing', [point(0, 5), point(10, 0), point(20, 5)], 'no-wood-between', 1],
    ['two points and nothing between', [point(0, 0), point(20, 0)], 'no-wood-between', 0],
    ['a negative half', [point(0, 5), point(10, -1)], 'not-a-size', 1],
    ['a half that is not a number', [point(0, 5), point(10, Number.NaN)], 'not-a-size', 1],
    ['an endless body', [point(0, 5), point(Number.POSITIVE_INFINITY, 5)], 'not-a-size', 1],
  ])('%s', (_, stations, code, index) => {
    expect(bodyFromProfile(stations, null)).toEqual({ ok: false, code, index });
  });

  test('a profile must span the stated length', () => {
    const stations = [point(0, 5), point(80, 5)];
    expect(bodyFromProfile(stations, 80.1)).toMatchObject({ ok: true });
    expect(bodyFromProfile(stations, 81)).toMatchObject({ ok: false, code: 'length-differs' });
  });
});

test('between stations the halves run straight, outside there is none', () => {
  const cone = body([point(0, 0), { xMm: 10, halfHeightMm: 4, halfWidthMm: 2 }]);
  expect(sectionAt(cone, 2.5)).toEqual({ halfHeightMm: 1, halfWidthMm: 0.5 });
  expect(sectionAt(cone, -1)).toEqual({ halfHeightMm: 0, halfWidthMm: 0 });
  expect(sectionAt(cone, 11)).toEqual({ halfHeightMm: 0, halfWidthMm: 0 });
});

describe('volume, surface and centre', () => {
  test('a bar', () => {
    const solid = bodySolid(bar(100, 10));
    expect(solid.volumeMl).toBeCloseTo(10 * Math.PI, 10);
    expect(solid.surfaceMm2).toBeCloseTo(2200 * Math.PI, 6);
    expect(solid.centreXMm).toBeCloseTo(50, 10);
  });

  test('a cone', () => {
    const solid = bodySolid(body([point(0, 0), point(30, 10)]));
    expect(solid.volumeMl).toBeCloseTo(Math.PI, 10);
    expect(solid.surfaceMm2).toBeCloseTo(Math.PI * 100 + Math.PI * 10 * Math.hypot(30, 10), 5);
    expect(solid.centreXMm).toBeCloseTo(22.5, 10);
  });

  test('an ellipsoid in fine stations', () => {
    const solid = bodySolid(ellipsoid(80, 12, 6));
    expect(solid.volumeMl / ((4 / 3) * Math.PI * 40 * 12 * 6 * 1e-3)).toBeCloseTo(1, 3);
    expect(solid.centreXMm).toBeCloseTo(40, 9);
  });
});

test('ellipse perimeters: a circle, a flat one, and 2 by 1 (9.6884482205)', () => {
  expect(ellipsePerimeter(3, 3)).toBeCloseTo(6 * Math.PI, 12);
  expect(ellipsePerimeter(3, 0)).toBe(12);
  expect(ellipsePerimeter(2, 1)).toBeCloseTo(9.688448220547675, 12);
  expect(ellipsePerimeter(1, 2)).toBeCloseTo(9.688448220547675, 12);
});

test('the ellipse below its middle is half of it, its moment that of a half ellipse', () => {
  expect(ellipseBelow(4, 2, 0).area).toBeCloseTo(4 * Math.PI, 12);
  expect(ellipseBelow(4, 2, 0).moment).toBeCloseTo((-2 / 3) * 32, 12);
  expect(ellipseBelow(4, 2, 9).area).toBeCloseTo(8 * Math.PI, 12);
  expect(ellipseBelow(4, 2, -9).area).toBeCloseTo(0, 12);
});

describe.each(BODY_KINDS)('the starting shape of a %s', (kind) => {
  const stations = bodyShape(kind, { lengthMm: 90, heightMm: 24, widthMm: 14 });
  test('is a body of the measures asked for', () => {
    const check = bodyFromProfile(stations, 90);
    expect(check.ok).toBe(true);
    const highest = Math.max(
      ...bodyShape(kind, { lengthMm: 90, heightMm: 24, widthMm: 14 }, 201).map((s) => s.halfHeightMm),
    );
    expect(highest).toBeGreaterThan(11.99);
    expect(highest).toBeLessThanOrEqual(12);
  });
  test('has wood at both ends for an eye', () => {
    expect(stations[0]?.halfHeightMm).toBeGreaterThan(1.5);
    expect(stations.at(-1)?.halfHeightMm).toBeGreaterThan(1.5);
  });
});

test('a popper is widest near its face, a plug in the middle', () => {
  const thickest = (kind: 'popper' | 'plug') => {
    const stations = bodyShape(kind, { lengthMm: 100, heightMm: 20, widthMm: 20 }, 201);
    return stations.reduce((best, s) => (s.halfHeightMm > best.halfHeightMm ? s : best)).xMm;
  };
  expect(thickest('popper')).toBeLessThan(15);
  expect(thickest('plug')).toBeCloseTo(50, 0);
});

test('twisted .041 wire: 24.27 degrees and 1.0969 of strand at 3.5 turns per inch', () => {
  const pair = twistedPair(0.041 * 25.4, 25.4 / 3.5);
  expect(pair.strandAngleDeg).toBeCloseTo(24.27, 2);
  expect(pair.takeUp).toBeCloseTo(1.0969, 4);
  expect(twistedPair(0.041 * 25.4, 25.4 / 7).strandAngleDeg).toBeCloseTo(42.04, 2);
});

test('wrong measures are refused', () => {
  expect(() => bodyShape('plug', { lengthMm: 0, heightMm: 1, widthMm: 1 })).toThrow(RangeError);
  expect(() => bodyShape('plug', { lengthMm: 9, heightMm: 1, widthMm: 1 }, 4)).toThrow(RangeError);
  expect(() => twistedPair(1, 0)).toThrow(RangeError);
});
