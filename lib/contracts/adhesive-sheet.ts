import { z } from 'zod';
import type { AdhesiveSheet, FigureSource, Milestone } from '@/lib/cure/adhesive-sheet';
import { POT_LIFE_CRITERIA } from '@/lib/cure/adhesive-sheet';

/** A finite number within sane limits; the message names both ends, so that a slip of a decimal place is seen at once. */
function within(least: number, most: number, what: string) {
  const need = `${what} must be a number from ${least} to ${most}.`;
  return z.number({ error: need }).min(least, need).max(most, need);
}

/** A number above zero and not above `most`. */
function positive(most: number, what: string) {
  const need = `${what} must be a number above 0 and at most ${most}.`;
  return z.number({ error: need }).positive(need).max(most, need);
}

/** Text without NUL characters, which neither database keeps. */
function text(most: number, what: string) {
  return z
    .string({ error: `${what} must be text.` })
    .trim()
    .min(1, `${what} must not be empty.`)
    .max(most, `${what} can be at most ${most} characters long.`)
    .refine((value) => !value.includes('\u0000'), `${what} contains a character that cannot be stored.`);
}

function box(figure: z.ZodNumber) {
  return z.strictObject({ low: figure, central: figure, high: figure }).superRefine((value, context) => {
    if (value.low > value.central) {
      context.addIssue({ code: 'custom', path: ['low'], message: 'The lowest value is above the middle one.' });
    }
    if (value.high < value.central) {
      context.addIssue({ code: 'custom', path: ['high'], message: 'The highest value is below the middle one.' });
    }
  });
}

/** Temperatures a workshop, a warm cupboard or a data sheet can name, degC. */
const temperature = (what: string) => within(-30, 80, what);

const YEAR_H = 8760;
const WEEK_MINUTES = 10_080;

const rateLawSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('arrhenius'),
    // A fit outside 10 to 120 kJ/mol is not an epoxy cure but an error in the points: chosen.
    activationEnergyKjPerMol: box(within(10, 120, 'Activation energy (kJ/mol)')),
  }),
  z.strictObject({ kind: z.literal('doubling'), doublingC: box(within(2, 60, 'Degrees that double the rate')) }),
  z.strictObject({ kind: z.literal('plain-hours') }),
]);

const potLifePointSchema = z.strictObject({
  minutes: positive(WEEK_MINUTES, 'Pot life (minutes)'),
  massG: positive(100_000, 'Mass in the cup (g)'),
  temperatureC: temperature('Temperature of the pot life'),
  criterion: z.enum(POT_LIFE_CRITERIA, { error: 'Say what ends the pot life in the test, or "unknown".' }),
});

const milestoneHours = z.strictObject({
  handle: positive(YEAR_H, 'Hours to handling').exactOptional(),
  sand: positive(YEAR_H, 'Hours to sanding').exactOptional(),
  'recoat-from': positive(YEAR_H, 'Hours to the first recoat').exactOptional(),
  'recoat-by': positive(YEAR_H, 'Hours to the last recoat').exactOptional(),
  paint: positive(YEAR_H, 'Hours to painting').exactOptional(),
  'pull-test': positive(YEAR_H, 'Hours to a pull test').exactOptional(),
  ship: positive(YEAR_H, 'Hours to shipping').exactOptional(),
});

const source: z.ZodType<FigureSource> = z.strictObject({
  kind: z.enum(['data-sheet', 'published', 'common-practice', 'from-memory', 'own'], {
    error: 'Say where the figure comes from.',
  }),
  text: text(1_000, 'The source'),
});

const sources = z.strictObject({
  rateLaw: source.exactOptional(),
  minCureC: source.exactOptional(),
  potLife: source.exactOptional(),
  massExponent: source.exactOptional(),
  density: source.exactOptional(),
  ratio: source.exactOptional(),
  handle: source.exactOptional(),
  sand: source.exactOptional(),
  'recoat-from': source.exactOptional(),
  'recoat-by': source.exactOptional(),
  paint: source.exactOptional(),
  'pull-test': source.exactOptional(),
  ship: source.exactOptional(),
});

/** Which milestone cannot come before which, on every sheet: [earlier, later, what to say beside the later one]. */
const ORDERED: readonly (readonly [Milestone, Milestone, string])[] = [
  ['handle', 'sand', 'A piece cannot be sanded before it can be handled.'],
  ['handle', 'paint', 'A piece cannot be painted before it can be handled.'],
  ['handle', 'pull-test', 'A joint cannot be pulled before it can be handled.'],
  ['handle', 'ship', 'A piece cannot be shipped before it can be handled.'],
  ['sand', 'ship', 'A piece cannot be shipped before it can be sanded.'],
  ['paint', 'ship', 'A piece cannot be shipped before it can be painted.'],
];

function checkHours(sheet: AdhesiveSheet, context: z.RefinementCtx): void {
  const hours = sheet.milestoneHours;
  for (const [earlier, later, message] of ORDERED) {
    const before = hours[earlier];
    const after = hours[later];
    if (before !== undefined && after !== undefined && before > after) {
      context.addIssue({ code: 'custom', path: ['milestoneHours', later], message });
    }
  }
  const from = hours['recoat-from'];
  const by = hours['recoat-by'];
  if (from !== undefined && by !== undefined && from >= by) {
    const message = 'The recoat window must close later than it opens.';
    context.addIssue({ code: 'custom', path: ['milestoneHours', 'recoat-by'], message });
  }
  const cap = sheet.recoatCapHours;
  if (cap !== undefined && by === undefined) {
    const message = 'Give the hours to the last recoat as well: the limit by the clock only shortens them.';
    context.addIssue({ code: 'custom', path: ['milestoneHours', 'recoat-by'], message });
  }
  if (cap !== undefined && from !== undefined && from >= cap) {
    const message = 'The limit by the clock must be later than the first recoat.';
    context.addIssue({ code: 'custom', path: ['recoatCapHours'], message });
  }
}

function checkPotLife(sheet: AdhesiveSheet, context: z.RefinementCtx): void {
  if (sheet.ratio !== undefined && sheet.potLife.length === 0) {
    const message = 'A two-part product needs at least one pot life, with its mass and temperature.';
    context.addIssue({ code: 'custom', path: ['potLife'], message });
  }
  const seen = new Set<string>();
  for (const [index, point] of sheet.potLife.entries()) {
    const condition = `${point.massG} ${point.temperatureC} ${point.criterion}`;
    if (seen.has(condition)) {
      const message = 'There is already a pot life at this mass, temperature and end of test.';
      context.addIssue({ code: 'custom', path: ['potLife', index, 'minutes'], message });
    }
    seen.add(condition);
  }
}

/**
 * What a maker may enter as the data sheet of an adhesive or a coat, and what is stored with a material and with
 * each mix. Unknown keys are refused; a figure the sheet does not give is left out, never null or zero.
 * Every issue carries the path of its field. Plain numbers only: units are read before this.
 */
export const adhesiveSheetSchema: z.ZodType<AdhesiveSheet> = z
  .strictObject({
    referenceC: temperature('Temperature the hours are stated at'),
    rateLaw: rateLawSchema,
    minCureC: temperature('Least temperature of cure'),
    potLife: z.array(potLifePointSchema).max(20, 'At most 20 pot lives.'),
    massExponent: box(within(0, 1, 'Mass exponent')).exactOptional(),
    milestoneHours,
    recoatCapHours: positive(YEAR_H, 'Limit by the clock (hours)').exactOptional(),
    recoatRemedy: text(500, 'What to do when the window has closed').exactOptional(),
    maxMassG: positive(100_000, 'Largest mass in one cup (g)').exactOptional(),
    densityA: within(0.5, 5, 'Density of part A (g/mL)').exactOptional(),
    densityB: within(0.5, 5, 'Density of part B (g/mL)').exactOptional(),
    ratio: z
      .strictObject({
        partsA: positive(1_000, 'Parts of A'),
        partsB: positive(1_000, 'Parts of B'),
        basis: z.enum(['mass', 'volume'], { error: 'Say whether the ratio is by mass or by volume.' }),
      })
      .exactOptional(),
    sources,
  })
  .superRefine((sheet, context) => {
    if (sheet.minCureC > sheet.referenceC) {
      const message = 'The least temperature of cure is above the temperature the hours are stated at.';
      context.addIssue({ code: 'custom', path: ['minCureC'], message });
    }
    checkHours(sheet, context);
    checkPotLife(sheet, context);
  });
