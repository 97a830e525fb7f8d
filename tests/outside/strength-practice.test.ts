import { describe, expect, test } from 'vitest';
import type { Body } from '@/lib/geometry/body';
import { bodyFromProfile } from '@/lib/geometry/body';
import { bodyShape } from '@/lib/geometry/body-shapes';
import { coverProfile, leastCover } from '@/lib/geometry/cover';
import { type HolePlace, shankPath } from '@/lib/geometry/shank-path';
import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { shearDiameterMm } from '@/lib/strength/bond-factors';
import { gluedComparisons } from '@/lib/strength/comparisons';
import { demand } from '@/lib/strength/demand';
import { USUAL_FACTOR } from '@/lib/strength/factor-of-safety';
import type { LineType } from '@/lib/strength/fishing-line';
import { gluedShankOf } from '@/lib/strength/twisted-wire-strength';
import { splittingStressMpa } from '@/lib/strength/wood-splitting';
import { inches, MPA_PER_PSI, poundsForce, psi } from '@/lib/units/force-and-length';
import { lbf, practice, SETTINGS, wood } from '../lib/strength/designs';
import { checkAll } from './strength-check';

function strength(design: TwistedWireAnchor) {
  const result = anchorStrength(design, SETTINGS);
  if (result.straight.kind !== 'estimate' || result.atAngle.kind !== 'estimate') throw new Error('no estimate');
  return { straight: result.straight, atAngle: result.atAngle, bends: result.bendsAtAngle, ways: result.ways };
}

function placed(body: Body, at: HolePlace, depthIn: number, more: Partial<TwistedWireAnchor> = {}) {
  const path = shankPath(body, at);
  if (!path.ok) throw new Error(path.code);
  const cover = coverProfile(body, path.path, 40);
  return { design: practice('yellow-poplar', depthIn, { cover, ...more }), path: path.path };
}

function jerkbait(): Body {
  const check = bodyFromProfile(bodyShape('jerkbait', { lengthMm: 150, heightMm: 44, widthMm: 30 }), 150);
  if (!check.ok) throw new Error(check.code);
  return check.body;
}

// Common practice, no source: doubled, twisted .041 in stainless in a 5/64 in hole in poplar, slow epoxy, 1/4 in deep,
// held about 99 lbf, the worst of three.
describe('the one value of common practice', () => {
  test('the median estimate at 1/4 in lies within 10 % of 99 lbf', () => {
    const { straight } = strength(practice('yellow-poplar', 0.25));
    console.log(
      `1/4 in in yellow-poplar: median ${lbf(straight.medianN).toFixed(1)}, lower ${lbf(straight.lowerN).toFixed(1)} lbf`,
    );
    expect(Math.abs(lbf(straight.medianN) / 99 - 1)).toBeLessThan(0.1);
    expect(straight.governs).toBe('bond-pull-out');
  });

  test('deeper holds more, by less and less', () => {
    const at = (depth: number) => lbf(strength(practice('yellow-poplar', depth)).straight.medianN);
    const gains = [0.25, 0.5, 0.75, 1].map((depth) => at(depth + 0.25) - at(depth));
    expect(gains.every((gain, i) => gain > 0 && gain < (gains[i - 1] ?? Number.POSITIVE_INFINITY))).toBe(true);
  });

  test('balsa at 1/2 in comes out at a quarter of poplar', () => {
    const poplar = strength(practice('yellow-poplar', 0.5)).straight;
    const balsa = strength(practice('balsa', 0.5)).straight;
    console.log(
      `1/2 in: yellow-poplar ${lbf(poplar.medianN).toFixed(1)} / ${lbf(poplar.lowerN).toFixed(1)}, balsa ${lbf(balsa.medianN).toFixed(1)} / ${lbf(balsa.lowerN).toFixed(1)} lbf`,
    );
    expect(balsa.medianN / poplar.medianN).toBeCloseTo(0.25, 2);
  });

  const lines: readonly (readonly [string, number, LineType, boolean])[] = [
    ['an ordinary bass line, 17 lb mono', 17, 'mono', true],
    ['a heavy bass line, 30 lb braid', 30, 'braid', true],
    ['a heavy saltwater line, 80 lb braid', 80, 'braid', false],
    ['a heavy saltwater line, 80 lb mono', 80, 'mono', false],
  ];
  test.each(lines)('half an inch in poplar against %s', (what, label, type, holds) => {
    const { straight } = strength(practice('yellow-poplar', 0.5));
    const asked = demand({ labelN: poundsForce(label), type, knotShare: null, dragShare: null }, null).governing;
    const factor = straight.lowerN / asked.loadN;
    console.log(
      `${what}: ${lbf(straight.lowerN).toFixed(1)} over ${lbf(asked.loadN).toFixed(1)} lbf (${asked.name}) is ${factor.toFixed(2)}, asked ${USUAL_FACTOR}`,
    );
    expect(factor >= USUAL_FACTOR).toBe(holds);
  });
});

// Computed elsewhere from the same model, .041 in pair, d 0.082 in, saturating over 1.0 in; median / lower, lbf.
describe('the default estimate in other woods', () => {
  const table: readonly (readonly [string, readonly number[]])[] = [
    ['yellow-poplar', [97.6, 54.9, 184.2, 103.6, 303.5, 170.7]],
    ['basswood', [81.2, 45.7, 153.2, 86.2, 252.5, 142]],
    ['northern-white-cedar', [69.7, 39.2, 131.5, 74, 216.8, 121.9]],
    ['atlantic-white-cedar', [65.6, 36.9, 123.8, 69.6, 204, 114.8]],
    ['balsa', [24.6, 13.8, 46.4, 26.1, 76.5, 43]],
    ['jelutong', [68.9, 38.7, 130, 73, 214, 121]],
  ];
  checkAll(
    table.flatMap(([id, loads]) =>
      [0.25, 0.5, 1].flatMap((depth, i) => {
        const bond = strength(practice(id, depth)).ways.find(({ way }) => way === 'bond-pull-out')?.result;
        const [median, lower] = bond?.kind === 'estimate' ? [lbf(bond.medianN), lbf(bond.lowerN)] : [0, 0];
        const [wantMedian = 0, wantLower = 0] = loads.slice(2 * i);
        const within = 0.003 * wantMedian;
        return [
          { status: 'derived', what: `${id} ${depth} in, median`, got: median, want: wantMedian, within },
          { status: 'derived', what: `${id} ${depth} in, lower`, got: lower, want: wantLower, within },
        ] as const;
      }),
    ),
  );
});

// The published equations at the practice value's size, hole diameter, 1/4 in, lbf; the equations' own status stands
// beside them in the app.
describe('published equations bracket the practice value', () => {
  const shank = gluedShankOf(practice('yellow-poplar', 0.25, { wood: { ...wood('yellow-poplar'), densityKgM3: 470 } }));
  const beside = new Map(gluedComparisons(shank, SETTINGS.lower).map(({ id, loadN }) => [id, lbf(loadN)]));
  const rows = [
    ['steiger', 100.3, 0.1],
    ['env-1995-2', 95, 0.6],
    ['wood-sleeve', 73, 0.06],
    ['aicher-epoxy', 67.2, 0.06],
    ['aicher-prf', 48.2, 0.06],
    ['din-1052', 35.6, 0.06],
    ['wood-screw', 56.8, 0.6],
    ['drift-pin', 23.9, 0.06],
    ['nail', 18.4, 0.06],
  ] as const;
  checkAll(rows.map(([id, want, within]) => ({ status: 'derived', what: id, got: beside.get(id) ?? 0, want, within })));

  test('means lie round 99 lbf, characteristic values below it', () => {
    const all = gluedComparisons(shank, SETTINGS.lower);
    console.log(all.map(({ id, basis, loadN }) => `${id} ${basis} ${lbf(loadN).toFixed(1)}`).join(', '));
    for (const { id, basis, loadN } of all) {
      if (basis === 'characteristic') expect(lbf(loadN), id).toBeLessThan(99);
    }
    expect(beside.get('steiger')).toBeGreaterThan(99);
  });
});

describe('splitting', () => {
  checkAll([
    {
      status: 'derived',
      what: 'poplar, 5/64 in hole, 0.10 in over it, psi',
      got: splittingStressMpa(psi(540), 0.1, 0.0781) / MPA_PER_PSI,
      want: 2394,
      within: 3,
    },
    {
      status: 'derived',
      what: 'western redcedar: wood needed for 1342 psi, in',
      got: splittingStressMpa(psi(220), 0.138, 0.0781) / MPA_PER_PSI,
      want: 1342,
      within: 8,
    },
  ]);
});

describe('a slanted shank near the skin', () => {
  const body = jerkbait();
  const square = placed(body, { face: 'belly', xMm: 60, zMm: 0, slantDeg: 0 }, 0.5);
  const slanted = placed(body, { face: 'belly', xMm: 90, zMm: 0, slantDeg: 80 }, 1.25);
  const covered = shearDiameterMm(2 * square.design.wire.diameterMm, square.design.bitDiameterMm);

  test('1 1/4 in close under the skin is weaker than 1/2 in square in solid wood, straight pull', () => {
    const short = strength(square.design).straight;
    const long = strength(slanted.design).straight;
    const thin = leastCover(body, slanted.path, 2.5 * covered, inches(1.25));
    console.log(
      `1 1/4 in at 80 degrees, cover ${(thin.coverMm / 25.4).toFixed(3)} in: ${lbf(long.medianN).toFixed(1)} / ${lbf(long.lowerN).toFixed(1)} lbf (${long.governs}); 1/2 in square: ${lbf(short.medianN).toFixed(1)} / ${lbf(short.lowerN).toFixed(1)} lbf (${short.governs})`,
    );
    expect(long.lowerN).toBeLessThan(short.lowerN);
    expect(long.medianN).toBeLessThan(short.medianN);
    expect(long.governs).toBe('wood-splitting');
    expect(short.medianN / strength(practice('yellow-poplar', 0.5)).straight.medianN).toBeCloseTo(1, 4);
  });

  test('pulled square to the body it is weaker still: the load tears it out through its cover', () => {
    const long = strength({ ...slanted.design, loadAngleDeg: 80 }).atAngle;
    const short = strength(square.design).atAngle;
    console.log(
      `the same pulled straight away from the belly: ${lbf(long.medianN).toFixed(1)} / ${lbf(long.lowerN).toFixed(1)} lbf (${long.governs})`,
    );
    expect(long.governs).toBe('tear-out');
    expect(long.lowerN).toBeLessThan(0.5 * short.lowerN);
  });
});

test('a belly hanger pulled square bends early and pulls out at less than half of its straight strength', () => {
  const straight = strength(practice('yellow-poplar', 0.5));
  const square = strength(practice('yellow-poplar', 0.5, { loadAngleDeg: 90 }));
  if (square.bends?.kind !== 'estimate') throw new Error('no estimate');
  console.log(
    `1/2 in belly hanger: straight ${lbf(straight.straight.medianN).toFixed(1)} / ${lbf(straight.straight.lowerN).toFixed(1)}, square ${lbf(square.atAngle.medianN).toFixed(1)} / ${lbf(square.atAngle.lowerN).toFixed(1)}, first bends at ${lbf(square.bends.medianN).toFixed(1)} / ${lbf(square.bends.lowerN).toFixed(1)} lbf`,
  );
  expect(square.atAngle.medianN).toBeLessThan(0.5 * straight.straight.medianN);
  expect(square.bends.medianN).toBeLessThan(0.4 * square.atAngle.medianN);
});
