import { z } from 'zod';
import { BOND_CLASSES, WATER_RATINGS } from '@/lib/materials/adhesive-strength-sheet';
import type { FigureSource } from '@/lib/materials/figure-source';
import { GRAVITY_BASES } from '@/lib/materials/specific-gravity';
import type { StrengthFigures, StrengthKind } from '@/lib/materials/strength-figures';
import { WIRE_ALLOYS, WIRE_TEMPERS } from '@/lib/materials/wire-sheet';
import { WOOD_GROUPS } from '@/lib/materials/wood-regression';
import { WOOD_FIGURES } from '@/lib/materials/wood-sheet';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { optionalSourceText } from './figure-source';
import { numberText, optionalNumberText } from './number-text';
import { diameterNeed, forceNeed, lengthNeed, massNeed, optionalStressText, temperatureNeed } from './quantity-need';
import { optionalQuantityText, quantityText } from './quantity-text';
import {
  adhesiveStrengthSheetSchema,
  fittingSheetSchema,
  screwEyeSheetSchema,
  wireSheetSchema,
  woodSheetSchema,
} from './strength-figures';

export interface StrengthFormInput {
  readonly figures: StrengthFigures;
  /** Version of the material as the form showed it. */
  readonly seenVersion: number;
}

/** Fields of every form: the source that stands for all figures, and the figures' own where they differ. */
const COMMON = {
  seenVersion: z
    .string()
    .regex(/^\d{1,9}$/, 'Reload the page.')
    .transform(Number),
  source: optionalSourceText,
  sources: z.partialRecord(z.string(), optionalSourceText).default({}),
};

/** One of a few words; null where none was chosen. */
function optionalWord<const W extends readonly [string, ...string[]]>(words: W) {
  return z.union([z.literal('').transform(() => null), z.enum(words)], { error: 'Choose one of the list.' });
}

/**
 * The form of a material's strength, by its kind: text in the shop's units, checked as the sheet it becomes. Fields
 * bear the names of the sheet's figures. A figure without a source is the shop's own.
 */
export function strengthFormSchema(kind: StrengthKind, units: UnitChoice): z.ZodType<StrengthFormInput> {
  switch (kind) {
    case 'wood':
      return woodText(units).transform((text, context) =>
        input(text, context, woodSheetSchema.safeParse(woodOf(text)), (sheet) => ({ kind, sheet })),
      );
    case 'wire':
      return wireText(units).transform((text, context) => {
        const { tensileMpa, yieldMpa, alloy, temper, diameterMm } = text;
        const figures = { ...given({ tensileMpa, yieldMpa }), sources: sourcesOf(text, { tensileMpa, yieldMpa }) };
        return input(text, context, wireSheetSchema.safeParse({ alloy, temper, diameterMm, ...figures }), (sheet) => ({
          kind,
          sheet,
        }));
      });
    case 'adhesive':
      return adhesiveText(units).transform((text, context) => {
        const { bondClass, maxGapMm, water, maxServiceC } = text;
        const figures = { maxGapMm, water, maxServiceC };
        const made = { bondClass, ...given(figures), sources: sourcesOf(text, figures) };
        return input(text, context, adhesiveStrengthSheetSchema.safeParse(made), (sheet) => ({ kind, sheet }));
      });
    case 'hook':
    case 'split-ring':
      return fittingText(units).transform((text, context) => {
        const { statedStrengthN, lengthMm, massG } = text;
        const made = { ...given({ statedStrengthN, lengthMm, massG }), sources: sourcesOf(text, { statedStrengthN }) };
        return input(text, context, fittingSheetSchema.safeParse(made), (sheet) => ({ kind, sheet }));
      });
    case 'screw-eye':
      return screwEyeText(units).transform((text, context) =>
        input(text, context, screwEyeSheetSchema.safeParse(screwEyeOf(text)), (sheet) => ({ kind, sheet })),
      );
  }
}

function woodText(units: UnitChoice) {
  const stress = optionalStressText(units, 0.1, 300);
  return z.strictObject({
    ...COMMON,
    group: z.enum(WOOD_GROUPS, { error: 'Say whether it is a hardwood or a softwood.' }),
    specificGravity: numberText(0.05, 1.3),
    gravityBasis: z.enum(GRAVITY_BASES, { error: 'Say at which moisture its volume was taken.' }),
    figuresMoisturePercent: numberText(0, 30),
    shearMpa: stress,
    greenShearMpa: stress,
    tensionPerpMpa: stress,
    greenTensionPerpMpa: stress,
    compressionPerpMpa: stress,
    compressionParallelMpa: stress,
    hardnessN: optionalQuantityText(forceNeed(units, 10, 30_000)),
    intersectionPercent: optionalNumberText(20.1, 39.9),
    needsWeighing: z.enum(['on']).optional(),
  });
}

function woodOf(text: z.infer<ReturnType<typeof woodText>>) {
  const { group, specificGravity, gravityBasis, figuresMoisturePercent, intersectionPercent, needsWeighing } = text;
  const figures = Object.fromEntries(WOOD_FIGURES.map((name) => [name, text[name]]));
  return {
    group,
    gravityBasis,
    figuresMoisturePercent,
    ...given({ ...figures, specificGravity, intersectionPercent }),
    ...(needsWeighing === undefined ? {} : { needsWeighing: true }),
    sources: sourcesOf(text, figures),
  };
}

function wireText(units: UnitChoice) {
  return z.strictObject({
    ...COMMON,
    alloy: z.enum(WIRE_ALLOYS, { error: 'Say what it is made of.' }),
    temper: optionalWord(WIRE_TEMPERS),
    diameterMm: quantityText(diameterNeed(units, 0.1, 12)),
    tensileMpa: optionalStressText(units, 50, 4_000),
    yieldMpa: optionalStressText(units, 20, 4_000),
  });
}

function adhesiveText(units: UnitChoice) {
  return z.strictObject({
    ...COMMON,
    bondClass: z.enum(BOND_CLASSES, { error: 'Say what kind of glue it is.' }),
    maxGapMm: optionalQuantityText(diameterNeed(units, 0.01, 20)),
    water: optionalWord(WATER_RATINGS),
    maxServiceC: z.union([z.literal('').transform(() => null), quantityText(temperatureNeed(units, 0, 300))]),
  });
}

function fittingText(units: UnitChoice) {
  return z.strictObject({
    ...COMMON,
    statedStrengthN: optionalQuantityText(forceNeed(units, 1, 20_000)),
    lengthMm: optionalQuantityText(lengthNeed(units, 0.5, 300)),
    massG: optionalQuantityText(massNeed(units, 0.001, 1_000)),
  });
}

function screwEyeText(units: UnitChoice) {
  return z.strictObject({
    ...COMMON,
    threadDiameterMm: quantityText(diameterNeed(units, 0.1, 12)),
    threadLengthMm: quantityText(lengthNeed(units, 1, 150)),
    eyeInsideMm: optionalQuantityText(diameterNeed(units, 0.5, 50)),
    eye: z.enum(['closed', 'open'], { error: 'Say whether the eye is closed.' }),
    statedStrengthN: optionalQuantityText(forceNeed(units, 1, 20_000)),
    wireDiameterMm: optionalQuantityText(diameterNeed(units, 0.1, 12)),
    wireAlloy: z.enum(WIRE_ALLOYS, { error: 'Say what it is made of.' }),
    wireTemper: optionalWord(WIRE_TEMPERS),
  });
}

function screwEyeOf(text: z.infer<ReturnType<typeof screwEyeText>>) {
  const { threadDiameterMm, threadLengthMm, eyeInsideMm, eye, statedStrengthN, wireDiameterMm } = text;
  return {
    threadDiameterMm,
    threadLengthMm,
    isEyeClosed: eye === 'closed',
    ...given({ eyeInsideMm, statedStrengthN }),
    ...(wireDiameterMm === null
      ? {}
      : { wire: { alloy: text.wireAlloy, temper: text.wireTemper, diameterMm: wireDiameterMm, sources: {} } }),
    sources: sourcesOf(text, { statedStrengthN }),
  };
}

/** Only what was given: a figure nobody entered stays absent. */
function given(figures: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== null && value !== undefined));
}

interface Sourced {
  readonly source: FigureSource | null;
  readonly sources: Readonly<Partial<Record<string, FigureSource | null>>>;
}

/** The source of every figure that was given: its own, else the one for all; none where neither was written. */
function sourcesOf(
  { source, sources }: Sourced,
  figures: Readonly<Record<string, unknown>>,
): Record<string, FigureSource> {
  const named: Record<string, FigureSource> = {};
  for (const name of Object.keys(given(figures))) {
    const own = sources[name] ?? source;
    if (own !== null) named[name] = own;
  }
  return named;
}

function input<S>(
  { seenVersion }: { readonly seenVersion: number },
  context: z.RefinementCtx,
  checked: z.ZodSafeParseResult<S>,
  figures: (sheet: S) => StrengthFigures,
): StrengthFormInput {
  if (checked.success) return { figures: figures(checked.data), seenVersion };
  for (const { path, message } of checked.error.issues) context.addIssue({ code: 'custom', path: [...path], message });
  return z.NEVER;
}
