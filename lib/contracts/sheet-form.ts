import { z } from 'zod';
import type { AdhesiveSheet, FigureName, FigureSource } from '@/lib/cure/adhesive-sheet';
import { MILESTONES } from '@/lib/cure/adhesive-sheet';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { adhesiveSheetSchema } from './adhesive-sheet';
import { sheetRateLaw } from './sheet-rate-law';
import { type SheetText, sheetTextSchema } from './sheet-text';

/** Figures that may have a source of their own, other than the sheet's. */
const FIGURES_WITH_SOURCE: readonly FigureName[] = [
  'rateLaw',
  'minCureC',
  'potLife',
  'massExponent',
  'density',
  'ratio',
  ...MILESTONES,
];

export interface SheetFormInput {
  readonly sheet: AdhesiveSheet;
  readonly sheetRevision: string;
  readonly sheetOn: string | null;
  readonly seenVersion: number;
}

/** A data sheet as a maker typed it, checked as the sheet it becomes. Every issue names the field of the form. */
export function sheetFormSchema(units: UnitChoice) {
  return sheetTextSchema(units).transform((text, context): SheetFormInput => {
    const rateLaw = sheetRateLaw(text, units);
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
