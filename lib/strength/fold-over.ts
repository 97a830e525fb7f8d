import type { CoverProfile } from '@/lib/geometry/cover';
import { derived } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import { FULL_COVER_DIAMETERS } from '@/lib/strength/bond-factors';
import { equivalentCoverMm } from '@/lib/strength/equivalent-cover';
import { inches } from '@/lib/units/force-and-length';

export const FOLD_OVER_CARD: FormulaCard = {
  id: 'fold-over',
  title: 'Pulled aslant: the shank ploughs into its mouth, and what is left below pulls out',
  formula: 'F = R_straight( l − F sin(a) / min(crush, 2 x shear x c) )',
  source: derived(
    'The sideways part of the load crushes the wood at the mouth, or tears it out where the cover is thin, to the depth that balances it; the wire folds over there and the rest holds as in a straight pull',
  ),
  assumptions: [
    'No test of wire this thin pulled aslant was found: pull tests decide',
    'Wood over the shank shears on two planes, c thick; the least cover of the first 1/4 in counts',
  ],
  validity: '',
};

/** Depth of mouth whose cover a sideways load is taken to test. Chosen: what a shank crushes before it folds. */
const MOUTH_MM = inches(0.25);

/** How the wood at the mouth resists a sideways push. */
export interface MouthResistance {
  /** N per mm of depth. */
  readonly perMm: number;
  /** Whether thin cover tears out before the wood crushes. */
  readonly tears: boolean;
}

/** Resistance of the mouth: crushing, or tearing out of the wood over it. */
export function mouthResistance(
  wood: ResolvedWood,
  crushNPerMm: number,
  cover: CoverProfile | null,
  shankMm: number,
  bitMm: number,
): MouthResistance {
  const covered = cover === null ? FULL_COVER_DIAMETERS * shankMm : mouthCoverMm(cover, shankMm);
  const tear = 2 * wood.shearMpa.value * Math.max(0, covered - 0.5 * bitMm);
  return tear < crushNPerMm ? { perMm: tear, tears: true } : { perMm: crushNPerMm, tears: false };
}

/** Least equivalent cover of the mouth; in a body thinner than two mouths only its nearer half is looked at. */
function mouthCoverMm(cover: CoverProfile, shankMm: number): number {
  const depth = Math.min(MOUTH_MM, 0.5 * cover.throughMm);
  const last = Math.max(1, Math.floor(depth / cover.stepMm));
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k <= last && k < cover.distancesMm.length; k++) {
    least = Math.min(least, equivalentCoverMm(cover.distancesMm[k] ?? 0, k * cover.stepMm, shankMm));
  }
  return least;
}

/**
 * Load at an angle at which a shank pulls out: the F that equals what the shank still holds once the mouth is ploughed
 * to F sin(angle) / resistance. `straight(from)`: load of the shank below a depth, never rising with it.
 *
 * Equal to `straight(0)` at 0 degrees, and never rising with the angle. By bisection to 1e-9 of the result.
 */
export function foldOverN(straight: (fromMm: number) => number, angleDeg: number, mouth: MouthResistance): number {
  const whole = straight(0);
  const sine = Math.sin((angleDeg * Math.PI) / 180);
  if (sine === 0 || whole === 0) return whole;
  if (!(mouth.perMm > 0)) return 0;
  let low = 0;
  let high = whole;
  for (let turn = 0; turn < 40; turn++) {
    const middle = 0.5 * (low + high);
    if (straight((middle * sine) / mouth.perMm) >= middle) low = middle;
    else high = middle;
  }
  return low;
}
