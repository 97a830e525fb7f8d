import type { CoverProfile } from '@/lib/geometry/cover';
import { chosen, derived, fromMemory } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import { longShankMm, woodFoundationMpa } from '@/lib/strength/beam-on-foundation';
import { DOWEL_BEARING_SOURCE, dowelBearingMpa } from '@/lib/strength/dowel-bearing';
import { type Estimate, input, scattered } from '@/lib/strength/estimate';
import { firstBendingN, hingeTakesOverMm } from '@/lib/strength/side-load';
import type { StrengthSettings } from '@/lib/strength/strength-settings';

export const FIRST_BENDING_CARD: FormulaCard = {
  id: 'first-bending',
  title: 'The shank first bends, pushed square to itself',
  formula: 'min( q (√((l + 2e)² + l²) − (l + 2e)), q (√(e² + 2 M / q) − e) ), q = bearing x d',
  source: derived("Johansen's yield theory with the load e above the wood (hinge case as Riberholt 1988)"),
  assumptions: [
    'The load of first visible bending, not of loss: past it the wire folds over and hangs on',
    'The two strands slide on each other: twice the plastic moment of one',
  ],
  validity: '',
};

/** Scatter of bearing (density to the power 1.84), of the wire's yield and of the theory. Chosen. */
export const FIRST_BENDING_LOG_SD = 0.28;
const GEOMETRY = derived('Of the hole, the wire and the eye');

/** A shank pushed sideways. */
export interface SidewaysShank {
  readonly wood: ResolvedWood;
  readonly diameterMm: number;
  readonly lengthMm: number;
  /** Height of the load above the wood. */
  readonly armMm: number;
  readonly plasticNmm: number;
  /** Bending stiffness, N mm2. */
  readonly bendingNmm2: number;
  readonly cover: CoverProfile | null;
}

/** Resistance of wood to a shank pushed sideways, N per mm of depth: less in end grain. */
export function crushNPerMm(
  shank: Pick<SidewaysShank, 'wood' | 'diameterMm' | 'cover'>,
  endGrainBearing: number,
): number {
  const across = Math.sin(((shank.cover?.grainAngleDeg ?? 90) * Math.PI) / 180) ** 2;
  const grain = endGrainBearing + (1 - endGrainBearing) * across;
  return dowelBearingMpa(shank.wood.gravity12.value) * grain * shank.diameterMm;
}

/** Load square to the shank at which it first bends visibly. Serviceability. */
export function firstBending(shank: SidewaysShank, settings: StrengthSettings): Estimate {
  const crush = crushNPerMm(shank, settings.endGrainBearing);
  const { value: gravity } = shank.wood.gravity12;
  const elastic = {
    foundationMpa: woodFoundationMpa(gravity, shank.diameterMm),
    bendingNmm2: shank.bendingNmm2,
  };
  const pin = { ...shank, crushNPerMm: crush };
  return scattered(firstBendingN(pin), FIRST_BENDING_LOG_SD, settings.lower, {
    card: FIRST_BENDING_CARD,
    inputs: [
      input('bearing', 'Bearing strength of the wood', crush / shank.diameterMm, 'MPa', DOWEL_BEARING_SOURCE),
      input('d', 'Shank', shank.diameterMm, 'wire-mm', GEOMETRY),
      input('l', 'Length in the wood', shank.lengthMm, 'mm', GEOMETRY),
      input('e', 'Load above the wood', shank.armMm, 'mm', GEOMETRY),
      input('M', 'Plastic moment of the shank', shank.plasticNmm, 'N*mm', GEOMETRY),
      input('l_hinge', 'Length from which it bends, not turns', hingeTakesOverMm(pin), 'mm', GEOMETRY),
      input('l_long', 'Depth beyond which more no longer stiffens it', longShankMm(elastic), 'mm', FOUNDATION),
      input('grain', 'Bearing in end grain over that across', settings.endGrainBearing, 'none', END_GRAIN),
    ],
  });
}

const FOUNDATION = fromMemory('Beam on elastic foundation (Hetenyi), stiffness after Wilkinson 1971, low confidence');
const END_GRAIN = chosen('Drafts for glued-in rods go down to a tenth; weak evidence');
