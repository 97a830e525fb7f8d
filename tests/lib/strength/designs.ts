import { resolveWire } from '@/lib/materials/resolved-wire';
import { type ResolvedWood, resolveWood } from '@/lib/materials/resolved-wood';
import type { WireTemper } from '@/lib/materials/wire-sheet';
import { WOOD_TABLE } from '@/lib/materials/wood-table';
import type { TwistedWireAnchor } from '@/lib/strength/anchor-design';
import type { BondBelief } from '@/lib/strength/bond-belief';
import { kappaPrior } from '@/lib/strength/kappa-prior';
import { DEFAULT_STRENGTH_SETTINGS } from '@/lib/strength/strength-settings';
import { updatedBelief } from '@/lib/strength/updated-belief';
import { inches, poundsForce } from '@/lib/units/force-and-length';

export const SETTINGS = DEFAULT_STRENGTH_SETTINGS;

export const lbf = (loadN: number) => loadN / poundsForce(1);

/** A wood of the table, balsa weighed as the table has it. */
export function wood(id: string, weighedDensityKgM3: number | null = id === 'balsa' ? 184 : null): ResolvedWood {
  const found = WOOD_TABLE.find((one) => one.id === id);
  if (found === undefined) throw new Error(id);
  const result = resolveWood(found.sheet, { weighedDensityKgM3, moisturePercent: null });
  if (!result.ok) throw new Error(`${id} ${result.code}`);
  return result.wood;
}

export function wire(diameterIn: number, temper: WireTemper = 'spring') {
  const diameterMm = inches(diameterIn);
  const result = resolveWire({ alloy: 'stainless-302-304', temper, diameterMm, sources: {} }, diameterMm);
  if (!result.ok) throw new Error(result.code);
  return result.wire;
}

/** The belief in slow epoxy before any pull. */
export function priorBelief(): BondBelief {
  const belief = updatedBelief(kappaPrior('slow-epoxy'), [], SETTINGS.lower);
  if (belief === null) throw new Error('no prior');
  return belief;
}

/** The wire of the practice value in a board: .041 in spring wire twisted, 5/64 in bit, slow epoxy, 3/16 in eye. */
export function practice(woodId: string, depthIn: number, more: Partial<TwistedWireAnchor> = {}): TwistedWireAnchor {
  return {
    kind: 'twisted-wire',
    wood: wood(woodId),
    wire: wire(0.041),
    twistPitchMm: inches(1 / 3.5),
    eye: { insideMm: inches(3 / 16), isClosed: true },
    bitDiameterMm: inches(5 / 64),
    embedmentMm: inches(depthIn),
    voidMm: 0,
    belief: priorBelief(),
    temperatureC: 21,
    loadAngleDeg: 0,
    cover: null,
    ...more,
  };
}
