import { exclusionText } from '@/lib/pulltest/exclusion';
import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import { markText, outReasonText } from '@/lib/pulltest/pull-words';
import { forceText } from '@/lib/units/format-quantity';
import type { ForceUnit } from '@/lib/units/unit-choice';

/** The load as it was read, `421 N`, `at least 421 N`; a dash where none was. */
export function loadText({ record, use }: JudgedPull, unit: ForceUnit): string {
  if (record.loadN === null) return '–';
  const load = forceText(record.loadN, unit);
  return use.kind === 'at-least' || record.isLowerBound ? `at least ${load}` : load;
}

/** What a pull counts as, in a few words. */
export function countsAsText({ record, use }: JudgedPull): string {
  switch (use.kind) {
    case 'exact':
      return 'counts';
    case 'at-least':
      return 'counts as "at least"';
    case 'fell-out':
      return 'came out by hand';
    case 'out':
      if (record.exclusion !== null) return `left out: ${exclusionText(record.exclusion.reason).toLowerCase()}`;
      return `does not count: ${outReasonText(use.reason)}`;
  }
}

/** What to keep in mind about a pull; empty for nothing. */
export function marksText({ marks }: JudgedPull): string {
  return marks.map(markText).join('; ');
}
