import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bodyFromProfile } from '@/lib/geometry/body';
import { BODY_KINDS, bodyShape } from '@/lib/geometry/body-shapes';
import { type CoverProfile, coverProfile } from '@/lib/geometry/cover';
import { shankPath } from '@/lib/geometry/shank-path';
import type { AnchorDesign, ScrewEyeAnchor, TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { inches } from '@/lib/units/force-and-length';
import { practice, SETTINGS, wire, wood } from './designs';
import { turns } from './soak';

const RUNS = turns(20_000, 400);

/** Everything of an anchor that must not fall. */
function loads(design: AnchorDesign): readonly number[] {
  const { straight, atAngle, bendsAtAngle } = anchorStrength(design, SETTINGS);
  return [straight, atAngle, bendsAtAngle].flatMap((one) =>
    one?.kind === 'estimate' ? [one.medianN, one.lowerN] : [Number.NaN, Number.NaN],
  );
}

/** No load of `better` is below that of `worse`, to a rounding; a load without estimate says nothing. */
function expectNoLess(better: AnchorDesign, worse: AnchorDesign): void {
  const more = loads(better);
  loads(worse).forEach((load, i) => {
    const now = more[i] ?? Number.NaN;
    if (Number.isNaN(load) || Number.isNaN(now)) return;
    expect(now).toBeGreaterThanOrEqual(load * (1 - 1e-8));
  });
}

const unit = fc.double({ min: 0, max: 1, noNaN: true });
const between = (low: number, high: number, share: number) => low + share * (high - low);

/** A cover profile along a hole in a real body, or ample wood. */
const cover = fc
  .tuple(fc.constantFrom(...BODY_KINDS), unit, unit, fc.double({ min: -80, max: 80, noNaN: true }), fc.boolean())
  .map(([kind, thick, along, slantDeg, isAmple]): CoverProfile | null => {
    const heightMm = between(14, 50, thick);
    const check = bodyFromProfile(bodyShape(kind, { lengthMm: 120, heightMm, widthMm: 0.7 * heightMm }), 120);
    if (isAmple || !check.ok) return null;
    const path = shankPath(check.body, { face: 'belly', xMm: between(5, 115, along), zMm: 0, slantDeg });
    return path.ok ? coverProfile(check.body, path.path, 45) : null;
  });

const design = fc
  .tuple(
    fc.constantFrom('yellow-poplar', 'western-redcedar', 'balsa', 'sugar-maple', 'baldcypress'),
    unit,
    unit,
    unit,
    unit,
    cover,
  )
  .map(([id, diameter, depth, angle, bit, along]): TwistedWireAnchor => {
    const size = between(0.02, 0.062, diameter);
    return practice(id, between(0.19, 1.5, depth), {
      wire: wire(size),
      bitDiameterMm: inches(between(1.7 * size, 2.6 * size, bit)),
      loadAngleDeg: between(0, 90, angle),
      cover: along,
      eye: { insideMm: inches(3 / 16), isClosed: angle < 0.9 },
    });
  });

function holdsFor(property: (one: TwistedWireAnchor, share: number) => void): void {
  fc.assert(fc.property(design, unit, property), { numRuns: RUNS, seed: 11 });
}

describe(`strength of a glued wire, ${RUNS} random anchors each`, () => {
  test('never falls with depth', () => {
    holdsFor((one, more) => {
      expectNoLess({ ...one, embedmentMm: between(one.embedmentMm, inches(1.5), more) }, one);
    });
  });

  test('never falls with density', () => {
    holdsFor((one, more) => {
      const density = one.wood.densityKgM3;
      const at = (kgM3: number) => ({ ...one, wood: wood('yellow-poplar', kgM3) });
      expectNoLess(at(between(density, 780, more)), at(density));
    });
  });

  test('never falls with wire size in the same hole', () => {
    holdsFor((one, more) => {
      const size = one.wire.diameterMm / 25.4;
      expectNoLess({ ...one, wire: wire(between(size, 0.062, more)) }, one);
    });
  });

  test('never rises with a worse angle', () => {
    holdsFor((one, more) => {
      expectNoLess(one, { ...one, loadAngleDeg: between(one.loadAngleDeg, 90, more) });
    });
  });

  test('never rises with thinner cover', () => {
    holdsFor((one, share) => {
      const along = one.cover;
      if (along === null) return;
      const thinner = { ...along, distancesMm: along.distancesMm.map((mm) => mm * share) };
      expectNoLess(one, { ...one, cover: thinner });
    });
  });

  test('never rises with warmth, and an open eye never beats a closed one', () => {
    holdsFor((one, more) => {
      expectNoLess(one, { ...one, temperatureC: between(21, 60, more) });
      const open = { ...one, eye: { ...one.eye, isClosed: false } };
      expectNoLess({ ...one, eye: { ...one.eye, isClosed: true } }, open);
    });
  });

  test('the lower value is never above the median, and both are finite and not negative', () => {
    holdsFor((one) => {
      const { straight, atAngle, ways } = anchorStrength(one, SETTINGS);
      for (const result of [straight, atAngle, ...ways.map((way) => way.result)]) {
        if (result.kind !== 'estimate') continue;
        expect(Number.isFinite(result.medianN) && Number.isFinite(result.lowerN)).toBe(true);
        expect(result.lowerN).toBeGreaterThanOrEqual(0);
        expect(result.lowerN).toBeLessThanOrEqual(result.medianN * (1 + 1e-12));
      }
    });
  });
});

test('a screw eye never falls with thread, diameter or density, nor rises with a worse angle', () => {
  fc.assert(
    fc.property(unit, unit, unit, unit, (thread, diameter, angle, more) => {
      const one: ScrewEyeAnchor = {
        kind: 'screw-eye',
        wood: wood('yellow-poplar'),
        threadDiameterMm: between(1, 4, diameter),
        threadMm: between(5, 25, thread),
        eye: { insideMm: 4, isClosed: false },
        wire: wire(0.041),
        statedStrengthN: null,
        loadAngleDeg: between(0, 90, angle),
        cover: null,
      };
      expectNoLess({ ...one, threadMm: one.threadMm + 5 * more }, one);
      expectNoLess({ ...one, wood: wood('sugar-maple') }, one);
      expectNoLess(one, { ...one, loadAngleDeg: between(one.loadAngleDeg, 90, more) });
    }),
    { numRuns: RUNS, seed: 12 },
  );
});
