/** The look of every box something is typed into. */
export const inputClass =
  'w-full min-h-touch rounded-sheet border-2 border-line-strong bg-sheet px-3 py-2 text-ink placeholder:text-ink-soft hover:border-ink aria-invalid:border-accent';
