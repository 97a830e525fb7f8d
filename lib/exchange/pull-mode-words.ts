import { modeText, PULL_MODES, type PullMode } from '@/lib/pulltest/pull-mode';
import { plainHeading } from './heading-words';

/** Words makers write for how a pull ended, beside the words of the card. Chosen. */
const WORDS: readonly (readonly [PullMode, RegExp])[] = [
  ['scale-failed', /scale (failed|error|died|broke)/],
  ['jig-failed', /\b(jig|fixture|clamp|grip|shackle)\b/],
  ['eye-opened', /\beye\b|\bopened\b|straightened|loop opened/],
  ['wire-broke', /\bwire\b|\bsnapped\b|\bsheared\b/],
  ['tore-out', /tore|torn|sideways/],
  ['split', /split|crack/],
  ['wood-sleeve', /wood|sleeve|fibre|fiber|plug/],
  ['slid-out', /slid|slip|clean|bare|glue let go|pulled out/],
  ['held', /held|stopped|nothing|no failure|survived|ok\b/],
];

/** The mode a cell names, by its code, its words on the card or a maker's words; null for anything else. */
export function readPullMode(text: string): PullMode | null {
  const plain = plainHeading(text);
  if (plain === '') return null;
  const exact = PULL_MODES.find((mode) => plain === mode || plain === plainHeading(modeText(mode)));
  return exact ?? WORDS.find(([, words]) => words.test(plain))?.[0] ?? null;
}
