import type { FigureSource } from '@/lib/materials/figure-source';
import { ovenDryGravity } from '@/lib/materials/specific-gravity';
import { type GluedShank, gluedLengthMm } from '@/lib/strength/bond-pull-out';
import type { LowerShare } from '@/lib/strength/estimate';
import {
  DESIGN_WITHDRAWAL_SOURCE,
  driftPinWithdrawalN,
  nailWithdrawalN,
  ULTIMATE_WITHDRAWAL_SOURCE,
  woodScrewDesignN,
  woodScrewWithdrawalN,
} from '@/lib/strength/fastener-withdrawal';
import { ROD_EQUATIONS } from '@/lib/strength/published-rods';
import type { ScrewedShank } from '@/lib/strength/screw-eye';
import { WOOD_SLEEVE_CARD, woodSleeve } from '@/lib/strength/wood-sleeve';

/** A load by someone else's formula, drawn beside the estimate. None of them was made for wire. */
export interface Comparison {
  readonly id: string;
  readonly title: string;
  readonly formula: string;
  readonly basis: 'mean' | 'characteristic' | 'allowable' | 'design';
  readonly source: FigureSource;
  readonly range: string;
  readonly loadN: number;
}

const WIRE_RANGE = 'nails, pins and screws of 2 mm and more, dry, side grain';

/** What independent formulas give for a glued shank: clear wood's shear, glued-in rods, the same wire without glue. */
export function gluedComparisons(shank: GluedShank, lower: LowerShare): readonly Comparison[] {
  const rod = {
    rodMm: 2 * shank.wireDiameterMm,
    holeMm: shank.bitDiameterMm,
    lengthMm: gluedLengthMm(shank),
    densityKgM3: shank.wood.densityKgM3,
  };
  const rods = ROD_EQUATIONS.map(({ loadN, ...equation }) => ({ ...equation, loadN: loadN(rod) }));
  const driven = { gravity: shank.wood.gravity12.value, diameterMm: rod.rodMm, lengthMm: rod.lengthMm };
  return [
    {
      ...WOOD_SLEEVE_CARD,
      basis: 'mean',
      range: 'clear wood, 2 in blocks',
      loadN: woodSleeve(shank, lower).medianN,
    },
    ...rods,
    handbook('wood-screw', 'A wood screw of the same diameter', '108.25 G² D L', woodScrewWithdrawalN(driven)),
    handbook('drift-pin', 'The pair driven in dry, as a drift pin', '45.51 G² D L', driftPinWithdrawalN(driven)),
    handbook('nail', 'The pair driven in dry, as a nail', '54.12 G^2.5 D L', nailWithdrawalN(driven)),
  ];
}

/** What independent formulas give for a screw eye: the code's design value, four to six times below breaking. */
export function screwComparisons(shank: ScrewedShank): readonly Comparison[] {
  const driven = {
    gravity: ovenDryGravity(shank.wood.gravity12.value),
    diameterMm: shank.threadDiameterMm,
    lengthMm: shank.threadMm,
  };
  return [
    {
      id: 'wood-screw-design',
      title: 'Design value of a wood screw in a building',
      formula: '2850 G² D lbf per inch, G oven-dry',
      basis: 'design',
      source: DESIGN_WITHDRAWAL_SOURCE,
      range: 'side grain only: none is allowed in end grain',
      loadN: woodScrewDesignN(driven),
    },
  ];
}

function handbook(id: string, title: string, formula: string, loadN: number): Comparison {
  return { id, title, formula, basis: 'mean', source: ULTIMATE_WITHDRAWAL_SOURCE, range: WIRE_RANGE, loadN };
}
