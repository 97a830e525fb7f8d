/** The four weights of a button: the one thing to do, another thing, a thing in passing, a thing that takes away. */
export type ButtonWeight = 'primary' | 'plain' | 'quiet' | 'remove';

const BASE =
  'inline-flex min-h-touch min-w-touch items-center justify-center gap-2 rounded-sheet px-4 py-2 text-center font-semibold leading-tight no-underline disabled:cursor-default aria-disabled:opacity-60 disabled:opacity-60';

const WEIGHTS: { readonly [W in ButtonWeight]: string } = {
  primary: 'bg-ink text-ink-inverse hover:bg-ink-soft border-2 border-ink hover:border-ink-soft',
  plain: 'bg-sheet text-ink border-2 border-line-strong hover:border-ink',
  quiet: 'text-ink underline decoration-line-strong underline-offset-4 hover:decoration-ink px-2',
  remove: 'bg-sheet text-accent border-2 border-accent hover:bg-accent-soft',
};

/** Classes of a button or of a link that looks like one. */
export function buttonClass(weight: ButtonWeight = 'plain'): string {
  return `${BASE} ${WEIGHTS[weight]}`;
}
