import type { ReactNode } from 'react';

export interface EmptyStateProps {
  readonly title: string;
  /** What this place is for, and what putting something in does. */
  readonly children: ReactNode;
  readonly action?: ReactNode;
}

/** A place with nothing in it yet: says what it is for and what to do first. */
export function EmptyState({ title, children, action }: EmptyStateProps) {
  return (
    <div className="grid justify-items-start gap-3 rounded-sheet border-2 border-dashed border-line-strong p-5 sm:p-8">
      <p className="text-lg font-bold">{title}</p>
      <div className="grid max-w-2xl gap-2 text-ink-soft">{children}</div>
      {action}
    </div>
  );
}
