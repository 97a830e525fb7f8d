import type { LotPart, MaterialKind } from '@/lib/contracts/material-forms';
import type { FigureName, Milestone, PotLifeCriterion } from '@/lib/cure/adhesive-sheet';
import type { FigureSource } from '@/lib/materials/figure-source';

/** What stands on the screens for the words of the schema. */
export const KIND_WORDS: { readonly [K in MaterialKind]: string } = {
  wood: 'wood',
  wire: 'wire',
  adhesive: 'adhesive',
  coating: 'coating',
  hook: 'hook',
  'split-ring': 'split ring',
  'screw-eye': 'screw eye',
  ballast: 'ballast',
  other: 'other',
};

export const PART_WORDS: { readonly [P in LotPart]: string } = {
  whole: 'whole',
  resin: 'resin',
  hardener: 'hardener',
};

export const MILESTONE_WORDS: { readonly [M in Milestone]: string } = {
  handle: 'Handle',
  sand: 'Sand',
  'recoat-from': 'Recoat from',
  'recoat-by': 'Recoat by',
  paint: 'Paint',
  'pull-test': 'Pull-test',
  ship: 'Ship',
};

export const CRITERION_WORDS: { readonly [C in PotLifeCriterion]: string } = {
  'viscosity-doubled': 'viscosity has doubled',
  'cup-reaches-50C': 'the cup reaches 50 °C',
  'cup-reaches-40C-less-margin': 'the cup reaches 40 °C, less a margin',
  gel: 'it gels',
  'standard-cup': 'a standard test cup says so',
  'thin-film-workable': 'a thin film can no longer be worked',
  unknown: 'the sheet does not say',
};

export const SOURCE_WORDS: { readonly [K in FigureSource['kind']]: string } = {
  'data-sheet': 'Data sheet',
  published: 'Published',
  'common-practice': 'Common practice',
  'from-memory': 'From memory',
  derived: 'Derived',
  chosen: 'Chosen',
  own: 'Own measurement',
};

export const FIGURE_WORDS: { readonly [F in FigureName]: string } = {
  rateLaw: 'How hours follow temperature',
  minCureC: 'Least temperature of cure',
  potLife: 'Pot life',
  massExponent: 'How pot life follows mass',
  density: 'Density',
  ratio: 'Mixing ratio',
  ...MILESTONE_WORDS,
};

/** A figure's source as it stands beside it; one without is the shop's own. */
export function figureSourceText({ kind, text }: FigureSource): string {
  if (kind === 'own') return `Yours: ${text}`;
  // Seeds begin the text with its kind already.
  const word = SOURCE_WORDS[kind];
  return text.toLowerCase().startsWith(word.toLowerCase()) ? text : `${word}: ${text}`;
}
