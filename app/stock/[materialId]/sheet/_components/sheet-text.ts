import type { AdhesiveSheet, FigureName, FigureSource } from '@/lib/cure/adhesive-sheet';
import { MILESTONES, type Milestone } from '@/lib/cure/adhesive-sheet';
import { massInput, plainDecimals, temperatureInput } from '@/lib/units/quantity-input';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface SourceText {
  readonly kind: string;
  readonly text: string;
}

export interface PotLifeText {
  readonly minutes: string;
  readonly massG: string;
  readonly temperatureC: string;
  readonly criterion: string;
}

/** A data sheet as the text of its form; empty where nothing was entered. */
export interface SheetText {
  readonly source: SourceText;
  readonly sources: { readonly [F in FigureName]?: SourceText };
  readonly referenceC: string;
  readonly minCureC: string;
  readonly rate: { readonly kind: string; readonly low: string; readonly central: string; readonly high: string };
  readonly potLife: readonly PotLifeText[];
  readonly massExponent: { readonly low: string; readonly central: string; readonly high: string };
  readonly milestoneHours: { readonly [M in Milestone]?: string };
  readonly recoatCapHours: string;
  readonly recoatRemedy: string;
  readonly maxMassG: string;
  readonly densityA: string;
  readonly densityB: string;
  readonly ratio: { readonly partsA: string; readonly partsB: string; readonly basis: string };
}

const NO_BOX = { low: '', central: '', high: '' };

const EMPTY: SheetText = {
  source: { kind: 'data-sheet', text: '' },
  sources: {},
  referenceC: '',
  minCureC: '',
  rate: { kind: 'two-temperatures', ...NO_BOX },
  potLife: [{ minutes: '', massG: '', temperatureC: '', criterion: 'unknown' }],
  massExponent: NO_BOX,
  milestoneHours: {},
  recoatCapHours: '',
  recoatRemedy: '',
  maxMassG: '',
  densityA: '',
  densityB: '',
  ratio: { partsA: '', partsB: '', basis: 'mass' },
};

/** What stands in the form for a sheet; null: an empty form. */
export function sheetText(sheet: AdhesiveSheet | null, units: UnitChoice): SheetText {
  if (sheet === null) return EMPTY;
  const number = (value: number | undefined) => (value === undefined ? '' : plainDecimals(value));
  const temperature = (value: number) => temperatureInput(value, units.temperatureUnit);
  const common = commonSource(sheet);
  return {
    source: common,
    sources: Object.fromEntries(Object.entries(sheet.sources).filter(([, source]) => !isSame(source, common))),
    referenceC: temperature(sheet.referenceC),
    minCureC: temperature(sheet.minCureC),
    rate: rateText(sheet, units),
    potLife: sheet.potLife.map((point) => ({
      minutes: plainDecimals(point.minutes),
      massG: massInput(point.massG, units.massUnit),
      temperatureC: temperature(point.temperatureC),
      criterion: point.criterion,
    })),
    massExponent:
      sheet.massExponent === undefined
        ? NO_BOX
        : boxText(sheet.massExponent.low, sheet.massExponent.central, sheet.massExponent.high),
    milestoneHours: Object.fromEntries(
      MILESTONES.flatMap((milestone) => {
        const hours = sheet.milestoneHours[milestone];
        return hours === undefined ? [] : [[milestone, plainDecimals(hours)]];
      }),
    ),
    recoatCapHours: number(sheet.recoatCapHours),
    recoatRemedy: sheet.recoatRemedy ?? '',
    maxMassG: sheet.maxMassG === undefined ? '' : massInput(sheet.maxMassG, units.massUnit),
    densityA: number(sheet.densityA),
    densityB: number(sheet.densityB),
    ratio: {
      partsA: number(sheet.ratio?.partsA),
      partsB: number(sheet.ratio?.partsB),
      basis: sheet.ratio?.basis ?? 'mass',
    },
  };
}

function rateText({ rateLaw }: AdhesiveSheet, { temperatureUnit }: UnitChoice): SheetText['rate'] {
  switch (rateLaw.kind) {
    case 'arrhenius': {
      const { low, central, high } = rateLaw.activationEnergyKjPerMol;
      return { kind: 'own', ...boxText(low, central, high) };
    }
    case 'doubling': {
      const perDegree = temperatureUnit === 'F' ? 1.8 : 1;
      const { low, central, high } = rateLaw.doublingC;
      return { kind: 'doubling', ...boxText(low * perDegree, central * perDegree, high * perDegree) };
    }
    case 'plain-hours':
      return { kind: 'plain-hours', ...NO_BOX };
  }
}

function boxText(low: number, central: number, high: number) {
  return { low: plainDecimals(low), central: plainDecimals(central), high: plainDecimals(high) };
}

/** The source that most figures share: it stands once at the top, and only the others stand at their figures. */
function commonSource(sheet: AdhesiveSheet): SourceText {
  const all = Object.values(sheet.sources);
  const count = (source: FigureSource) => all.filter((other) => isSame(other, source)).length;
  const best = all.toSorted((a, b) => count(b) - count(a))[0];
  return best === undefined ? EMPTY.source : { kind: best.kind, text: best.text };
}

function isSame(a: SourceText, b: SourceText): boolean {
  return a.kind === b.kind && a.text === b.text;
}
