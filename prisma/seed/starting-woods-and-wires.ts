import type { WireAlloy, WireSheet, WireTemper } from '@/lib/materials/wire-sheet';
import type { WoodSheet } from '@/lib/materials/wood-sheet';
import { WOOD_TABLE } from '@/lib/materials/wood-table';
import { inches } from '@/lib/units/force-and-length';

export interface NamedSheet<Sheet> {
  readonly name: string;
  readonly sheet: Sheet;
  readonly note: string;
}

/** What a wood of the printed tables is called in Stock. */
const WOOD_NAMES: Readonly<Record<string, string>> = {
  'yellow-poplar': 'Yellow-poplar',
  basswood: 'Basswood',
  'red-alder': 'Red alder',
  'white-ash': 'Ash',
  'quaking-aspen': 'Quaking aspen',
  'bigtooth-aspen': 'Bigtooth aspen',
  beech: 'Beech',
  'yellow-birch': 'Birch',
  'paper-birch': 'Paper birch',
  butternut: 'Butternut',
  'eastern-cottonwood': 'Eastern cottonwood',
  'black-cottonwood': 'Black cottonwood',
  'sugar-maple': 'Hard maple',
  'red-maple': 'Red maple',
  'black-willow': 'Black willow',
  baldcypress: 'Baldcypress',
  'western-redcedar': 'Western red cedar',
  'northern-white-cedar': 'Northern white cedar',
  'atlantic-white-cedar': 'Atlantic white cedar',
  'port-orford-cedar': 'Port-Orford cedar',
  'yellow-cedar': 'Yellow cedar',
  'eastern-white-pine': 'White pine',
  'sugar-pine': 'Sugar pine',
  balsa: 'Balsa',
  'true-mahogany': 'True mahogany',
  'african-mahogany': 'African mahogany',
  'spanish-cedar': 'Spanish-cedar',
  jelutong: 'Jelutong',
  obeche: 'Obeche',
  paulownia: 'Paulownia',
};

/** Every wood of the printed tables, with their figures and sources. */
export const STARTING_WOODS: readonly NamedSheet<WoodSheet>[] = WOOD_TABLE.map(({ id, name, sheet }) => ({
  name: WOOD_NAMES[id] ?? name,
  sheet,
  note: `Printed as "${name}". Means of small clear wood, never design values: weigh your own blanks.`,
}));

function wire(name: string, diameterMm: number, temper: WireTemper, alloy: WireAlloy = 'stainless-302-304') {
  return { name, note: '', sheet: { alloy, temper, diameterMm, sources: {} } };
}

/** Diameters that are sold by the thousandth of an inch. */
const THOUSANDTHS = [20, 24, 28, 32, 35, 41, 47, 51, 62] as const;

/** Wires by diameter and temper. Their strength follows from both; the brass one's is left to its maker. */
export const STARTING_WIRES: readonly NamedSheet<WireSheet>[] = [
  ...[0.8, 1].map((mm) => wire(`Stainless wire ${mm.toFixed(1)} mm, soft`, mm, 'soft')),
  ...[0.8, 0.9, 1, 1.2, 1.5].map((mm) => wire(`Stainless spring wire ${mm.toFixed(1)} mm, hard drawn`, mm, 'spring')),
  ...THOUSANDTHS.map((mils) => wire(`Stainless wire .0${mils} in, soft`, inches(mils / 1000), 'soft')),
  ...THOUSANDTHS.map((mils) => wire(`Stainless spring wire .0${mils} in, hard drawn`, inches(mils / 1000), 'spring')),
  wire('Brass wire 1.0 mm, half hard', 1, 'half-hard', 'brass'),
];
