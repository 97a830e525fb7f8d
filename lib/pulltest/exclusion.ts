import type { Instant } from '@/lib/units/instant';

/**
 * Why a reading may be left out: only what can be checked without looking at the load. "Looks low" is not among them.
 * Source: the practice of ASTM E178 (from memory): an outlier is investigated, and goes only for a physical cause.
 */
export const EXCLUSION_REASONS = [
  'wrong-depth',
  'not-glued-full-length',
  'fixture-slipped',
  'scale-overloaded',
  'mix-off-ratio',
  'pulled-before-cure',
  'specimen-dropped',
] as const;
export type ExclusionReason = (typeof EXCLUSION_REASONS)[number];

/** Who left a reading out, when and why. The reading itself stays for ever. */
export interface Exclusion {
  readonly reason: ExclusionReason;
  readonly note: string;
  readonly personId: string | null;
  readonly at: Instant;
}

/** A reason as it is chosen and shown. */
export function exclusionText(reason: ExclusionReason): string {
  switch (reason) {
    case 'wrong-depth':
      return 'Drilled to a wrong depth';
    case 'not-glued-full-length':
      return 'Not glued over its full length';
    case 'fixture-slipped':
      return 'The fixture slipped';
    case 'scale-overloaded':
      return 'The scale was overloaded';
    case 'mix-off-ratio':
      return 'The mix was off its ratio';
    case 'pulled-before-cure':
      return 'Pulled before it had cured';
    case 'specimen-dropped':
      return 'The specimen was dropped or damaged before';
  }
}

/** Whether a cause could come again in the shop's own work: then it is a finding, not only a reason to leave out. */
export function canRecur(reason: ExclusionReason): boolean {
  return reason === 'not-glued-full-length' || reason === 'mix-off-ratio' || reason === 'wrong-depth';
}
