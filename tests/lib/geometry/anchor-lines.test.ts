import { describe, expect, test } from 'vitest';
import { anchorLines, type DrawnAnchor, loadDirection } from '@/lib/geometry/anchor-lines';
import type { HolePlace } from '@/lib/geometry/shank-path';
import { bar } from './bodies';

const BAR = bar(100, 10);
const place = (more: Partial<HolePlace>): HolePlace => ({ face: 'belly', xMm: 40, zMm: 0, slantDeg: 0, ...more });
const anchor = (more: Partial<DrawnAnchor>): DrawnAnchor => ({
  id: 'a',
  name: 'Belly',
  kind: 'twisted-wire',
  place: place({}),
  embedmentMm: 12,
  drillDepthMm: 14,
  bitDiameterMm: 2,
  wireDiameterMm: 1,
  eyeInsideMm: 5,
  loadAngleDeg: 0,
  ...more,
});

describe('the lines of an anchor', () => {
  test('of a square belly hanger run straight up from the skin', () => {
    const lines = anchorLines(BAR, anchor({}));
    expect(lines?.entry).toEqual({ x: 40, z: -10 });
    expect(lines?.end).toEqual({ x: 40, z: 2 });
    expect(lines?.bottom).toEqual({ x: 40, z: 4 });
    expect(lines?.eye.centre.z).toBeCloseTo(-13, 12);
    // Dead below the axis a straight load pulls down.
    expect(lines?.load?.x).toBeCloseTo(0, 12);
    expect(lines?.load?.z).toBeCloseTo(-1, 12);
  });

  test('least cover of a shank that slants along the skin lies at its mouth side, in the middle plane', () => {
    const lines = anchorLines(BAR, anchor({ place: place({ slantDeg: 80 }), embedmentMm: 20 }));
    // 2.5 shank diameters of 2 mm down, 5 mm along the line: 5 cos 80 = 0.868 mm under the skin.
    expect(lines?.least?.depthMm).toBeCloseTo(5, 9);
    expect(lines?.least?.coverMm).toBeCloseTo(5 * Math.cos((80 * Math.PI) / 180), 6);
  });

  test('a shank no deeper than its mouth has no cover to judge', () => {
    expect(anchorLines(BAR, anchor({ embedmentMm: 4 }))?.least).toBeNull();
  });

  test('what is not entered is not drawn', () => {
    expect(anchorLines(BAR, anchor({ place: null }))).toBeNull();
    expect(anchorLines(BAR, anchor({ place: place({ xMm: 120 }) }))).toBeNull();
    const bare = anchorLines(BAR, anchor({ embedmentMm: null, drillDepthMm: null, loadAngleDeg: null }));
    expect(bare).toMatchObject({ load: null, bottom: null, least: null });
    expect(bare?.end).toEqual(bare?.entry);
  });

  test('a load square to the shank pulls back from the belly, forward from the back, up at the nose, down at the tail', () => {
    const square = (face: HolePlace['face'], directionX: number, directionZ: number) =>
      loadDirection({ directionX, directionZ }, face, 90);
    expect(square('belly', 0, 1).x).toBeCloseTo(1, 12);
    expect(square('back', 0, -1).x).toBeCloseTo(-1, 12);
    expect(square('nose', 1, 0).z).toBeCloseTo(1, 12);
    expect(square('tail', -1, 0).z).toBeCloseTo(-1, 12);
  });

  test('a load keeps its angle to the shank', () => {
    for (const angle of [0, 15, 45, 90]) {
      const load = loadDirection({ directionX: 0.6, directionZ: 0.8 }, 'belly', angle);
      expect(-(load.x * 0.6 + load.z * 0.8)).toBeCloseTo(Math.cos((angle * Math.PI) / 180), 12);
      expect(Math.hypot(load.x, load.z)).toBeCloseTo(1, 12);
    }
  });
});
