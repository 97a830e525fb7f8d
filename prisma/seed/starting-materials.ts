import type { MaterialKind } from '@/lib/contracts/material-forms';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import type { AdhesiveStrengthSheet } from '@/lib/materials/adhesive-strength-sheet';
import type { StrengthFigures } from '@/lib/materials/strength-figures';
import { cyanoacrylateStrength, fastEpoxyStrength, polyurethaneStrength, slowEpoxyStrength } from './starting-bonds';
import { fastLaminatingEpoxy, fiveMinuteEpoxy, slowEpoxy, topcoatEpoxy } from './starting-epoxies';
import { OPEN_STRENGTH, SCREW_EYES, SPLIT_RINGS } from './starting-fittings';
import { cyanoacrylate, lacquer, moistureCureUrethane, onePartPolyurethane, uvAcrylate } from './starting-plain-sheets';
import { STARTING_WIRES, STARTING_WOODS } from './starting-woods-and-wires';

/** A material as a seed writes it. Only glues and coats have a sheet. */
export interface SeedMaterial {
  readonly id: string;
  readonly kind: MaterialKind;
  readonly name: string;
  readonly sheet: AdhesiveSheet | null;
  /** What is known of its strength; null: nothing. */
  readonly strength: StrengthFigures | null;
  readonly note: string;
  readonly sheetRevision?: string;
  /** YYYY-MM-DD. */
  readonly sheetOn?: string;
}

const GENERAL =
  'General figures of this class, the cautious end of what is commonly printed. Replace them with the data sheet of your product.';

function sheeted(
  id: string,
  kind: 'adhesive' | 'coating',
  name: string,
  sheet: AdhesiveSheet,
  more: { readonly note?: string; readonly strength?: AdhesiveStrengthSheet } = {},
): SeedMaterial {
  const note = more.note === undefined ? GENERAL : `${GENERAL} ${more.note}`;
  const strength: StrengthFigures | null =
    more.strength === undefined ? null : { kind: 'adhesive', sheet: more.strength };
  return { id: `start-${id}`, kind, name, sheet, strength, note };
}

function plain(kind: MaterialKind, names: readonly string[], note = ''): readonly SeedMaterial[] {
  return names.map((name) => ({ id: `start-${idOf(name)}`, kind, name, sheet: null, strength: null, note }));
}

function strong(name: string, strength: StrengthFigures, note = ''): SeedMaterial {
  return { id: `start-${idOf(name)}`, kind: strength.kind, name, sheet: null, strength, note };
}

const woods = STARTING_WOODS.map(({ name, sheet, note }) => strong(name, { kind: 'wood', sheet }, note));
const wires = STARTING_WIRES.map(({ name, sheet, note }) => strong(name, { kind: 'wire', sheet }, note));

/** Letters and digits of a name, with hyphens between: stable as long as the name is. */
function idOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/**
 * What every new shop finds in Stock: classes of glue and coat with general figures, woods with the figures of the
 * printed tables, wires by diameter and temper, and hardware by name. Of hooks, rings and screw eyes only their makers
 * know the strength, so it is left open.
 */
export const STARTING_MATERIALS: readonly SeedMaterial[] = [
  sheeted('epoxy-five-minute', 'adhesive', '5-minute epoxy (general)', fiveMinuteEpoxy, {
    note: 'Its five minutes are the gel time, not the time to work.',
    strength: fastEpoxyStrength,
  }),
  sheeted('epoxy-fast', 'adhesive', 'Fast laminating epoxy (general)', fastLaminatingEpoxy, {
    strength: { ...slowEpoxyStrength, bondClass: 'fast-epoxy' },
  }),
  sheeted('epoxy-slow', 'adhesive', '30-minute epoxy (general)', slowEpoxy, { strength: slowEpoxyStrength }),
  sheeted('cyanoacrylate', 'adhesive', 'Cyanoacrylate (general)', cyanoacrylate, {
    strength: cyanoacrylateStrength,
  }),
  sheeted('polyurethane-one-part', 'adhesive', 'One-part polyurethane glue (general)', onePartPolyurethane, {
    strength: polyurethaneStrength,
  }),
  sheeted('epoxy-topcoat', 'coating', 'Epoxy topcoat (general)', topcoatEpoxy),
  sheeted('urethane-moisture-cure', 'coating', 'Moisture-cure urethane (general)', moistureCureUrethane, {
    note: 'Holds isocyanates: follow its safety data sheet.',
  }),
  sheeted('lacquer', 'coating', 'Solvent lacquer (general)', lacquer),
  sheeted('uv-coat', 'coating', 'UV-cure acrylate (general)', uvAcrylate, {
    note: 'What counts is the dose of light, not the hours: enter yours.',
  }),
  ...woods,
  ...wires,
  ...SCREW_EYES.map(({ name, sheet }) => strong(name, { kind: 'screw-eye', sheet }, OPEN_STRENGTH)),
  ...SPLIT_RINGS.map(({ name, sheet }) => strong(name, { kind: 'split-ring', sheet }, OPEN_STRENGTH)),
  ...plain(
    'hook',
    ['Treble hook size 6', 'Treble hook size 4', 'Treble hook size 2', 'Treble hook size 1/0', 'Single hook size 2/0'],
    OPEN_STRENGTH,
  ),
  ...plain('ballast', ['Tungsten ball 5 mm', 'Tungsten ball 6 mm', 'Tin wire 3 mm']),
  ...plain('other', [
    'Lure eye 6 mm',
    'Lure eye 8 mm',
    'Polycarbonate sheet 1.5 mm',
    'Water-based airbrush paint',
    'Sanding sealer, water-based',
  ]),
];
