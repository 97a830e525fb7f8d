import type { CoverProfile } from '@/lib/geometry/cover';
import { chosen, derived } from '@/lib/materials/figure-source';
import type { FormulaCard, FormulaInput } from '@/lib/materials/formula-card';
import type { ResolvedWood } from '@/lib/materials/resolved-wood';
import { type StretchTable, stretchTable } from '@/lib/strength/best-stretch';
import type { BondBelief } from '@/lib/strength/bond-belief';
import { coverFactor, fitFactor, shearDiameterMm, temperatureFactor } from '@/lib/strength/bond-factors';
import { coverCells } from '@/lib/strength/equivalent-cover';
import { input } from '@/lib/strength/estimate';
import { saturatedPeaks } from '@/lib/strength/shear-lag';
import { GLUED_WIRE_BOX_TEXT } from '@/lib/strength/validity-box';

/** A twisted pair glued in a hole. */
export interface GluedShank {
  readonly wood: ResolvedWood;
  readonly wireDiameterMm: number;
  readonly bitDiameterMm: number;
  readonly embedmentMm: number;
  /** Length of shank without glue round it; a void under its end does not count. */
  readonly voidMm: number;
  /** Along the shank; null: ample wood all round, as in a test board. */
  readonly cover: CoverProfile | null;
  readonly temperatureC: number;
}

export const BOND_CARD: FormulaCard = {
  id: 'bond-pull-out',
  title: 'The bond lets go: the shank pulls out, bare or with a sleeve of wood',
  formula: 'R = kappa x shear x pi x d x lc x tanh(l / lc) x f_cover x f_fit x f_temperature',
  source: derived(
    "Mean bond stress as a share of the wood's shear strength, saturating with depth as shear lag asks; kappa from one practice value and, once there are any, the shop's own pulls",
  ),
  assumptions: [
    'd is the wider of hole and twisted pair, l the glued length',
    'Along and across the grain alike, until tested',
    'The strongest stretch of the shank carries, and a stretch is as strong as its weakest section',
    'Cured in full before it is loaded; static pull, no fatigue, no ageing',
  ],
  validity: GLUED_WIRE_BOX_TEXT,
};

/** Glued length of a shank. */
export function gluedLengthMm(shank: Pick<GluedShank, 'embedmentMm' | 'voidMm'>): number {
  return Math.max(0, shank.embedmentMm - shank.voidMm);
}

/**
 * Load at which the bond lets go at a kappa of 1, N, from any depth down: multiply by kappa. `null` where the service
 * temperature is above what any epoxy is relied on at.
 */
export function unitBond(shank: GluedShank, saturationMm: number): StretchTable | null {
  const warmth = temperatureFactor(shank.temperatureC);
  if (warmth === null) return null;
  const envelope = 2 * shank.wireDiameterMm;
  const diameter = shearDiameterMm(envelope, shank.bitDiameterMm);
  const perMm = shank.wood.shearMpa.value * Math.PI * diameter * fitFactor(envelope, shank.bitDiameterMm) * warmth;
  const length = gluedLengthMm(shank);
  const { cover } = shank;
  if (cover === null) return stretchTable([perMm], length, length, saturationMm);
  const cells = coverCells(cover, length, diameter).map((mm) => perMm * coverFactor(mm, diameter));
  return stretchTable(cells, cover.stepMm, length, saturationMm);
}

/** The believed kappa with the scatter of a wood whose shear strength was only estimated from its density. */
export function kappaFor(belief: BondBelief, wood: ResolvedWood, z: number): { median: number; lower: number } {
  if (wood.shearMpa.logSd === 0 || belief.exactPulls > 0) return belief;
  const own = Math.log(belief.median / belief.lower);
  return { median: belief.median, lower: belief.median * Math.exp(-Math.hypot(own, z * wood.shearMpa.logSd)) };
}

/** What went into the bond's load. */
export function bondInputs(shank: GluedShank, belief: BondBelief, saturationMm: number): readonly FormulaInput[] {
  const { wood, wireDiameterMm, bitDiameterMm } = shank;
  const envelope = 2 * wireDiameterMm;
  const geometry = derived('Of the hole and the wire');
  const peak = saturatedPeaks(Math.max(1e-9, gluedLengthMm(shank) / saturationMm)).mouth;
  return [
    input('kappa', 'Bond strength over shear strength, median', belief.median, 'none', belief.source),
    input('shear', 'Shear strength of the wood along the grain', wood.shearMpa.value, 'MPa', wood.shearMpa.source),
    input('d', 'Diameter that shears', shearDiameterMm(envelope, bitDiameterMm), 'wire-mm', geometry),
    input('l', 'Glued length', gluedLengthMm(shank), 'mm', geometry),
    input('lc', 'Depth over which it saturates', saturationMm, 'mm', chosen('Between 0.5 and 1.5 in by shear lag')),
    input('peak', 'Bond stress at the mouth over its mean', peak, 'none', PEAK_SOURCE),
    input('f_fit', 'Fit of the pair in its hole', fitFactor(envelope, bitDiameterMm), 'none', FIT_SOURCE),
    input('f_temperature', 'Warmth', temperatureFactor(shank.temperatureC) ?? 0, 'none', WARMTH_SOURCE),
  ];
}

const PEAK_SOURCE = derived('Shear lag, x coth x, in a jig that holds the body at the mouth');
const FIT_SOURCE = chosen('1 from slight interference to a gap of 0.040 in, 0.9 beyond');
const WARMTH_SOURCE = chosen('1 to 30 °C, straight to 0.5 at 60 °C: epoxies soften at 40 to 60 °C');
