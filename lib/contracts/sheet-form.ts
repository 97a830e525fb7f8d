import { z } from 'zod';
import { COMMON_ACTIVATION_ENERGY_KJ_PER_MOL, fitActivationEnergy } from '@/lib/cure/activation-energy';
import type { AdhesiveSheet, FigureName, FigureSource, Milestone, RateLaw } from '@/lib/cure/adhesive-sheet';
import { MILESTONES, POT_LIFE_CRITERIA } from '@/lib/cure/adhesive-sheet';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { adhesiveSheetSchema } from './adhesive-sheet';
import { numberText, optionalNumberText } from './number-text';
import { plainText } from './plain-text';
import { massNeed, temperatureNeed } from './quantity-need';
import type { QuantityNeed } from './quantity-text';
import { optionalQuantityText, quantityText } from './quantity-text';
import { optionalDaySchema } from './wall-time';

const SOURCE_KINDS = ['data-sheet', 'published', 'common-practice', 'from-memory', 'own'] as const;

/** Figures that may have a source of their own, other than the sheet's. */
export const FIGURES_WITH_SOURCE: readonly FigureName[] = [
  'rateLaw',
  'minCureC',
  'potLife',
  'massExponent',
  'density',
  'ratio',
  ...MILESTONES,
];

const duration = (bareUnit: 'h' | 'min'): QuantityNeed => ({
  quantity: 'duration',
  bareUnit,
  least: 0.05,
  most: 525_600,
  range: 'above nothing and at most a year',
});

const box = (least: number, most: number) =>
  z.strictObject({
    low: numberText(least, most),
    central: numberText(least, most),
    high: numberText(least, most),
  });

/** The form of a data sheet: text in the shop's units. */
function sheetTextSchema(units: UnitChoice) {
  const temperature = quantityText(temperatureNeed(units, -30, 80));
  const mass = massNeed(units, 0.1, 100_000);
  const ownSource = z
    .strictObject({ kind: z.union([z.literal(''), z.enum(SOURCE_KINDS)]), text: plainText(0, 1_000) })
    .refine(({ kind, text }) => (kind === '') === (text === ''), {
      path: ['text'],
      message: 'Choose the kind of source and write where it stands, or leave both empty.',
    });
  const rate = z.discriminatedUnion(
    'kind',
    [
      z.strictObject({
        kind: z.literal('two-temperatures'),
        firstC: temperature,
        firstTime: quantityText(duration('h')),
        secondC: temperature,
        secondTime: quantityText(duration('h')),
      }),
      z.strictObject({ kind: z.literal('common') }),
      z.strictObject({ kind: z.literal('own'), ...box(10, 120).shape }),
      z.strictObject({ kind: z.literal('doubling'), ...box(2, 120).shape }),
      z.strictObject({ kind: z.literal('plain-hours') }),
    ],
    { error: 'Choose how the hours follow the temperature.' },
  );
  const hours = optionalQuantityText(duration('h'));
  const milestones: { readonly [M in Milestone]: typeof hours } = {
    handle: hours,
    sand: hours,
    'recoat-from': hours,
    'recoat-by': hours,
    paint: hours,
    'pull-test': hours,
    ship: hours,
  };
  return z.strictObject({
    seenVersion: z
      .string()
      .regex(/^\d{1,9}$/)
      .transform(Number),
    sheetRevision: plainText(0, 120),
    sheetOn: optionalDaySchema,
    source: z.strictObject({
      kind: z.enum(SOURCE_KINDS, { error: 'Say where the figures come from.' }),
      text: plainText(1, 1_000),
    }),
    referenceC: temperature,
    minCureC: temperature,
    rate,
    potLife: z
      .array(
        z.strictObject({
          minutes: quantityText(duration('min')),
          massG: quantityText(mass),
          temperatureC: temperature,
          criterion: z.enum(POT_LIFE_CRITERIA, { error: 'Say what ends it in the test.' }),
        }),
      )
      .max(20, 'Keep it to 20 pot lives.')
      .default([]),
    massExponent: z.strictObject({
      low: optionalNumberText(0, 1),
      central: optionalNumberText(0, 1),
      high: optionalNumberText(0, 1),
    }),
    milestoneHours: z.strictObject(milestones),
    recoatCapHours: hours,
    recoatRemedy: plainText(0, 500),
    maxMassG: optionalQuantityText(mass),
    densityA: optionalNumberText(0.5, 5),
    densityB: optionalNumberText(0.5, 5),
    ratio: z.strictObject({
      partsA: optionalNumberText(0.001, 1_000),
      partsB: optionalNumberText(0.001, 1_000),
      basis: z.enum(['mass', 'volume']),
    }),
    sources: z.partialRecord(z.string(), ownSource).default({}),
  });
}

type SheetText = z.infer<ReturnType<typeof sheetTextSchema>>;

export interface SheetFormInput {
  readonly sheet: AdhesiveSheet;
  readonly sheetRevision: string;
  readonly sheetOn: string | null;
  readonly seenVersion: number;
}

/** A data sheet as a maker typed it, checked as the sheet it becomes. Every issue names the field of the form. */
export function sheetFormSchema(units: UnitChoice) {
  return sheetTextSchema(units).transform((text, context): SheetFormInput => {
    const rateLaw = rateLawOf(text, units);
    if (!rateLaw.ok) {
      context.addIssue({ code: 'custom', path: ['rate', 'secondTime'], message: rateLaw.message });
      return z.NEVER;
    }
    const exponent = wholeBox(text.massExponent);
    const { partsA, partsB, basis } = text.ratio;
    if (exponent === 'part' || (partsA === null) !== (partsB === null)) {
      const path = exponent === 'part' ? ['massExponent', 'low'] : ['ratio', partsA === null ? 'partsA' : 'partsB'];
      context.addIssue({ code: 'custom', path, message: 'Fill in all of these, or none.' });
      return z.NEVER;
    }
    const milestoneHours = hoursOf(text);
    const draft = {
      referenceC: text.referenceC,
      rateLaw: rateLaw.law,
      minCureC: text.minCureC,
      potLife: text.potLife,
      ...(exponent === null ? {} : { massExponent: exponent }),
      milestoneHours,
      ...(text.recoatCapHours === null ? {} : { recoatCapHours: text.recoatCapHours / 60 }),
      ...(text.recoatRemedy === '' ? {} : { recoatRemedy: text.recoatRemedy }),
      ...(text.maxMassG === null ? {} : { maxMassG: text.maxMassG }),
      ...(text.densityA === null ? {} : { densityA: text.densityA }),
      ...(text.densityB === null ? {} : { densityB: text.densityB }),
      ...(partsA === null || partsB === null ? {} : { ratio: { partsA, partsB, basis } }),
    };
    const checked = adhesiveSheetSchema.safeParse({ ...draft, sources: sourcesOf(text, draft, rateLaw.source) });
    if (!checked.success) {
      for (const issue of checked.error.issues) {
        context.addIssue({ code: 'custom', path: fieldPath(issue.path), message: issue.message });
      }
      return z.NEVER;
    }
    const { sheetRevision, sheetOn, seenVersion } = text;
    return { sheet: checked.data, sheetRevision, sheetOn, seenVersion };
  });
}

function hoursOf({ milestoneHours }: SheetText): AdhesiveSheet['milestoneHours'] {
  return Object.fromEntries(
    MILESTONES.flatMap((milestone) => {
      const minutes = milestoneHours[milestone];
      return minutes === null ? [] : [[milestone, minutes / 60]];
    }),
  );
}

function wholeBox({ low, central, high }: SheetText['massExponent']) {
  if (low === null && central === null && high === null) return null;
  return low === null || central === null || high === null ? 'part' : { low, central, high };
}

type RateLawOf =
  | { readonly ok: true; readonly law: RateLaw; readonly source: FigureSource }
  | { readonly ok: false; readonly message: string };

function rateLawOf({ rate, source }: SheetText, { temperatureUnit }: UnitChoice): RateLawOf {
  switch (rate.kind) {
    case 'two-temperatures': {
      const first = { temperatureC: rate.firstC, minutes: rate.firstTime };
      const second = { temperatureC: rate.secondC, minutes: rate.secondTime };
      const fit = fitActivationEnergy(first, second);
      if (!fit.ok) return { ok: false, message: FIT_REFUSALS[fit.code] };
      const text = `${source.text}: the same step takes ${stepText(first)} and ${stepText(second)}, which gives ${fit.kjPerMol.toFixed(1)} kJ/mol; 5 either way are chosen.`;
      return {
        ok: true,
        law: { kind: 'arrhenius', activationEnergyKjPerMol: fit.box },
        source: { kind: source.kind, text },
      };
    }
    case 'common':
      return {
        ok: true,
        law: { kind: 'arrhenius', activationEnergyKjPerMol: COMMON_ACTIVATION_ENERGY_KJ_PER_MOL },
        source: {
          kind: 'published',
          text: 'The sheet gives one temperature. Amine-cured epoxies lie between 44 and 67 kJ/mol (Thermochim. Acta 447 (2006) 167-177; Barral et al., J. Appl. Polym. Sci. 56 (1995) 1029-1037); the box of 45 to 65 is chosen.',
        },
      };
    case 'own':
      return {
        ok: true,
        law: { kind: 'arrhenius', activationEnergyKjPerMol: { low: rate.low, central: rate.central, high: rate.high } },
        source,
      };
    case 'doubling': {
      // Typed as a difference in the shop's degrees.
      const perDegree = temperatureUnit === 'F' ? 1 / 1.8 : 1;
      const doublingC = {
        low: rate.low * perDegree,
        central: rate.central * perDegree,
        high: rate.high * perDegree,
      };
      return { ok: true, law: { kind: 'doubling', doublingC }, source };
    }
    case 'plain-hours':
      return { ok: true, law: { kind: 'plain-hours' }, source };
  }
}

const FIT_REFUSALS = {
  'not-positive': 'Both times must be above nothing.',
  'same-temperature': 'Give two different temperatures.',
  'not-faster-when-warmer': 'The warmer one must be the faster one. Look whether the two times are swapped.',
  impossible:
    'No cure changes that much or that little between these temperatures. Look whether both times are of the same step.',
} as const;

function stepText({ temperatureC, minutes }: { readonly temperatureC: number; readonly minutes: number }): string {
  const time = minutes < 120 ? `${Number(minutes.toFixed(1))} min` : `${Number((minutes / 60).toFixed(2))} h`;
  return `${time} at ${Number(temperatureC.toFixed(1))} degC`;
}

/** The source of every figure that was given: its own, or the sheet's. */
function sourcesOf(
  text: SheetText,
  draft: Partial<AdhesiveSheet> & Pick<AdhesiveSheet, 'potLife' | 'milestoneHours'>,
  rateSource: FigureSource,
): Partial<Record<FigureName, FigureSource>> {
  const isGiven = (figure: FigureName): boolean => {
    switch (figure) {
      case 'rateLaw':
      case 'minCureC':
        return true;
      case 'potLife':
        return draft.potLife.length > 0;
      case 'massExponent':
        return draft.massExponent !== undefined;
      case 'density':
        return draft.densityA !== undefined || draft.densityB !== undefined;
      case 'ratio':
        return draft.ratio !== undefined;
      default:
        return draft.milestoneHours[figure] !== undefined;
    }
  };
  return Object.fromEntries(
    FIGURES_WITH_SOURCE.filter(isGiven).map((figure) => {
      const own = text.sources[figure];
      if (own !== undefined && own.kind !== '') return [figure, { kind: own.kind, text: own.text }];
      return [figure, figure === 'rateLaw' ? rateSource : text.source];
    }),
  );
}

/** Where the form shows what is wrong with a part of the sheet. */
function fieldPath(path: readonly PropertyKey[]): PropertyKey[] {
  if (path[0] === 'rateLaw') return ['rate', ...path.slice(-1)];
  return [...path];
}
