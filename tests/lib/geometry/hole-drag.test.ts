import { describe, expect, test } from 'vitest';
import { type DragSteps, draggedLoad, draggedMouth, draggedShank, roomFor } from '@/lib/geometry/hole-drag';
import { type HolePlace, pointAt, shankPath } from '@/lib/geometry/shank-path';
import { bar } from './bodies';

const BAR = bar(100, 10);
const STEPS: DragSteps = { depthMm: 0.5, placeMm: 0.5, angleDeg: 1 };
const place = (more: Partial<HolePlace>): HolePlace => ({ face: 'belly', xMm: 40, zMm: 0, slantDeg: 0, ...more });

describe('a shank dragged by its deep end', () => {
  test('ends where the finger is, on whole steps, from every face', () => {
    for (const face of ['belly', 'back', 'nose', 'tail'] as const) {
      for (const slantDeg of [-30, 0, 25]) {
        const path = shankPath(BAR, place({ face, slantDeg }));
        if (!path.ok) throw new Error(path.code);
        expect(draggedShank(BAR, place({ face }), pointAt(path.path, 8), STEPS)).toEqual({ slantDeg, depthMm: 8 });
      }
    }
  });

  test('goes no deeper than the wood and never out of it backwards', () => {
    expect(draggedShank(BAR, place({}), { x: 40, z: 300 }, STEPS)).toEqual({ slantDeg: 0, depthMm: 20 });
    const behind = draggedShank(BAR, place({}), { x: 60, z: -30 }, STEPS);
    expect(behind).toMatchObject({ slantDeg: 85 });
    expect(behind?.depthMm).toBeGreaterThan(0);
  });

  test('stays as it was where the hole is not on the body', () => {
    expect(draggedShank(BAR, place({ xMm: 140 }), { x: 40, z: 0 }, STEPS)).toBeNull();
  });

  test('depth in whole sixteenths', () => {
    const sixteenth = 25.4 / 16;
    expect(roomFor({ throughMm: 100 }, 12.5, sixteenth)).toBe(8 * sixteenth);
    expect(roomFor({ throughMm: 10 }, 50, sixteenth)).toBe(6 * sixteenth);
    expect(roomFor({ throughMm: 1 }, 50, sixteenth)).toBe(sixteenth);
  });
});

describe('a mouth that is dragged', () => {
  test('slides along belly and back, and up and down on the ends', () => {
    expect(draggedMouth(BAR, place({}), { x: 47.3, z: 90 }, STEPS)).toEqual(place({ xMm: 47.5 }));
    expect(draggedMouth(BAR, place({ face: 'nose' }), { x: -9, z: 3.2 }, STEPS)).toEqual(
      place({ face: 'nose', zMm: 3 }),
    );
  });

  test('never leaves the body', () => {
    expect(draggedMouth(BAR, place({}), { x: 400, z: 0 }, STEPS)?.xMm).toBe(100);
    expect(draggedMouth(BAR, place({ face: 'nose' }), { x: 0, z: 12 }, STEPS)).toBeNull();
  });
});

test('a load dragged round the eye reads its angle to the shank, 0 to 90', () => {
  const up = { directionX: 0, directionZ: 1 };
  expect(draggedLoad(up, { x: 0, z: -5 }, STEPS)).toBe(0);
  expect(draggedLoad(up, { x: 5, z: -5 }, STEPS)).toBe(45);
  expect(draggedLoad(up, { x: -5, z: -5 }, STEPS)).toBe(45);
  expect(draggedLoad(up, { x: 5, z: 5 }, STEPS)).toBe(90);
  expect(draggedLoad(up, { x: 0, z: 0 }, STEPS)).toBe(0);
});
