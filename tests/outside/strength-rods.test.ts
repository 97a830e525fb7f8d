import { describe, expect, test } from 'vitest';
import {
  aicherPrfMpa,
  dinBondMpa,
  envBondMpa,
  equivalentRodMm,
  kangasBondMpa,
  riberholtN,
  steigerMeanMpa,
} from '@/lib/strength/rod-equations';
import {
  fishStressPeaks,
  interfaceStiffness,
  jigStressPeaks,
  lapPeakRatio,
  transferLengthMm,
} from '@/lib/strength/shear-lag';
import { checkAll } from './strength-check';

// Summaries in Lippert 2002 (Univ. Stuttgart), pp. 37-48, of the equations for glued-in rods.
describe('glued-in rods', () => {
  checkAll([
    {
      status: 'seen',
      what: 'Aicher PRF, M20, hole 21, l 800, MPa',
      got: aicherPrfMpa(21, 800),
      want: 3.62,
      within: 0.005,
    },
    {
      status: 'seen',
      what: 'the same as printed load, kN, which needs the hole of 21',
      got: (aicherPrfMpa(21, 800) * Math.PI * 21 * 800) / 1000,
      want: 191.2,
      within: 0.06,
    },
    { status: 'seen', what: 'E DIN 1052 below 250 mm', got: dinBondMpa(200), want: 4, within: 0 },
    { status: 'seen', what: 'E DIN 1052, 5.25 - 0.005 l at 300', got: dinBondMpa(300), want: 3.75, within: 1e-12 },
    { status: 'seen', what: 'E DIN 1052, 3.5 - 0.0015 l at 600', got: dinBondMpa(600), want: 2.6, within: 1e-12 },
    { status: 'derived', what: 'E DIN 1052 joins at 250', got: dinBondMpa(250), want: 4, within: 1e-12 },
    { status: 'derived', what: 'E DIN 1052 joins at 500', got: dinBondMpa(500), want: 3.5 - 0.75, within: 1e-12 },
    {
      status: 'derived',
      what: 'ENV: the hole counts up to 1.25 rods',
      got: equivalentRodMm(12, 14),
      want: 14,
      within: 0,
    },
    {
      status: 'derived',
      what: 'ENV: hole 14, rod 12, 380 kg/m3, MPa',
      got: envBondMpa(12, 14, 380),
      want: 5.2436,
      within: 0.00005,
    },
    {
      status: 'derived',
      what: 'Steiger: slenderness 10, 480 kg/m3',
      got: steigerMeanMpa(10, 100, 480),
      want: 7.8,
      within: 1e-12,
    },
    {
      status: 'derived',
      what: 'Steiger: slenderness 20, 400 kg/m3',
      got: steigerMeanMpa(10, 200, 400),
      want: 5.5494,
      within: 0.00005,
    },
    {
      status: 'derived',
      what: 'Riberholt brittle, d 20, 400, just under 200',
      got: riberholtN(true, 20, 200 - 1e-9, 400),
      want: 59_200,
      within: 0.5,
    },
    {
      status: 'derived',
      what: 'Riberholt brittle, d 20, 400, long branch',
      got: riberholtN(true, 20, 200, 400),
      want: 58_831,
      within: 0.5,
    },
    { status: 'derived', what: 'Kangas d 12, l 240, MPa', got: kangasBondMpa(12, 240), want: 5.2975, within: 0.0005 },
    {
      status: 'derived',
      what: 'Riberholt 0.52 over root 200 is his 0.037',
      got: riberholtN(true, 1, 200, 1) / 200,
      want: 0.037,
      within: 0.00025,
    },
  ]);
});

// Volkersen's lap: lecture formula sheets, two 2 mm adherends of 70 GPa, glue of 1 GPa and 0.2 mm.
describe('shear lag', () => {
  const lap = (overlapMm: number) =>
    lapPeakRatio({
      firstStiffness: 140_000,
      secondStiffness: 140_000,
      glueShearMpa: 1000,
      glueThicknessMm: 0.2,
      overlapMm,
    });
  const rod = {
    diameterMm: 1.984375,
    interfaceMpaPerMm: 100,
    rodStiffnessN: 328_785,
    bodyStiffnessN: 5_523_112,
    lengthMm: 25.4,
  };
  checkAll([
    { status: 'derived', what: 'Volkersen, overlap 25 mm', got: lap(25), want: 3.34915, within: 0.000005 },
    { status: 'derived', what: 'Volkersen, overlap 50 mm', got: lap(50), want: 6.68155, within: 0.000005 },
    {
      status: 'seen',
      what: 'peak at 25 over peak at 50 at the same load',
      got: lap(25) / 25 / (lap(50) / 50),
      want: 1.003,
      within: 0.0006,
    },
    {
      status: 'derived',
      what: 'rod held at the mouth: peak at the mouth',
      got: jigStressPeaks(rod).mouth,
      want: 1.39879,
      within: 0.00001,
    },
    {
      status: 'derived',
      what: 'rod held at the mouth: at the tip',
      got: jigStressPeaks(rod).tip,
      want: 0.81271,
      within: 0.00001,
    },
    {
      status: 'derived',
      what: 'transfer length at 100 MPa/mm, mm',
      got: transferLengthMm(rod),
      want: 22.3,
      within: 0.05,
    },
    {
      status: 'derived',
      what: 'interface of a 2 mm rod in 25.4 mm of poplar, MPa/mm',
      got: interfaceStiffness(2, 25.4, 763, 0.2, 1200),
      want: 286,
      within: 0.5,
    },
  ]);

  test('pulled by a fish, the stress is spread no worse than in the jig, and its mean is the same', () => {
    const fish = fishStressPeaks(rod);
    expect(fish.mouth).toBeLessThan(jigStressPeaks(rod).mouth);
    const stiffBody = { ...rod, bodyStiffnessN: 1e15 };
    expect(fishStressPeaks(stiffBody).mouth).toBeCloseTo(jigStressPeaks(stiffBody).mouth, 6);
  });
});
