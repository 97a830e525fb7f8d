import { plainHeading } from './heading-words';

/** What a column of a file of pull readings holds. */
export const PULL_COLUMNS = [
  'specimen',
  'mix',
  'condition',
  'depth',
  'load',
  'at-least',
  'mode',
  'angle',
  'stamp',
  'date',
  'clock',
  'note',
] as const;
export type PullColumn = (typeof PULL_COLUMNS)[number];

/** Words of headings, English and German; chosen, and our own written file among them. */
const WORDS: readonly (readonly [PullColumn, RegExp])[] = [
  ['at-least', /at least|lower bound|censored|topped|stopped|mindestens|^>=?$|^≥$/],
  ['stamp', /time ?stamp|date ?[/,&+-]? ?(and )?time|pulled ?(at|on)|zeitpunkt|datum ?[/,&+-]? ?(zeit|uhrzeit)/],
  ['mode', /mode|failure|failed|broke|how it ended|versagen|bruchart/],
  ['load', /load|force|peak|pull ?out|kraft|last|\blbf?s?\b|\bkgf?\b|^n$/],
  ['depth', /depth|embed|tiefe|einbind/],
  ['angle', /angle|winkel/],
  ['specimen', /specimen|coupon|sample|probe|\bpiece\b|^(id|no|nr|#)\.?$/],
  ['mix', /\bmix|batch of glue|cup|mischung|ansatz/],
  ['condition', /condition|wood|glue|adhesive|wire|holz|kleber|draht/],
  ['date', /^(date|day|datum|tag)\b/],
  ['clock', /^(time|hour|zeit|uhrzeit)\b/],
  ['note', /note|remark|comment|bemerk|notiz/],
];

/** What a heading says, or null. */
export function pullColumn(heading: string): PullColumn | null {
  const plain = plainHeading(heading);
  const bare = plain.replace(/[[(].*?[\])]/g, '').trim();
  for (const [column, words] of WORDS) if (words.test(bare)) return column;
  for (const [column, words] of WORDS) if (plain !== bare && words.test(plain)) return column;
  return null;
}

/** The unit a heading names: what stands in brackets, or the last word after a comma; null where there is none. */
export function headingUnitText(heading: string): string | null {
  const inBrackets = /[[(]\s*([^\])]+?)\s*[\])]/.exec(heading)?.[1];
  if (inBrackets !== undefined) return inBrackets;
  return /,\s*([a-zA-Z"]+)\s*$/.exec(heading)?.[1] ?? null;
}
