import { z } from 'zod';
import { type AdhesiveStrengthSheet, BOND_CLASSES, WATER_RATINGS } from '@/lib/materials/adhesive-strength-sheet';
import type { FittingSheet, ScrewEyeSheet } from '@/lib/materials/fitting-sheet';
import { GRAVITY_BASES } from '@/lib/materials/specific-gravity';
import type { StrengthFigures, StrengthKind } from '@/lib/materials/strength-figures';
import { WIRE_ALLOYS, WIRE_TEMPERS, type WireSheet } from '@/lib/materials/wire-sheet';
import { WOOD_GROUPS } from '@/lib/materials/wood-regression';
import type { WoodSheet } from '@/lib/materials/wood-sheet';
import { figureSourceSchema } from './figure-source';

/** A number between two ends that the message names, so that a slip of a decimal place is seen at once. */
function within(least: number, most: number, what: string) {
  const need = `${what} must be a number from ${least} to ${most}.`;
  return z.number({ error: need }).min(least, need).max(most, need);
}

const source = figureSourceSchema.exactOptional();
const stress = (what: string) => within(0.1, 300, `${what} (MPa)`).exactOptional();
const load = within(1, 20_000, 'Stated strength (N)').exactOptional();
const diameter = within(0.1, 12, 'Diameter (mm)');

/** A wood's figures as they are stored; one that is not known is left out, never null or zero. */
export const woodSheetSchema: z.ZodType<WoodSheet> = z.strictObject({
  group: z.enum(WOOD_GROUPS, { error: 'Say whether it is a hardwood or a softwood.' }),
  specificGravity: within(0.05, 1.3, 'Specific gravity'),
  gravityBasis: z.enum(GRAVITY_BASES, { error: 'Say at which moisture its volume was taken.' }),
  figuresMoisturePercent: within(0, 30, 'Moisture of the figures (%)'),
  shearMpa: stress('Shear along the grain'),
  greenShearMpa: stress('Green shear along the grain'),
  tensionPerpMpa: stress('Tension across the grain'),
  greenTensionPerpMpa: stress('Green tension across the grain'),
  compressionPerpMpa: stress('Compression across the grain'),
  compressionParallelMpa: stress('Compression along the grain'),
  hardnessN: within(10, 30_000, 'Side hardness (N)').exactOptional(),
  intersectionPercent: within(20.1, 39.9, 'Moisture at which drying strengthens (%)').exactOptional(),
  needsWeighing: z.boolean().exactOptional(),
  sources: z.strictObject({
    specificGravity: source,
    shearMpa: source,
    greenShearMpa: source,
    tensionPerpMpa: source,
    greenTensionPerpMpa: source,
    compressionPerpMpa: source,
    compressionParallelMpa: source,
    hardnessN: source,
  }),
});

/** A wire's figures as they are stored. `temper` null: nobody has said, and its strength is not judged. */
export const wireSheetSchema: z.ZodType<WireSheet> = z
  .strictObject({
    alloy: z.enum(WIRE_ALLOYS, { error: 'Say what it is made of.' }),
    temper: z.enum(WIRE_TEMPERS, { error: 'Say how hard it is drawn, or leave it open.' }).nullable(),
    diameterMm: diameter,
    tensileMpa: within(50, 4_000, 'Tensile strength (MPa)').exactOptional(),
    yieldMpa: within(20, 4_000, 'Yield strength (MPa)').exactOptional(),
    sources: z.strictObject({ tensileMpa: source, yieldMpa: source }),
  })
  .superRefine(({ tensileMpa, yieldMpa }, context) => {
    if (tensileMpa === undefined || yieldMpa === undefined || yieldMpa <= tensileMpa) return;
    const message = 'Wire cannot yield above the load it breaks at.';
    context.addIssue({ code: 'custom', path: ['yieldMpa'], message });
  });

/** The strength side of an adhesive as it is stored. */
export const adhesiveStrengthSheetSchema: z.ZodType<AdhesiveStrengthSheet> = z.strictObject({
  bondClass: z.enum(BOND_CLASSES, { error: 'Say what kind of glue it is.' }),
  maxGapMm: within(0.01, 20, 'Widest gap (mm)').exactOptional(),
  water: z.enum(WATER_RATINGS, { error: 'Say what water it stands.' }).exactOptional(),
  maxServiceC: within(0, 300, 'Warmest service temperature (degC)').exactOptional(),
  sources: z.strictObject({ maxGapMm: source, water: source, maxServiceC: source }),
});

/** A split ring or a hook as it is stored. */
export const fittingSheetSchema: z.ZodType<FittingSheet> = z.strictObject({
  statedStrengthN: load,
  lengthMm: within(0.5, 300, 'Length (mm)').exactOptional(),
  massG: within(0.001, 1_000, 'Mass (g)').exactOptional(),
  sources: z.strictObject({ statedStrengthN: source }),
});

/** A screw eye as it is stored. */
export const screwEyeSheetSchema: z.ZodType<ScrewEyeSheet> = z.strictObject({
  threadDiameterMm: diameter,
  threadLengthMm: within(1, 150, 'Length of thread (mm)'),
  eyeInsideMm: within(0.5, 50, 'Eye inside (mm)').exactOptional(),
  isEyeClosed: z.boolean({ error: 'Say whether the eye is closed.' }),
  wire: wireSheetSchema.exactOptional(),
  statedStrengthN: load,
  sources: z.strictObject({ statedStrengthN: source }),
});

/** Reads stored figures of strength back, by the kind of the material. Throws ZodError for figures of another kind. */
export function readStrengthFigures(kind: StrengthKind, figures: unknown): StrengthFigures {
  switch (kind) {
    case 'wood':
      return { kind, sheet: woodSheetSchema.parse(figures) };
    case 'wire':
      return { kind, sheet: wireSheetSchema.parse(figures) };
    case 'adhesive':
      return { kind, sheet: adhesiveStrengthSheetSchema.parse(figures) };
    case 'hook':
    case 'split-ring':
      return { kind, sheet: fittingSheetSchema.parse(figures) };
    case 'screw-eye':
      return { kind, sheet: screwEyeSheetSchema.parse(figures) };
  }
}
