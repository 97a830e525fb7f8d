import { PULL_FAILURES } from '@/lib/strength/pull-reading';

/** How a pull ended: the ways of `lib/strength`, a scale that cannot be believed, and a pull stopped with nothing broken. */
export const PULL_MODES = [...PULL_FAILURES, 'scale-failed', 'held'] as const;
export type PullMode = (typeof PULL_MODES)[number];

/**
 * What a series is asked. `anchorage`: what wood and glue hold together, so that a split or a tear-out is the answer.
 * `bond`: what the glue line holds, so that they only say "at least".
 */
export const PULL_QUESTIONS = ['anchorage', 'bond'] as const;
export type PullQuestion = (typeof PULL_QUESTIONS)[number];

/** What a load says: the strength itself, that the strength is at least this, or nothing. */
export type LoadMeaning = 'exact' | 'at-least' | 'nothing';

/**
 * What the load of a pull that ended so says. Whatever else gave way first, the joint holds at least as much.
 * Source: right-censored readings, e.g. NIST/SEMATECH e-Handbook 8.1.3.1; which mode counts as which is chosen.
 */
export function modeMeaning(mode: PullMode, question: PullQuestion): LoadMeaning {
  switch (mode) {
    case 'slid-out':
    case 'wood-sleeve':
      return 'exact';
    case 'split':
    case 'tore-out':
      return question === 'anchorage' ? 'exact' : 'at-least';
    case 'wire-broke':
    case 'eye-opened':
    case 'jig-failed':
    case 'held':
      return 'at-least';
    case 'scale-failed':
      return 'nothing';
  }
}

/** Whether the specimen can be pulled again as if nothing had been: nothing in it gave way. */
export function leavesWhole(mode: PullMode): boolean {
  return mode === 'held' || mode === 'jig-failed' || mode === 'scale-failed';
}

/** A mode as it stands on the test card. */
export function modeText(mode: PullMode): string {
  switch (mode) {
    case 'slid-out':
      return 'Slid out clean';
    case 'wood-sleeve':
      return 'Wood came with it';
    case 'split':
      return 'Surface split';
    case 'tore-out':
      return 'Tore out sideways';
    case 'wire-broke':
      return 'Wire broke';
    case 'eye-opened':
      return 'Eye opened';
    case 'jig-failed':
      return 'Jig slipped or gave way';
    case 'scale-failed':
      return 'Scale failed';
    case 'held':
      return 'Stopped, nothing broke';
  }
}
