import { BOND_CLASSES, type BondClass, WATER_RATINGS, type WaterRating } from '@/lib/materials/adhesive-strength-sheet';
import type { FigureSource } from '@/lib/materials/figure-source';
import { GRAVITY_BASES, type GravityBasis } from '@/lib/materials/specific-gravity';
import type { StrengthFigures, StrengthKind } from '@/lib/materials/strength-figures';
import { WIRE_ALLOYS, WIRE_TEMPERS, type WireAlloy, type WireTemper } from '@/lib/materials/wire-sheet';
import { WOOD_GROUPS } from '@/lib/materials/wood-regression';

const TEMPER_WORDS: { readonly [T in WireTemper]: string } = {
  spring: 'spring, hard drawn',
  'half-hard': 'half hard',
  soft: 'soft, annealed',
};

const ALLOY_WORDS: { readonly [A in WireAlloy]: string } = {
  'stainless-302-304': 'stainless 302 or 304',
  'stainless-316': 'stainless 316',
  brass: 'brass',
  other: 'another',
};

const BASIS_WORDS: { readonly [B in GravityBasis]: string } = {
  green: 'green volume',
  'at-12': 'volume at 12 % moisture',
  'oven-dry': 'oven-dry volume',
};

const BOND_WORDS: { readonly [B in BondClass]: string } = {
  'slow-epoxy': 'epoxy, slow',
  'fast-epoxy': 'epoxy, fast',
  polyurethane: 'polyurethane',
  cyanoacrylate: 'cyanoacrylate',
  other: 'another',
};

const WATER_WORDS: { readonly [W in WaterRating]: string } = {
  immersion: 'stands immersion',
  splash: 'stands splashes only',
  none: 'stands no water',
};

export interface WordChoice {
  readonly value: string;
  readonly label: string;
}

/** How a figure is typed and shown. */
export type FigureUnit = 'stress' | 'diameter' | 'length' | 'force' | 'mass' | 'temperature' | 'percent' | 'none';

interface FieldCommon {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly isOptional?: boolean;
}

/** One field of a material's strength: a figure, one of a few words, or a box to tick. */
export type StrengthField =
  | (FieldCommon & { readonly field: 'figure'; readonly unit: FigureUnit; readonly hasSource?: boolean })
  | (FieldCommon & { readonly field: 'word'; readonly words: readonly WordChoice[]; readonly hasSource?: boolean })
  | (FieldCommon & { readonly field: 'tick' });

function choices<W extends string>(of: readonly W[], words: { readonly [K in W]: string }): readonly WordChoice[] {
  return of.map((value) => ({ value, label: words[value] }));
}

const sourced = (name: string, label: string, unit: FigureUnit, hint?: string): StrengthField => ({
  field: 'figure',
  name,
  label,
  unit,
  isOptional: true,
  hasSource: true,
  ...(hint === undefined ? {} : { hint }),
});

const alloys = choices(WIRE_ALLOYS, ALLOY_WORDS);
const tempers = choices(WIRE_TEMPERS, TEMPER_WORDS);
const TEMPER_HINT = 'Spring and soft wire of one diameter differ by three to four times.';
const STATED_HINT = 'As its maker states it. There is no standard, so nothing is computed without it.';

const FITTING: readonly StrengthField[] = [
  sourced('statedStrengthN', 'Stated strength', 'force', STATED_HINT),
  {
    field: 'figure',
    name: 'lengthMm',
    label: 'Length it hangs down by',
    unit: 'length',
    isOptional: true,
    hint: 'Outside diameter of a ring, eye to bend of a hook.',
  },
  { field: 'figure', name: 'massG', label: 'Mass', unit: 'mass', isOptional: true },
];

/** Fields of the form of a material's strength, by its kind. They bear the names of the sheet's figures. */
export const STRENGTH_FIELDS: { readonly [K in StrengthKind]: readonly StrengthField[] } = {
  wood: [
    {
      field: 'word',
      name: 'group',
      label: 'Group',
      words: choices(WOOD_GROUPS, { hardwood: 'hardwood', softwood: 'softwood' }),
    },
    { ...sourced('specificGravity', 'Specific gravity', 'none'), isOptional: false },
    {
      field: 'word',
      name: 'gravityBasis',
      label: 'Specific gravity is on the',
      words: choices(GRAVITY_BASES, BASIS_WORDS),
    },
    { field: 'figure', name: 'figuresMoisturePercent', label: 'Moisture of the figures', unit: 'percent' },
    sourced(
      'shearMpa',
      'Shear along the grain',
      'stress',
      'What a bond shears off. Estimated from density without it.',
    ),
    sourced('tensionPerpMpa', 'Tension across the grain', 'stress', 'What splits.'),
    sourced('compressionParallelMpa', 'Compression along the grain', 'stress'),
    sourced('compressionPerpMpa', 'Compression across the grain', 'stress'),
    sourced('hardnessN', 'Side hardness', 'force'),
    sourced('greenShearMpa', 'Shear when green', 'stress', 'Tells how moisture weakens it.'),
    sourced('greenTensionPerpMpa', 'Tension across when green', 'stress'),
    {
      field: 'figure',
      name: 'intersectionPercent',
      label: 'Moisture where drying strengthens',
      unit: 'percent',
      isOptional: true,
      hint: '25 % unless a table says otherwise.',
    },
    {
      field: 'tick',
      name: 'needsWeighing',
      label: 'Sold at densities so far apart that each blank must be weighed',
    },
  ],
  wire: [
    { field: 'word', name: 'alloy', label: 'Made of', words: alloys },
    { field: 'word', name: 'temper', label: 'Temper', words: tempers, isOptional: true, hint: TEMPER_HINT },
    { field: 'figure', name: 'diameterMm', label: 'Diameter', unit: 'diameter' },
    sourced('tensileMpa', 'Tensile strength', 'stress', "The maker's own least; wins over the standards' tables."),
    sourced('yieldMpa', 'Yield strength', 'stress'),
  ],
  adhesive: [
    { field: 'word', name: 'bondClass', label: 'Kind of glue', words: choices(BOND_CLASSES, BOND_WORDS) },
    sourced('maxGapMm', 'Widest gap it fills', 'diameter', 'From wire to wall.'),
    {
      field: 'word',
      name: 'water',
      label: 'Water',
      words: choices(WATER_RATINGS, WATER_WORDS),
      isOptional: true,
      hasSource: true,
    },
    sourced('maxServiceC', 'Warmest service', 'temperature'),
  ],
  hook: FITTING,
  'split-ring': FITTING,
  'screw-eye': [
    { field: 'figure', name: 'threadDiameterMm', label: 'Thread, outside diameter', unit: 'diameter' },
    {
      field: 'figure',
      name: 'threadLengthMm',
      label: 'Length of full thread',
      unit: 'length',
      hint: 'Without the bevelled tip.',
    },
    { field: 'figure', name: 'eyeInsideMm', label: 'Eye inside', unit: 'diameter', isOptional: true },
    {
      field: 'word',
      name: 'eye',
      label: 'Eye',
      words: [
        { value: 'closed', label: 'welded or brazed shut' },
        { value: 'open', label: 'open' },
      ],
    },
    sourced('statedStrengthN', 'Stated strength', 'force', STATED_HINT),
    { field: 'figure', name: 'wireDiameterMm', label: 'Its wire', unit: 'diameter', isOptional: true },
    { field: 'word', name: 'wireAlloy', label: 'Made of', words: alloys },
    { field: 'word', name: 'wireTemper', label: 'Temper', words: tempers, isOptional: true, hint: TEMPER_HINT },
  ],
};

/** Values by the names of the fields; what is not known is absent. */
export type StrengthValues = Readonly<Record<string, number | string | boolean>>;

/** The figures of a material by the names of its fields. */
export function strengthValues(figures: StrengthFigures): StrengthValues {
  if (figures.kind !== 'screw-eye') return plainValues(figures.sheet);
  const { isEyeClosed, wire, ...rest } = figures.sheet;
  const ofWire: StrengthValues =
    wire === undefined ? {} : { wireDiameterMm: wire.diameterMm, wireAlloy: wire.alloy, wireTemper: wire.temper ?? '' };
  return { ...plainValues(rest), eye: isEyeClosed ? 'closed' : 'open', ...ofWire };
}

function plainValues(sheet: object): StrengthValues {
  return Object.fromEntries(
    Object.entries(sheet).filter(([, value]) => ['number', 'string', 'boolean'].includes(typeof value)),
  );
}

/** The source of every figure that has one, by the names of the fields. */
export function strengthSources({ sheet }: StrengthFigures): Readonly<Partial<Record<string, FigureSource>>> {
  return sheet.sources;
}
