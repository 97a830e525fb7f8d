import type { CoverProfile } from '@/lib/geometry/cover';
import { derived } from '@/lib/materials/figure-source';
import type { FormulaCard } from '@/lib/materials/formula-card';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import { bracketedRoot } from '@/lib/statistics/bracketed-root';
import { FULL_COVER_DIAMETERS } from '@/lib/strength/bond-factors';
import { coverCells } from '@/lib/strength/equivalent-cover';
import { inches } from '@/lib/units/force-and-length';

export const FOLD_OVER_CARD: FormulaCard = {
  id: 'fold-over',
  title: 'Pulled aslant: the shank ploughs into its mouth, and what is left below pulls out',
  formula: 'F = R_straight(below s), with F sin(a) = sum over s of min(crush, 2 x shear x c)',
  source: derived(
    'The sideways part of the load crushes the wood at the mouth, or tears it out where the cover is thin, to the depth s that balances it; the wire folds over there and the rest holds as in a straight pull',
  ),
  assumptions: [
    'No test of wire this thin pulled aslant was found: pull tests decide',
    'Wood of cover c over the shank shears on two planes',
  ],
  validity: '',
};

/** Depth of mouth that tells whether a sideways load tears or crushes. Chosen: what a shank ploughs before it folds. */
const MOUTH_MM = inches(0.25);

/** How the wood resists a sideways push, step by step from the mouth down. */
export interface SideResistance {
  readonly stepMm: number;
  /** N per mm of each step; the last one goes on. */
  readonly cells: readonly number[];
  /** Whether thin cover at the mouth tears out before the wood crushes. */
  readonly tears: boolean;
}

/** Resistance of the wood along a shank: crushing, or tearing out of the wood over it. */
export function sideResistance(
  wood: ResolvedWood,
  crushNPerMm: number,
  cover: CoverProfile | null,
  shankMm: number,
  bitMm: number,
): SideResistance {
  const tearing = (coverMm: number) => 2 * wood.shearMpa.value * Math.max(0, coverMm - 0.5 * bitMm);
  const resistance = (coverMm: number) => Math.min(crushNPerMm, tearing(coverMm));
  if (cover === null) {
    const whole = resistance(FULL_COVER_DIAMETERS * shankMm);
    return { stepMm: 1, cells: [whole], tears: whole < crushNPerMm };
  }
  const depth = cover.stepMm * Math.max(1, cover.distancesMm.length - 1);
  const cells = coverCells(cover, depth, shankMm).map(resistance);
  const mouth = cells.slice(0, Math.ceil(MOUTH_MM / cover.stepMm));
  return { stepMm: cover.stepMm, cells, tears: mouth.some((cell) => cell < crushNPerMm) };
}

/** Depth to which a sideways force ploughs the shank into its mouth. */
export function ploughDepthMm({ stepMm, cells }: SideResistance, forceN: number): number {
  let left = forceN;
  for (const [k, cell] of cells.entries()) {
    const whole = cell * stepMm;
    const isLast = k === cells.length - 1;
    if (left < whole || (isLast && cell > 0)) return k * stepMm + left / cell;
    left -= whole;
  }
  return left > 0 || cells.length === 0 ? Number.POSITIVE_INFINITY : cells.length * stepMm;
}

/**
 * Load at an angle at which a shank pulls out: the F that equals what the shank still holds below the depth to which
 * F sin(angle) ploughs it. `straight(from)`: load of the shank below a depth, never rising with it.
 *
 * Equal to `straight(0)` at 0 degrees, and never rising with the angle. Exact to 1e-10 of the straight load.
 */
export function foldOverN(straight: (fromMm: number) => number, angleDeg: number, side: SideResistance): number {
  const whole = straight(0);
  const sine = Math.sin((angleDeg * Math.PI) / 180);
  if (sine === 0 || whole === 0) return whole;
  const excess = (load: number) => straight(ploughDepthMm(side, load * sine)) - load;
  return Math.max(0, bracketedRoot(excess, 0, whole, 1e-10 * whole));
}
