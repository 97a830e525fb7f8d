import type { MaterialKind } from '@/lib/contracts/material-forms';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { fastLaminatingEpoxy, fiveMinuteEpoxy, slowEpoxy, topcoatEpoxy } from './starting-epoxies';
import { cyanoacrylate, lacquer, moistureCureUrethane, onePartPolyurethane, uvAcrylate } from './starting-plain-sheets';

/** A material as a seed writes it. Only glues and coats have a sheet. */
export interface SeedMaterial {
  readonly id: string;
  readonly kind: MaterialKind;
  readonly name: string;
  readonly sheet: AdhesiveSheet | null;
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
  more = '',
): SeedMaterial {
  return { id: `start-${id}`, kind, name, sheet, note: more === '' ? GENERAL : `${GENERAL} ${more}` };
}

function plain(kind: MaterialKind, names: readonly string[], note = ''): readonly SeedMaterial[] {
  return names.map((name) => ({ id: `start-${idOf(name)}`, kind, name, sheet: null, note }));
}

/** Letters and digits of a name, with hyphens between: stable as long as the name is. */
function idOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/**
 * What every new shop finds in Stock: classes of glue and coat with general figures, and woods, wires and hardware
 * with their names alone. Wire carries its diameter and temper in the name. No figures of strength are given.
 */
export const STARTING_MATERIALS: readonly SeedMaterial[] = [
  sheeted(
    'epoxy-five-minute',
    'adhesive',
    '5-minute epoxy (general)',
    fiveMinuteEpoxy,
    'Its five minutes are the gel time, not the time to work.',
  ),
  sheeted('epoxy-fast', 'adhesive', 'Fast laminating epoxy (general)', fastLaminatingEpoxy),
  sheeted('epoxy-slow', 'adhesive', '30-minute epoxy (general)', slowEpoxy),
  sheeted('cyanoacrylate', 'adhesive', 'Cyanoacrylate (general)', cyanoacrylate),
  sheeted('polyurethane-one-part', 'adhesive', 'One-part polyurethane glue (general)', onePartPolyurethane),
  sheeted('epoxy-topcoat', 'coating', 'Epoxy topcoat (general)', topcoatEpoxy),
  sheeted(
    'urethane-moisture-cure',
    'coating',
    'Moisture-cure urethane (general)',
    moistureCureUrethane,
    'Holds isocyanates: follow its safety data sheet.',
  ),
  sheeted('lacquer', 'coating', 'Solvent lacquer (general)', lacquer),
  sheeted(
    'uv-coat',
    'coating',
    'UV-cure acrylate (general)',
    uvAcrylate,
    'What counts is the dose of light, not the hours: enter yours.',
  ),
  ...plain('wood', [
    'Basswood',
    'Balsa',
    'Western red cedar',
    'White pine',
    'Hard maple',
    'Beech',
    'Birch',
    'Paulownia',
    'Jelutong',
    'Ash',
  ]),
  ...plain('wire', [
    'Stainless wire 0.8 mm, soft',
    'Stainless wire 1.0 mm, soft',
    'Stainless spring wire 0.8 mm, hard drawn',
    'Stainless spring wire 0.9 mm, hard drawn',
    'Stainless spring wire 1.0 mm, hard drawn',
    'Stainless spring wire 1.2 mm, hard drawn',
    'Stainless spring wire 1.5 mm, hard drawn',
    'Brass wire 1.0 mm, half hard',
  ]),
  ...plain('screw-eye', [
    'Screw eye 12 x 1.0 mm, stainless',
    'Screw eye 16 x 1.2 mm, stainless',
    'Screw eye 20 x 1.5 mm, stainless',
  ]),
  ...plain('split-ring', ['Split ring 6 mm, stainless', 'Split ring 8 mm, stainless', 'Split ring 10 mm, stainless']),
  ...plain('hook', [
    'Treble hook size 6',
    'Treble hook size 4',
    'Treble hook size 2',
    'Treble hook size 1/0',
    'Single hook size 2/0',
  ]),
  ...plain('ballast', ['Tungsten ball 5 mm', 'Tungsten ball 6 mm', 'Tin wire 3 mm']),
  ...plain('other', [
    'Lure eye 6 mm',
    'Lure eye 8 mm',
    'Polycarbonate sheet 1.5 mm',
    'Water-based airbrush paint',
    'Sanding sealer, water-based',
  ]),
];
