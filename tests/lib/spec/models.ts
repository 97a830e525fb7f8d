import { bodyShape } from '@/lib/geometry/body-shapes';
import type { AdhesiveStrengthSheet } from '@/lib/materials/adhesive-strength-sheet';
import type { FittingSheet } from '@/lib/materials/fitting-sheet';
import type { WireSheet, WireTemper } from '@/lib/materials/wire-sheet';
import { WOOD_TABLE } from '@/lib/materials/wood-table';
import type { PulledBond } from '@/lib/spec/bond-book';
import type { Finding } from '@/lib/spec/finding';
import { findingsOf } from '@/lib/spec/findings-of';
import type { RuleId } from '@/lib/spec/rule-id';
import { type SpecContext, type SpecShop, specContext } from '@/lib/spec/spec-context';
import type { SpecAnchor, SpecLine, SpecMaterial, SpecModel, SpecWood } from '@/lib/spec/spec-model';
import { DEFAULT_SPEC_SETTINGS } from '@/lib/spec/spec-settings';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { priorBelief } from '../strength/designs';

/** A made-up shop and a popper that holds in every respect, for the tests to spoil one thing at a time. */

export const NOW = Date.UTC(2026, 3, 1, 12);
const DAY = 86_400_000;

export function woodOf(id: string, weighedDensityKgM3: number | null = id === 'balsa' ? 184 : null): SpecWood {
  const found = WOOD_TABLE.find((one) => one.id === id);
  if (found === undefined) throw new Error(id);
  return { materialId: id, name: found.name, sheet: found.sheet, weighedDensityKgM3, moisturePercent: null };
}

const wires = new Map<string, SpecMaterial<WireSheet>>();

export function wireOf(diameterIn: number, temper: WireTemper | null = 'spring'): SpecMaterial<WireSheet> {
  const materialId = `wire-${diameterIn}-${temper}`;
  const known = wires.get(materialId);
  if (known !== undefined) return known;
  const sheet = { alloy: 'stainless-302-304', temper, diameterMm: inches(diameterIn), sources: {} } as const;
  const made = { materialId, name: `${diameterIn} in wire, ${temper}`, sheet };
  wires.set(materialId, made);
  return made;
}

const SHEET_SOURCE = { kind: 'data-sheet', text: 'Invented data sheet' } as const;

export const EPOXY: SpecMaterial<AdhesiveStrengthSheet> = {
  materialId: 'epoxy',
  name: 'Slow epoxy',
  sheet: {
    bondClass: 'slow-epoxy',
    maxGapMm: 1,
    water: 'immersion',
    maxServiceC: 60,
    sources: { maxGapMm: SHEET_SOURCE, water: SHEET_SOURCE, maxServiceC: SHEET_SOURCE },
  },
};

export function fitting(id: string, strengthLb: number | undefined, lengthMm: number | undefined) {
  const sheet: FittingSheet = {
    ...(strengthLb === undefined ? {} : { statedStrengthN: poundsForce(strengthLb) }),
    ...(lengthMm === undefined ? {} : { lengthMm }),
    sources: {},
  };
  return { materialId: id, name: id, sheet };
}

export const HOOK = fitting('hook', 60, 18);
export const RING = fitting('ring', 80, 6);

export function line(labelLb: number, type: SpecLine['type'] = 'mono'): SpecLine {
  return { labelN: poundsForce(labelLb), type, knotShare: null, dragShare: null };
}

/** The practice value's wire, square in the belly. */
export function hanger(anchorId: string, more: Partial<SpecAnchor> = {}): SpecAnchor {
  return {
    anchorId,
    name: anchorId,
    role: 'belly-hanger',
    kind: 'twisted-wire',
    face: 'belly',
    xMm: 35,
    zMm: null,
    slantDeg: 0,
    loadAngleDeg: 0,
    wire: wireOf(0.041),
    wireDiameterMm: inches(0.041),
    twistPitchMm: inches(1 / 3.5),
    eyeInsideMm: inches(3 / 16),
    isEyeClosed: true,
    bitDiameterMm: inches(5 / 64),
    drillDepthMm: inches(1 / 2),
    embedmentMm: inches(1 / 2),
    adhesive: EPOXY,
    screwEye: null,
    hook: HOOK,
    splitRing: RING,
    ...more,
  };
}

export const POPPER_BODY = {
  stations: bodyShape('popper', { lengthMm: 110, heightMm: 32, widthMm: 30 }),
  lengthMm: 110,
};

export function popper(more: Partial<SpecModel> = {}): SpecModel {
  return {
    modelId: 'popper',
    modelName: 'Popper',
    revisionId: 'popper-a',
    revisionLetter: 'A',
    body: POPPER_BODY,
    wood: woodOf('yellow-poplar'),
    anchors: [
      hanger('tie', { role: 'line-tie', face: 'nose', xMm: null, zMm: 0, hook: null, splitRing: null }),
      hanger('belly'),
      hanger('tail', { role: 'tail-hanger', face: 'tail', xMm: null, zMm: 0 }),
    ],
    line: line(17),
    fishMassG: null,
    bill: [
      { materialId: 'wire-0.041-spring', quantity: 150, quantityUnit: 'mm' },
      { materialId: 'epoxy', quantity: 1, quantityUnit: 'g' },
      { materialId: 'hook', quantity: 2, quantityUnit: 'pieces' },
      { materialId: 'ring', quantity: 2, quantityUnit: 'pieces' },
    ],
    waivers: [],
    ...more,
  };
}

/** The popper with its belly hanger made otherwise. */
export function withBelly(more: Partial<SpecAnchor>, model: Partial<SpecModel> = {}): SpecModel {
  const base = popper(model);
  return { ...base, anchors: base.anchors.map((one) => (one.anchorId === 'belly' ? { ...one, ...more } : one)) };
}

export function pulled(more: Partial<PulledBond> = {}): PulledBond {
  return {
    woodMaterialId: 'yellow-poplar',
    adhesiveMaterialId: 'epoxy',
    wireMaterialId: 'wire-0.041-spring',
    belief: { ...priorBelief(), exactPulls: 5 },
    latestPulledAt: NOW - 30 * DAY,
    adhesiveLotCodes: ['L1'],
    ...more,
  };
}

export function shop(more: Partial<SpecShop> = {}): SpecShop {
  return {
    settings: DEFAULT_SPEC_SETTINGS,
    bonds: [pulled()],
    habits: [],
    lotsInUse: [{ materialId: 'epoxy', lotCode: 'L1' }],
    wires: [0.032, 0.041, 0.051, 0.062].map((size) => wireOf(size)),
    woods: ['yellow-poplar', 'sugar-maple', 'basswood'].map((id) => woodOf(id)),
    now: NOW,
    ...more,
  };
}

export function context(more: Partial<SpecShop> = {}): SpecContext {
  return specContext(shop(more), { withFixes: true });
}

/** What a rule finds of an anchor, the belly hanger unless said otherwise; undefined: it does not apply. */
export function found(
  ruleId: RuleId,
  model: SpecModel,
  { subject = 'belly', of = context() }: { readonly subject?: string; readonly of?: SpecContext } = {},
): Finding | undefined {
  return findingsOf(model, of).find((one) => one.ruleId === ruleId && one.subject.key === subject);
}
