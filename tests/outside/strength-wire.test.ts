import { describe } from 'vitest';
import { twistedPair } from '@/lib/geometry/twisted-pair';
import { resolveWire } from '@/lib/materials/resolved-wire';
import { springWireRow } from '@/lib/materials/spring-wire-tensile';
import { firstMovement, foundationDecay, longShankMm } from '@/lib/strength/beam-on-foundation';
import { hookStresses, openEyeStresses, rectangleNeutralMm, roundNeutralMm } from '@/lib/strength/curved-beam';
import { hankinson, quadraticCombination } from '@/lib/strength/load-angle';
import { closedRingOvalsN, openEyeOpensN, plasticMomentNmm, ringUnderPull } from '@/lib/strength/ring-plastic';
import { firstBendingN, hingeN, hingeTakesOverMm, rigidTurnN } from '@/lib/strength/side-load';
import { DEFAULT_STRENGTH_SETTINGS } from '@/lib/strength/strength-settings';
import { strandBreakN, wireInEye } from '@/lib/strength/wire-in-eye';
import { inches, MPA_PER_PSI, NMM_PER_INCH_POUND, poundsForce, psi } from '@/lib/units/force-and-length';
import { checkAll } from './strength-check';

const lbf = (loadN: number) => loadN / poundsForce(1);
const inLbf = (momentNmm: number) => momentNmm / NMM_PER_INCH_POUND;

// ASTM A313 type 302 class 1 / 304, spring temper, ksi by diameter "up to and including", seen as a table.
describe('ASTM A313 spring wire', () => {
  const rows = [
    [0.02, 300, 330],
    [0.022, 296, 326],
    [0.024, 292, 322],
    [0.026, 291, 320],
    [0.028, 289, 318],
    [0.031, 285, 315],
    [0.034, 282, 310],
    [0.037, 280, 308],
    [0.041, 275, 304],
    [0.045, 272, 300],
    [0.05, 267, 295],
    [0.054, 265, 293],
    [0.058, 261, 289],
    [0.063, 258, 285],
    [0.07, 252, 281],
    [0.075, 250, 278],
    [0.08, 246, 275],
  ] as const;
  checkAll(
    rows.flatMap(([diameter, least, greatest]) => {
      const row = springWireRow(inches(diameter));
      return [
        {
          status: 'seen',
          what: `${diameter} in, least ksi`,
          got: (row?.leastMpa ?? 0) / MPA_PER_PSI / 1000,
          want: least,
          within: 1e-9,
        },
        {
          status: 'seen',
          what: `${diameter} in, greatest ksi`,
          got: (row?.greatestMpa ?? 0) / MPA_PER_PSI / 1000,
          want: greatest,
          within: 1e-9,
        },
      ] as const;
    }),
  );
});

// One straight strand at the least tensile strength: pounds computed from the ksi above; soft at 75 ksi from memory.
describe('breaking load of a strand, lbf', () => {
  const strand = (diameter: number, temper: 'spring' | 'soft') => {
    const wire = resolveWire(
      { alloy: 'stainless-302-304', temper, diameterMm: inches(diameter), sources: {} },
      inches(diameter),
    );
    return wire.ok ? lbf(strandBreakN(wire.wire)) : Number.NaN;
  };
  const rows = [
    [0.02, 94, 24],
    [0.024, 132, 34],
    [0.028, 178, 46],
    [0.032, 227, 60],
    [0.035, 269, 72],
    [0.041, 363.1, 99],
    [0.047, 463, 130],
    [0.051, 541, 153],
    [0.062, 779, 226],
  ] as const;
  checkAll(
    rows.flatMap(([diameter, spring, soft]) => [
      { status: 'derived', what: `${diameter} in spring`, got: strand(diameter, 'spring'), want: spring, within: 0.7 },
      {
        status: 'from memory',
        what: `${diameter} in soft, 75 ksi`,
        got: strand(diameter, 'soft'),
        want: soft,
        within: 0.7,
      },
    ]),
  );
});

describe('twisted pair of .041 in', () => {
  const pair = (turns: number) => twistedPair(inches(0.041), inches(1 / turns));
  const spring = resolveWire(
    { alloy: 'stainless-302-304', temper: 'spring', diameterMm: inches(0.041), sources: {} },
    inches(0.041),
  );
  if (!spring.ok) throw new Error(spring.code);
  const eye = wireInEye({ ...spring.wire, tensileMpa: psi(275_000) }, inches(1 / 3.5), DEFAULT_STRENGTH_SETTINGS);
  checkAll([
    {
      status: 'derived',
      what: '3.5 turns per inch, degrees',
      got: pair(3.5).strandAngleDeg,
      want: 24.27,
      within: 0.005,
    },
    { status: 'derived', what: '4 turns per inch, degrees', got: pair(4).strandAngleDeg, want: 27.26, within: 0.005 },
    { status: 'derived', what: '4 turns per inch, take-up', got: pair(4).takeUp, want: 1.1249, within: 0.00005 },
    { status: 'derived', what: '7 turns per inch, degrees', got: pair(7).strandAngleDeg, want: 42.04, within: 0.005 },
    { status: 'derived', what: '7 turns per inch, take-up', got: pair(7).takeUp, want: 1.3465, within: 0.0005 },
    {
      status: 'derived',
      what: 'closed eye at 275 ksi, bend 0.75, lbf',
      got: eye.kind === 'estimate' ? lbf(eye.medianN) : 0,
      want: 496,
      within: 0.6,
    },
  ]);
});

// Thin ring under two opposite pulls: W R / pi at the load (Mechanical Engineer's Data Handbook p. 29, seen) and
// -0.1817 W R at the side (Roark ring case 2 reduced to 90 degrees, seen); movements from memory.
describe('ring of .041 in wire, 0.11425 in mean radius, 50 lbf', () => {
  const ring = ringUnderPull(poundsForce(50), inches(0.11425), inches(0.041), psi(28e6));
  const unit = ringUnderPull(1, 1, 1, 1);
  checkAll([
    {
      status: 'seen',
      what: 'moment at the load over W R, 1/pi',
      got: unit.atLoadNmm,
      want: 1 / Math.PI,
      within: 1e-12,
    },
    { status: 'seen', what: 'moment at the side over W R', got: unit.atSideNmm, want: 0.1817, within: 0.00005 },
    {
      status: 'from memory',
      what: 'moment at the load, in-lbf',
      got: inLbf(ring.atLoadNmm),
      want: 1.8183,
      within: 0.00005,
    },
    {
      status: 'from memory',
      what: 'moment at the side, in-lbf',
      got: inLbf(ring.atSideNmm),
      want: 1.0379,
      within: 0.00005,
    },
    { status: 'from memory', what: 'elongation, in', got: ring.elongationMm / 25.4, want: 0.0028564, within: 1e-6 },
    { status: 'from memory', what: 'narrowing, in', got: ring.narrowingMm / 25.4, want: 0.002623, within: 1e-6 },
    {
      status: 'derived',
      what: 'plastic moment at 206 ksi, in-lbf',
      got: inLbf(plasticMomentNmm(psi(206_000), inches(0.041))),
      want: 2.366,
      within: 0.0006,
    },
    {
      status: 'derived',
      what: 'closed ring ovals, lbf',
      got: lbf(closedRingOvalsN(psi(206_000), inches(0.041), inches(0.11425))),
      want: 82.8,
      within: 0.06,
    },
    {
      status: 'derived',
      what: 'open eye opens, lbf',
      got: lbf(openEyeOpensN(psi(206_000), inches(0.041), inches(0.11425))),
      want: 20.6,
      within: 0.005,
    },
    {
      status: 'derived',
      what: 'soft closed ring, lbf',
      got: lbf(closedRingOvalsN(psi(35_000), inches(0.041), inches(0.11425))),
      want: 14.1,
      within: 0.06,
    },
    {
      status: 'derived',
      what: 'soft open eye, lbf',
      got: lbf(openEyeOpensN(psi(35_000), inches(0.041), inches(0.11425))),
      want: 3.5,
      within: 0.05,
    },
  ]);
});

// Shigley fig. 3-35: hook of 0.75 by 4 in, inside radius 2 in; the stresses were seen, the load of 5000 lbf is from memory.
describe('hook as a curved beam', () => {
  const neutral = rectangleNeutralMm(2, 4);
  const stress = hookStresses({ areaMm2: 3, centreMm: 4, neutralMm: neutral, insideMm: 2, outsideMm: 6 }, 5000);
  const eye = openEyeStresses(0.11425, 0.041, 10);
  checkAll([
    { status: 'seen', what: 'inside, kpsi', got: stress.insideMpa / 1000, want: 16.9, within: 0.05 },
    { status: 'seen', what: 'outside, kpsi', got: stress.outsideMpa / 1000, want: -5.63, within: 0.005 },
    { status: 'derived', what: 'neutral radius, in', got: neutral, want: 3.64096, within: 0.000005 },
    { status: 'derived', what: 'inside, psi', got: stress.insideMpa, want: 16_901, within: 1 },
    { status: 'derived', what: 'outside, psi', got: stress.outsideMpa, want: -5634, within: 1 },
    {
      status: 'derived',
      what: 'round wire, neutral radius',
      got: roundNeutralMm(0.11425, 0.041),
      want: 0.113323,
      within: 5e-7,
    },
    { status: 'derived', what: 'round wire inside, psi', got: eye.insideMpa, want: 202_448, within: 20 },
    { status: 'derived', what: 'round wire outside, psi', got: eye.outsideMpa, want: -140_849, within: 20 },
  ]);
});

// Johansen's yield theory for a pin that stands out, in pounds and inches; Riberholt's hinge case seen in Lippert 2002.
describe('sideways load on a .082 in shank, G 0.42', () => {
  const q = 275.87;
  const pin = (lengthMm: number, armMm: number, plasticNmm = 4.7326) => ({
    lengthMm,
    armMm,
    crushNPerMm: q,
    plasticNmm,
  });
  checkAll([
    { status: 'derived', what: 'l 0.25 e 0.12 turns', got: rigidTurnN(pin(0.25, 0.12)), want: 16.58, within: 0.005 },
    {
      status: 'derived',
      what: 'l 0.25 e 0.12 first bending',
      got: firstBendingN(pin(0.25, 0.12)),
      want: 16.58,
      within: 0.005,
    },
    { status: 'derived', what: 'l 0.5 e 0.12 turns', got: rigidTurnN(pin(0.5, 0.12)), want: 42.23, within: 0.005 },
    { status: 'derived', what: 'l 0.5 e 0.12 hinge', got: hingeN(pin(0.5, 0.12)), want: 27.78, within: 0.005 },
    { status: 'derived', what: 'l 0.5 e 0 turns', got: rigidTurnN(pin(0.5, 0)), want: 57.13, within: 0.005 },
    { status: 'derived', what: 'l 0.5 e 0 hinge', got: hingeN(pin(0.5, 0)), want: 51.1, within: 0.005 },
    {
      status: 'derived',
      what: 'soft wire, e 0.12 hinge',
      got: hingeN(pin(0.5, 0.12, 0.804)),
      want: 6.13,
      within: 0.01,
    },
    {
      status: 'derived',
      what: 'the hinge takes over, in',
      got: hingeTakesOverMm({ armMm: 0.12, crushNPerMm: q, plasticNmm: 4.7326 }),
      want: 0.363,
      within: 0.0005,
    },
    {
      status: 'from memory',
      what: 'EN 1995 0.4 f h t d: turning without arm over q l',
      got: rigidTurnN(pin(1, 0)) / q,
      want: 0.4142,
      within: 0.00005,
    },
  ]);
});

describe('beam on elastic foundation', () => {
  const shank = { foundationMpa: 73_839.36, bendingNmm2: 7.76772 };
  const moved = firstMovement(shank, 20, 0.12);
  const square = firstMovement(shank, 1, 0);
  checkAll([
    { status: 'derived', what: 'decay, 1/in', got: foundationDecay(shank), want: 6.98206, within: 0.000005 },
    { status: 'derived', what: 'movement at the surface, in', got: moved.surfaceMm, want: 0.0069513, within: 5e-8 },
    { status: 'derived', what: 'greatest moment, in-lbf', got: moved.greatestNmm, want: 2.86097, within: 0.000005 },
    { status: 'derived', what: 'and where, in', got: moved.atMm, want: 0.051, within: 0.0005 },
    { status: 'derived', what: 'long from, in', got: longShankMm(shank), want: 0.45, within: 0.0005 },
    {
      status: 'from memory',
      what: 'Hetenyi 0.3224 P / beta',
      got: square.greatestNmm * foundationDecay(shank),
      want: 0.3224,
      within: 0.00005,
    },
  ]);
});

// R_ax 184.2, R_lat 27.78 lbf at angles from the shank: quadratic and Hankinson.
describe('first bending at an angle, lbf', () => {
  const rows = [
    [0, 184.2, 184.2],
    [15, 93.5, 133.8],
    [30, 53.8, 76.5],
    [45, 38.8, 48.3],
    [60, 32, 35.3],
    [75, 28.7, 29.5],
    [90, 27.8, 27.8],
  ] as const;
  checkAll(
    rows.flatMap(([degrees, quadratic, other]) => [
      {
        status: 'derived',
        what: `${degrees} degrees, quadratic`,
        got: quadraticCombination(184.2, 27.78, degrees),
        want: quadratic,
        within: 0.06,
      },
      {
        status: 'derived',
        what: `${degrees} degrees, Hankinson`,
        got: hankinson(184.2, 27.78, degrees),
        want: other,
        within: 0.06,
      },
    ]),
  );
});
