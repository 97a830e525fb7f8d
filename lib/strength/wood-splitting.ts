import { chosen, derived } from '@/lib/materials/figure-source';
import type { FormulaCard, FormulaInput } from '@/lib/materials/formula-card';
import { CLEAR_WOOD_COV } from '@/lib/materials/wood-variability';
import { type StretchTable, stretchTable } from '@/lib/strength/best-stretch';
import { FULL_COVER_DIAMETERS, shearDiameterMm } from '@/lib/strength/bond-factors';
import { type GluedShank, gluedLengthMm } from '@/lib/strength/bond-pull-out';
import { coverCells } from '@/lib/strength/equivalent-cover';
import { input } from '@/lib/strength/estimate';

export const SPLITTING_CARD: FormulaCard = {
  id: 'wood-splitting',
  title: 'The wood over the shank splits',
  formula: 'R = 2 x pi x tension_perp x c x lc x tanh(l / lc) / tan(30°)',
  source: derived('Hoop tension round a bond, partly cracked, as for bars in concrete; its factor is 1, never tested'),
  assumptions: [
    'c is the wood between the wall of the hole and the nearest surface',
    'The bond pushes outwards at 30° to the shank',
    'The thinnest section of a stretch splits first and the crack runs along it',
  ],
  validity: '',
};

const WEDGE = Math.tan(Math.PI / 6);
/** Scatter of tension across the grain and of a formula that was borrowed from another material. */
export const SPLITTING_LOG_SD = Math.hypot(CLEAR_WOOD_COV.tensionPerp, 0.3);

/**
 * Stress on the shank's wall at which wood of `tensionPerpMpa` splits, MPa. Yellow-poplar, a 5/64 in hole with 0.10 in
 * of wood over it: 2394 psi.
 */
export function splittingStressMpa(tensionPerpMpa: number, woodOverMm: number, holeMm: number): number {
  return (tensionPerpMpa * Math.max(0, woodOverMm)) / (0.5 * holeMm * WEDGE);
}

/** Load at which the wood over the shank splits, N, from any depth down; in ample wood that of full cover. */
export function splitting(shank: GluedShank, saturationMm: number): StretchTable {
  const diameter = shearDiameterMm(2 * shank.wireDiameterMm, shank.bitDiameterMm);
  const tension = shank.wood.tensionPerpMpa.value;
  const radius = 0.5 * shank.bitDiameterMm;
  const length = gluedLengthMm(shank);
  const perMm = (coverMm: number) => (2 * Math.PI * tension * Math.max(0, coverMm - radius)) / WEDGE;
  const { cover } = shank;
  if (cover === null) return stretchTable([perMm(FULL_COVER_DIAMETERS * diameter)], length, length, saturationMm);
  return stretchTable(coverCells(cover, length, diameter).map(perMm), cover.stepMm, length, saturationMm);
}

export function splittingInputs(shank: GluedShank, coverMm: number, saturationMm: number): readonly FormulaInput[] {
  const { tensionPerpMpa } = shank.wood;
  const over = Math.max(0, coverMm - 0.5 * shank.bitDiameterMm);
  const geometry = derived('Of the body, the hole and the wire');
  return [
    input('tension_perp', 'Tension strength across the grain', tensionPerpMpa.value, 'MPa', tensionPerpMpa.source),
    input('c', 'Wood over the hole where it is thinnest', over, 'mm', geometry),
    input('l', 'Glued length', gluedLengthMm(shank), 'mm', geometry),
    input('lc', 'Depth over which it saturates', saturationMm, 'mm', chosen('As for the bond')),
  ];
}
