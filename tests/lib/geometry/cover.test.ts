import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Body } from '@/lib/geometry/body';
import { sectionAt } from '@/lib/geometry/body';
import { BODY_KINDS, bodyShape } from '@/lib/geometry/body-shapes';
import { coverProfile, leastCover } from '@/lib/geometry/cover';
import { type Hole, woodBelow, woodBetween } from '@/lib/geometry/holes';
import { type HolePlace, pointAt, shankPath } from '@/lib/geometry/shank-path';
import { surfaceDistance } from '@/lib/geometry/surface-distance';
import { bar, body, ellipsoid } from './bodies';

/** Nearest of many points of the surface, round and along, and of the end faces. */
function nearestOfMany(shape: Body, x: number, z: number, along: number, round: number): number {
  let best = Number.POSITIVE_INFINITY;
  const lay = (at: number, h: number, w: number) => {
    for (let j = 0; j <= round; j++) {
      const angle = (Math.PI * j) / round;
      best = Math.min(best, Math.hypot(at - x, h * Math.cos(angle) - z, w * Math.sin(angle)));
    }
  };
  for (let i = 0; i <= along; i++) {
    const at = shape.noseMm + ((shape.tailMm - shape.noseMm) * i) / along;
    const { halfHeightMm, halfWidthMm } = sectionAt(shape, at);
    lay(at, halfHeightMm, halfWidthMm);
  }
  for (const end of [shape.noseMm, shape.tailMm]) {
    const { halfHeightMm } = sectionAt(shape, end);
    if (Math.abs(z) <= halfHeightMm) best = Math.min(best, Math.abs(end - x));
  }
  return best;
}

function path(shape: Body, place: Partial<HolePlace>) {
  const check = shankPath(shape, { face: 'belly', xMm: 0, zMm: 0, slantDeg: 0, ...place });
  if (!check.ok) throw new Error(check.code);
  return check.path;
}

describe('distance to the surface', () => {
  test('in a bar: to the wall, to the end', () => {
    const round = bar(100, 10);
    expect(surfaceDistance(round, 50, 0)).toBeCloseTo(10, 9);
    expect(surfaceDistance(round, 50, 7)).toBeCloseTo(3, 9);
    expect(surfaceDistance(round, 2, 0)).toBeCloseTo(2, 9);
    expect(surfaceDistance(round, 50, 11)).toBe(0);
    expect(surfaceDistance(round, -1, 0)).toBe(0);
  });

  test('in a flat body the side is nearer than the back: 10 by 4, from 3 above the axis', () => {
    const flat = body([0, 200].map((xMm) => ({ xMm, halfHeightMm: 10, halfWidthMm: 4 })));
    expect(surfaceDistance(flat, 100, 3)).toBeCloseTo(Math.sqrt(16 * (1 - 9 / 84)), 9);
    expect(surfaceDistance(flat, 100, 9.5)).toBeCloseTo(0.5, 9);
  });

  test('in a cone it is measured square to the slope', () => {
    const cone = body([
      { xMm: 0, halfHeightMm: 0, halfWidthMm: 0 },
      { xMm: 100, halfHeightMm: 20, halfWidthMm: 20 },
    ]);
    expect(surfaceDistance(cone, 50, 0)).toBeCloseTo(50 * Math.sin(Math.atan(0.2)), 9);
  });

  test('agrees with the nearest of many points, in every kind of body', () => {
    const turns = process.env.SOAK === '1' ? 2000 : 40;
    let widest = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...BODY_KINDS),
        fc.double({ min: 8, max: 30, noNaN: true }),
        fc.double({ min: 5, max: 30, noNaN: true }),
        fc.double({ min: 0.03, max: 0.97, noNaN: true }),
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        (kind, heightMm, widthMm, along, up) => {
          const shape = body(bodyShape(kind, { lengthMm: 80, heightMm, widthMm }));
          const x = 80 * along;
          const z = up * sectionAt(shape, x).halfHeightMm;
          const got = surfaceDistance(shape, x, z);
          const want = nearestOfMany(shape, x, z, 800, 240);
          // The nearest of a grid of points is never nearer, and misses by the square of its spacing at most.
          expect(got).toBeLessThanOrEqual(want + 1e-9);
          widest = Math.max(widest, want - got);
          expect(want - got).toBeLessThan(0.02);
        },
      ),
      { numRuns: turns, seed: 7 },
    );
    console.log(
      `surface distance: largest difference from a grid of points ${widest.toFixed(4)} mm in ${turns} places`,
    );
  });
});

describe('the line of a shank', () => {
  const round = bar(100, 10);
  test('from the belly, square and leaning', () => {
    expect(path(round, { xMm: 30 })).toMatchObject({ entryX: 30, entryZ: -10, throughMm: 20, grainAngleDeg: 90 });
    const leaning = path(round, { xMm: 30, slantDeg: 45 });
    expect(leaning.throughMm).toBeCloseTo(20 * Math.SQRT2, 9);
    expect(leaning.grainAngleDeg).toBeCloseTo(45, 9);
    expect(pointAt(leaning, Math.SQRT2)).toEqual({ x: expect.closeTo(31, 9), z: expect.closeTo(-9, 9) });
  });

  test('from back, nose and tail', () => {
    expect(pointAt(path(round, { face: 'back', xMm: 30 }), 4).z).toBeCloseTo(6, 9);
    expect(path(round, { face: 'nose' })).toMatchObject({ entryX: 0, throughMm: 100, grainAngleDeg: 0 });
    expect(path(round, { face: 'tail', zMm: 3 })).toMatchObject({ entryX: 100, entryZ: 3, throughMm: 100 });
    expect(path(round, { face: 'nose', slantDeg: 10 }).directionZ).toBeGreaterThan(0);
  });

  test('a pointed nose is met where the body is as high as the eye', () => {
    const pointed = ellipsoid(80, 10, 6);
    expect(path(pointed, { face: 'nose' }).entryX).toBe(0);
    const { entryX } = path(pointed, { face: 'nose', zMm: 6 });
    expect(sectionAt(pointed, entryX).halfHeightMm).toBeCloseTo(6, 9);
  });

  test('refusals', () => {
    const at = (place: Partial<HolePlace>) =>
      shankPath(round, { face: 'belly', xMm: 0, zMm: 0, slantDeg: 0, ...place });
    expect(at({ xMm: 120 })).toEqual({ ok: false, code: 'not-on-body' });
    expect(at({ xMm: Number.NaN })).toEqual({ ok: false, code: 'not-on-body' });
    expect(at({ face: 'nose', zMm: 11 })).toEqual({ ok: false, code: 'not-on-body' });
    expect(at({ xMm: 30, slantDeg: 86 })).toEqual({ ok: false, code: 'slant-outside' });
    expect(at({ xMm: 0, slantDeg: -30 })).toEqual({ ok: false, code: 'does-not-enter' });
  });
});

describe('cover', () => {
  const round = bar(100, 10);
  test('of a square hole grows with depth, then the sides and the far skin govern', () => {
    const { distancesMm, stepMm, throughMm } = coverProfile(round, path(round, { xMm: 50 }), 12);
    expect(distancesMm[0]).toBe(0);
    expect(distancesMm[8]).toBeCloseTo(8 * stepMm, 9);
    expect(throughMm).toBeCloseTo(20, 9);
    expect(leastCover(round, path(round, { xMm: 50 }), 5, 12)).toEqual({ coverMm: 5, depthMm: 5 });
  });

  test('of a slanted hole near the skin stays thin along its whole length', () => {
    const thin = path(round, { xMm: 30, slantDeg: 80 });
    const { coverMm, depthMm } = leastCover(round, thin, 5, 30);
    expect(coverMm).toBeCloseTo(5 * Math.cos((80 * Math.PI) / 180), 9);
    expect(depthMm).toBe(5);
  });

  test('has its least between the ends where the body has a waist', () => {
    const waisted = body([
      { xMm: 0, halfHeightMm: 8, halfWidthMm: 8 },
      { xMm: 20, halfHeightMm: 3, halfWidthMm: 3 },
      { xMm: 40, halfHeightMm: 8, halfWidthMm: 8 },
    ]);
    const { coverMm, depthMm } = leastCover(waisted, path(waisted, { face: 'nose' }), 6, 34);
    expect(depthMm).toBeCloseTo(20, 5);
    expect(coverMm).toBeCloseTo(3, 6);
  });

  test('refuses depths that do not rise', () => {
    expect(() => leastCover(round, path(round, { xMm: 50 }), 5, 4)).toThrow(RangeError);
  });
});

describe('holes', () => {
  const round = bar(100, 10);
  const hole = (place: Partial<HolePlace>, depthMm: number): Hole => ({
    path: path(round, place),
    diameterMm: 2,
    depthMm,
  });

  test('wood between parallel holes, across an end, and where they cross', () => {
    expect(woodBetween(hole({ xMm: 30 }, 10), hole({ xMm: 40 }, 10))).toBeCloseTo(8, 9);
    expect(woodBetween(hole({ face: 'nose' }, 20), hole({ xMm: 30 }, 12))).toBeCloseTo(8, 9);
    expect(woodBetween(hole({ face: 'nose' }, 40), hole({ xMm: 30 }, 12))).toBeCloseTo(-2, 9);
    expect(woodBetween(hole({ face: 'nose' }, 40), hole({ xMm: 30 }, 8))).toBeCloseTo(0, 9);
  });

  test('wood under the bottom of a hole, negative where it comes through', () => {
    expect(woodBelow(hole({ xMm: 50 }, 12))).toBeCloseTo(8, 9);
    expect(woodBelow(hole({ xMm: 50 }, 22))).toBeCloseTo(-2, 9);
  });
});
