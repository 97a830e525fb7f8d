import { describe } from 'vitest';
import { codeDowelBearingMpa, dowelBearingMpa } from '@/lib/strength/dowel-bearing';
import {
  driftPinWithdrawalN,
  lagScrewDesignN,
  lagScrewWithdrawalN,
  nailDesignN,
  nailWithdrawalN,
  ringNailWithdrawalN,
  woodScrewDesignN,
  woodScrewWithdrawalN,
} from '@/lib/strength/fastener-withdrawal';
import { hankinson } from '@/lib/strength/load-angle';
import { inches, MPA_PER_PSI, poundsForce } from '@/lib/units/force-and-length';
import { checkAll } from './strength-check';

const inch = (gravity: number, diameter: number, length = 1) => ({
  gravity,
  diameterMm: inches(diameter),
  lengthMm: inches(length),
});
const lbf = (loadN: number) => loadN / poundsForce(1);

// ANSI/AWC NDS Table 12.2A, lag screws, pounds per inch, printed cells, seen in public permit files.
describe('NDS Table 12.2A', () => {
  const diameters = [1 / 4, 5 / 16, 3 / 8, 7 / 16, 1 / 2, 5 / 8, 3 / 4];
  const rows: readonly (readonly [number, readonly number[]])[] = [
    [0.31, [110, 130, 149, 167, 185, 218, 250]],
    [0.35, [132, 156, 179, 200, 222, 262, 300]],
    [0.42, [173, 205, 235, 264, 291, 344, 395]],
    [0.5, [225, 266, 305, 342, 378, 447, 513]],
    [0.55, [260, 307, 352, 395, 437, 516, 592]],
    [0.67, [349, 413, 473, 531, 587, 694, 796]],
    [0.73, [397, 469, 538, 604, 668, 789, 905]],
  ];
  checkAll(
    rows.flatMap(([gravity, cells]) =>
      cells.map((cell, i) => ({
        status: 'seen' as const,
        what: `G ${gravity}, D ${diameters[i]} in`,
        got: lbf(lagScrewDesignN(inch(gravity, diameters[i] ?? 0))),
        want: cell,
        within: 0.5,
      })),
    ),
  );
});

describe('other design values of the NDS', () => {
  checkAll([
    {
      status: 'seen',
      what: 'AWC solved example E2.1a: nail D 0.131, G 0.42, N/m',
      got: nailDesignN({ gravity: 0.42, diameterMm: inches(0.131), lengthMm: 1000 }),
      want: 3619.313,
      within: 0.5,
    },
    {
      status: 'seen',
      what: 'the same, 2.395 in deep, lb',
      got: lbf(nailDesignN(inch(0.42, 0.131, 2.395))),
      want: 49.5,
      within: 0.005,
    },
    {
      status: 'seen',
      what: 'AWC solved example E2.3: lag D 0.5, G 0.55, lb/in',
      got: lbf(lagScrewDesignN(inch(0.55, 0.5))),
      want: 436.6,
      within: 0.05,
    },
    {
      status: 'seen',
      what: 'engineering tables: wood screw G 0.45, D 0.190, lb/in, printed cut off',
      got: Math.floor(lbf(woodScrewDesignN(inch(0.45, 0.19)))),
      want: 109,
      within: 0,
    },
    {
      status: 'derived',
      what: 'the same computed',
      got: lbf(woodScrewDesignN(inch(0.45, 0.19))),
      want: 109.65,
      within: 0.005,
    },
    {
      status: 'derived',
      what: 'nail D 0.131, G 0.42, lb/in',
      got: lbf(nailDesignN(inch(0.42, 0.131))),
      want: 20.667,
      within: 0.0005,
    },
    {
      status: 'from memory',
      what: 'Table 12.2B #8 G 0.42',
      got: lbf(woodScrewDesignN(inch(0.42, 0.164))),
      want: 82.4,
      within: 0.06,
    },
    {
      status: 'from memory',
      what: 'Table 12.2B #8 G 0.50',
      got: lbf(woodScrewDesignN(inch(0.5, 0.164))),
      want: 116.9,
      within: 0.06,
    },
    {
      status: 'from memory',
      what: 'Table 12.2C 0.148 in G 0.42',
      got: lbf(nailDesignN(inch(0.42, 0.148))),
      want: 23.4,
      within: 0.06,
    },
    {
      status: 'from memory',
      what: 'Table 12.2C 0.131 in G 0.50',
      got: lbf(nailDesignN(inch(0.5, 0.131))),
      want: 32,
      within: 0.06,
    },
  ]);
});

// Wood Handbook ch. 8 (FPL-GTR-282): the metric constants of Eq. 8-1, 8-2a, 8-9, 8-10 and 8-14 were seen, and so were
// the inch constants of nails and wood screws; so every metric formula must give the inch formula's load.
describe('Wood Handbook ch. 8, average withdrawal', () => {
  const g = 0.42;
  const unit = inch(g, 1, 1);
  checkAll([
    {
      status: 'seen',
      what: 'nail 7,850 G^2.5 D L in pounds',
      got: lbf(nailWithdrawalN(unit)) / g ** 2.5,
      want: 7850,
      within: 5,
    },
    {
      status: 'seen',
      what: 'wood screw 15,700 G^2 D L in pounds',
      got: lbf(woodScrewWithdrawalN(unit)) / g ** 2,
      want: 15_700,
      within: 10,
    },
    {
      status: 'seen',
      what: 'a worked figure: #8 x 1 in, G 0.70, lb',
      got: lbf(woodScrewWithdrawalN(inch(0.7, 0.164))),
      want: 1262,
      within: 1,
    },
    {
      status: 'from memory',
      what: 'ring nail 11,250 G^2 D L',
      got: lbf(ringNailWithdrawalN(unit)) / g ** 2,
      want: 11_250,
      within: 5,
    },
    {
      status: 'from memory',
      what: 'drift pin 6,600 G^2 D L',
      got: lbf(driftPinWithdrawalN(unit)) / g ** 2,
      want: 6600,
      within: 5,
    },
    {
      status: 'from memory',
      what: 'lag screw 8,100 G^1.5 D^0.75 L',
      got: lbf(lagScrewWithdrawalN(unit)) / g ** 1.5,
      want: 8100,
      within: 10,
    },
    {
      status: 'derived',
      what: 'nail D 0.1 L 0.5, lb',
      got: lbf(nailWithdrawalN(inch(g, 0.1, 0.5))),
      want: 44.871,
      within: 0.02,
    },
    {
      status: 'derived',
      what: 'ring nail D 0.1 L 0.5, lb',
      got: lbf(ringNailWithdrawalN(inch(g, 0.1, 0.5))),
      want: 99.2,
      within: 0.06,
    },
    {
      status: 'derived',
      what: 'drift pin D 0.1 L 0.5, lb',
      got: lbf(driftPinWithdrawalN(inch(g, 0.1, 0.5))),
      want: 58.2,
      within: 0.06,
    },
    {
      status: 'derived',
      what: 'wood screw D 0.1 L 0.5, lb',
      got: lbf(woodScrewWithdrawalN(inch(g, 0.1, 0.5))),
      want: 138.474,
      within: 0.06,
    },
    {
      status: 'derived',
      what: 'wood screw D 0.1 L 0.5, N',
      got: woodScrewWithdrawalN(inch(g, 0.1, 0.5)),
      want: 616,
      within: 0.3,
    },
    {
      status: 'derived',
      what: 'lag D 0.25 L 1, lb',
      got: lbf(lagScrewWithdrawalN(inch(g, 0.25))),
      want: 779.5,
      within: 0.6,
    },
  ]);
});

// Wood Handbook Eq. 8-3: 114.5 G^1.84 MPa, seen; NDS 12.3.3: 16,600 G^1.84 psi rounded to 50, from memory.
describe('dowel bearing', () => {
  checkAll([
    {
      status: 'seen',
      what: 'constant of Eq. 8-3 in psi, 16,600 rounded',
      got: dowelBearingMpa(1) / MPA_PER_PSI,
      want: 16_600,
      within: 10,
    },
    ...(
      [
        [0.36, 2550],
        [0.42, 3350],
        [0.43, 3500],
        [0.5, 4650],
        [0.55, 5550],
        [0.67, 7950],
      ] as const
    ).map(([gravity, cell]) => ({
      status: 'from memory' as const,
      what: `G ${gravity}, psi to the nearest 50`,
      got: Math.round(dowelBearingMpa(gravity) / MPA_PER_PSI / 50) * 50,
      want: cell,
      within: 0,
    })),
    { status: 'derived', what: 'G 0.42, MPa', got: dowelBearingMpa(0.42), want: 23.2, within: 0.05 },
    {
      status: 'seen',
      what: 'EN 1995-1-1 8.5.1 as public programs have it: d 12, 350 kg/m3, MPa',
      got: codeDowelBearingMpa(350, 12),
      want: 25.256,
      within: 0.0005,
    },
  ]);
});

// Wood Handbook Eq. 8-16 (Hankinson): the form was seen, the values are computed from it.
describe('Hankinson', () => {
  const values = [
    [5540, 500, 15, 3307],
    [5540, 500, 30, 1573.9],
    [5540, 500, 45, 917.2],
    [5540, 500, 60, 647.2],
    [5540, 500, 75, 532.4],
    [4560, 460, 30, 1412.5],
    [4560, 460, 45, 835.7],
  ] as const;
  checkAll(
    values.map(([p, q, degrees, want]) => ({
      status: 'derived',
      what: `P ${p}, Q ${q} at ${degrees} degrees`,
      got: hankinson(p, q, degrees),
      want,
      within: 0.05,
    })),
  );
  // NDS 12.4.1 in the angle from the wood's surface; ours is from the shank. Form from memory.
  checkAll(
    (
      [
        [0, 40],
        [30, 46.8],
        [45, 56.3],
        [60, 70.7],
        [90, 95],
      ] as const
    ).map(([fromSurface, want]) => ({
      status: 'from memory',
      what: `NDS 12.4.1, W'p 95 and Z' 40, ${fromSurface} degrees from the surface`,
      got: hankinson(95, 40, 90 - fromSurface),
      want,
      within: 0.05,
    })),
  );
});
