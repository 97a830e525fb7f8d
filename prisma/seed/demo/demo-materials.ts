import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { BondClass } from '@/lib/materials/adhesive-strength-sheet';
import type { FittingSheet } from '@/lib/materials/fitting-sheet';
import type { StrengthFigures } from '@/lib/materials/strength-figures';
import type { SeedMaterial } from '../starting-materials';
import { demoId } from './demo-id';
import { demoEpoxy5, demoEpoxy30, demoEpoxy60, demoTopcoat, INVENTED } from './demo-sheets';
import { type DemoTimes, dayFromNow } from './demo-times';

export const EPOXY_30 = demoId('epoxy-30');
export const EPOXY_5 = demoId('epoxy-5');
export const EPOXY_60 = demoId('epoxy-60');
export const TOPCOAT = demoId('topcoat');
export const DEMO_HOOK_4 = demoId('hook-4');
export const DEMO_HOOK_2 = demoId('hook-2');
export const DEMO_RING = demoId('ring-8');

/** A glue or coat of the demo workshop, with its sheet always there. */
export interface DemoGlue {
  readonly id: string;
  readonly kind: 'adhesive' | 'coating';
  readonly name: string;
  readonly sheet: AdhesiveSheet;
  readonly strength: StrengthFigures | null;
}

export const DEMO_GLUES: readonly DemoGlue[] = [
  {
    id: EPOXY_30,
    kind: 'adhesive',
    name: 'Demo epoxy, 30 minutes',
    sheet: demoEpoxy30,
    strength: demoBond('slow-epoxy'),
  },
  { id: EPOXY_5, kind: 'adhesive', name: 'Demo epoxy, 5 minutes', sheet: demoEpoxy5, strength: demoBond('fast-epoxy') },
  {
    id: EPOXY_60,
    kind: 'adhesive',
    name: 'Demo epoxy, 60 minutes',
    sheet: demoEpoxy60,
    strength: demoBond('slow-epoxy'),
  },
  { id: TOPCOAT, kind: 'coating', name: 'Demo topcoat, clear', sheet: demoTopcoat, strength: null },
];

export function demoMaterials(times: DemoTimes): readonly SeedMaterial[] {
  const sheetOn = dayFromNow(times, -200);
  const note = 'Invented for the demo workshop. Never mix a real product by these figures.';
  return [
    ...DEMO_GLUES.map((glue) => ({ ...glue, note, sheetRevision: 'demo 2', sheetOn })),
    demoFitting(DEMO_HOOK_4, 'hook', 'Demo short treble hook, size 4', {
      statedStrengthN: 180,
      lengthMm: 14,
      massG: 1,
    }),
    demoFitting(DEMO_HOOK_2, 'hook', 'Demo treble hook, size 2', { statedStrengthN: 390, lengthMm: 26, massG: 2 }),
    demoFitting(DEMO_RING, 'split-ring', 'Demo split ring, 8 mm', { statedStrengthN: 420, lengthMm: 8, massG: 0.3 }),
  ];
}

function demoBond(bondClass: BondClass): StrengthFigures {
  const sources = { maxGapMm: INVENTED, water: INVENTED, maxServiceC: INVENTED };
  return { kind: 'adhesive', sheet: { bondClass, maxGapMm: 1, water: 'immersion', maxServiceC: 45, sources } };
}

function demoFitting(
  id: string,
  kind: 'hook' | 'split-ring',
  name: string,
  figures: Pick<FittingSheet, 'statedStrengthN' | 'lengthMm' | 'massG'>,
): SeedMaterial {
  const strength: StrengthFigures = { kind, sheet: { ...figures, sources: { statedStrengthN: INVENTED } } };
  return { id, kind, name, sheet: null, strength, note: 'Invented for the demo workshop.' };
}

export interface DemoLot {
  readonly id: string;
  readonly materialId: string;
  readonly code: string;
  readonly part: 'resin' | 'hardener' | 'whole';
  readonly quantity: number;
  readonly quantityUnit: 'g' | 'mm' | 'pieces';
  readonly receivedOn: string;
  readonly openedOn: string | null;
  readonly expiresOn: string | null;
  readonly supplierNote: string;
  readonly priceMinor: number | null;
}

/** [code, material, part, quantity, unit, received, opened, expires (days from now), note] */
type LotLine = readonly [
  string,
  string,
  DemoLot['part'],
  number,
  DemoLot['quantityUnit'],
  number,
  number | null,
  number | null,
  string,
];

const LOTS: readonly LotLine[] = [
  ['E30-A-0412', EPOXY_30, 'resin', 1000, 'g', -150, -96, 400, ''],
  ['E30-B-0398', EPOXY_30, 'hardener', 480, 'g', -150, -96, 19, 'Turning yellow; use it up first.'],
  ['E5-A-77', EPOXY_5, 'resin', 120, 'g', -60, -41, 300, ''],
  ['E5-B-77', EPOXY_5, 'hardener', 120, 'g', -60, -41, 300, ''],
  ['E60-A-2210', EPOXY_60, 'resin', 750, 'g', -220, -30, 210, ''],
  ['E60-B-2210', EPOXY_60, 'hardener', 340, 'g', -220, -30, 210, ''],
  ['TC-A-1190', TOPCOAT, 'resin', 500, 'g', -75, -62, 290, ''],
  ['TC-B-1187', TOPCOAT, 'hardener', 500, 'g', -75, -62, 290, ''],
  ['Plank 3', 'start-basswood', 'whole', 12_000, 'mm', -120, -80, null, 'Two inches wide, straight grain.'],
  ['Bundle 1', 'start-white-pine', 'whole', 4800, 'mm', -120, null, null, ''],
  ['Coil 2', 'start-stainless-wire-1-0-mm-soft', 'whole', 22_000, 'mm', -210, -190, null, ''],
  ['Coil 5', 'start-stainless-spring-wire-1-2-mm-hard-drawn', 'whole', 15_000, 'mm', -90, -85, null, ''],
  ['Bag A', 'start-screw-eye-16-x-1-2-mm-stainless', 'whole', 200, 'pieces', -90, -60, null, ''],
  ['Box 4', DEMO_HOOK_4, 'whole', 200, 'pieces', -90, -60, null, ''],
  ['Box 2', DEMO_HOOK_2, 'whole', 50, 'pieces', -90, -50, null, ''],
  ['Bag 6', DEMO_RING, 'whole', 250, 'pieces', -90, -60, null, ''],
  ['Board 1', 'start-hard-maple', 'whole', 3600, 'mm', -120, -30, null, ''],
  ['Sheet 7', 'start-polycarbonate-sheet-1-5-mm', 'whole', 60, 'pieces', -100, -30, null, 'Cut to lip blanks.'],
  ['Tub 1', 'start-tungsten-ball-6-mm', 'whole', 100, 'pieces', -100, -60, null, ''],
  ['Tub 2', 'start-tin-wire-3-mm', 'whole', 5000, 'mm', -100, -60, null, ''],
  ['Card 6', 'start-lure-eye-6-mm', 'whole', 200, 'pieces', -80, -60, null, ''],
  ['Card 8', 'start-lure-eye-8-mm', 'whole', 60, 'pieces', -80, -60, null, ''],
];

/** What was paid for the lots, in minor units: invented. */
const PAID: Readonly<Record<string, number>> = {
  'E30-A-0412': 3150,
  'E30-B-0398': 1890,
  'E5-A-77': 780,
  'E5-B-77': 780,
  'E60-A-2210': 2860,
  'E60-B-2210': 1640,
  'TC-A-1190': 2200,
  'TC-B-1187': 2600,
  'Plank 3': 4200,
  'Bundle 1': 1150,
  'Coil 2': 1430,
  'Coil 5': 1980,
  'Bag A': 1700,
  'Box 4': 9800,
  'Box 2': 3350,
  'Bag 6': 3000,
  'Board 1': 2450,
  'Sheet 7': 1500,
  'Tub 1': 3900,
  'Tub 2': 950,
  'Card 6': 1800,
  // What Card 8 cost was never written down.
};

export function demoLots(times: DemoTimes): readonly DemoLot[] {
  const day = (days: number | null) => (days === null ? null : dayFromNow(times, days));
  return LOTS.map(([code, materialId, part, quantity, quantityUnit, received, opened, expires, supplierNote]) => ({
    id: demoLotId(code),
    materialId,
    code,
    part,
    quantity,
    quantityUnit,
    receivedOn: dayFromNow(times, received),
    openedOn: day(opened),
    expiresOn: day(expires),
    supplierNote,
    priceMinor: PAID[code] ?? null,
  }));
}

export function demoLotId(code: string): string {
  return demoId(`lot-${code.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`);
}

/** Ids of the opened lots of a glue: what a cup is mixed from. */
export function demoLotIds(materialId: string): readonly string[] {
  return LOTS.filter(([, ofMaterial]) => ofMaterial === materialId).map(([code]) => demoLotId(code));
}
