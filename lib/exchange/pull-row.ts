import type { PullMode } from '@/lib/pulltest/pull-mode';
import type { Instant } from '@/lib/units/instant';

/** One pull as a file gives it. What the file does not say is null. */
export interface PullRow {
  /** Line in the file, from 1. */
  readonly line: number;
  readonly specimen: string | null;
  readonly mix: string | null;
  readonly condition: string | null;
  readonly embedmentMm: number | null;
  /** Null: a specimen without a load. */
  readonly loadN: number | null;
  readonly isLowerBound: boolean;
  readonly mode: PullMode | null;
  readonly angleDeg: number | null;
  readonly pulledAt: Instant | null;
  readonly note: string;
}

export const PULL_ROW_REFUSALS = [
  'no-specimen',
  'bad-load',
  'bad-depth',
  'bad-mode',
  'bad-angle',
  'bad-time',
  'too-many-fields',
  'open-quote',
] as const;
export type PullRowRefusal = (typeof PULL_ROW_REFUSALS)[number];

/** What a refused row lacks and what to do. */
export function pullRowRefusalText(refusal: PullRowRefusal): string {
  switch (refusal) {
    case 'no-specimen':
      return 'Neither a specimen nor a mix and a depth: it is not known what was pulled.';
    case 'bad-load':
      return 'The load is no number with a unit of force. Write it as 62, 62.5 lbf or > 150.';
    case 'bad-depth':
      return 'The depth is no length. Write it as 1/2", .5 in or 12.7 mm.';
    case 'bad-mode':
      return 'How it ended is not one of the ways of the card.';
    case 'bad-angle':
      return 'The angle is not a number from 0 to 90.';
    case 'bad-time':
      return 'The time is no date with a time of day.';
    case 'too-many-fields':
      return 'The row has more fields than the headings. A decimal comma may have cut a number in two: put it in quotes.';
    case 'open-quote':
      return 'A quote is opened and not closed.';
  }
}
