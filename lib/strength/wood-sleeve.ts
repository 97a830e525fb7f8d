import { derived } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import { CLEAR_WOOD_COV } from '@/lib/materials/wood-variability';
import { type GluedShank, gluedLengthMm } from '@/lib/strength/bond-pull-out';
import { type Estimate, input, type LowerShare, scattered } from '@/lib/strength/estimate';

export const WOOD_SLEEVE_CARD: FormulaCard = {
  id: 'wood-sleeve',
  title: 'Clear wood shears round the hole',
  formula: 'R = shear x pi x d x l',
  source: derived('Shear strength of clear wood (Wood Handbook ch. 5) over the wall of the hole'),
  assumptions: [
    'No calibration: tests of 2 in blocks taken over to a hole 65 times smaller, where the one practice value lies 1.3 times higher',
    'Shown to compare with; the bond estimate holds the same failure, calibrated',
  ],
  validity: '',
};

const GEOMETRY = derived('Of the hole and the wire');

/**
 * Load at which clear wood of the handbook's shear strength would shear on the wall of the hole. 5/64 in and 1/4 in
 * deep in yellow-poplar: 73 lbf.
 */
export function woodSleeve(shank: GluedShank, lower: LowerShare): Estimate {
  const { shearMpa } = shank.wood;
  const length = gluedLengthMm(shank);
  const load = shearMpa.value * Math.PI * shank.bitDiameterMm * length;
  return scattered(load, Math.hypot(CLEAR_WOOD_COV.shear, shearMpa.logSd), lower, {
    card: WOOD_SLEEVE_CARD,
    inputs: [
      input('shear', 'Shear strength of the wood along the grain', shearMpa.value, 'MPa', shearMpa.source),
      input('d', 'Hole', shank.bitDiameterMm, 'wire-mm', GEOMETRY),
      input('l', 'Glued length', length, 'mm', GEOMETRY),
    ],
  });
}
