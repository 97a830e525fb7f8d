import Link from 'next/link';
import type { ReactNode } from 'react';

export interface PageProps {
  readonly title: ReactNode;
  /** A sentence or two under the title. */
  readonly lead?: ReactNode;
  /** Buttons beside the title. */
  readonly actions?: ReactNode;
  /** The way up: where this page was reached from. */
  readonly up?: { readonly href: string; readonly label: string };
  readonly children: ReactNode;
}

/** Frame of every screen: way up, title, what can be done, and the sections. */
export function Page({ title, lead, actions, up, children }: PageProps) {
  return (
    <div className="mx-auto grid w-full max-w-6xl gap-8 px-4 py-6 sm:px-6 sm:py-8">
      <header className="flex flex-wrap items-end justify-between gap-x-6 gap-y-4">
        <div className="grid max-w-3xl gap-1">
          {up !== undefined && (
            <Link
              href={up.href}
              prefetch={false}
              className="inline-flex min-h-touch items-center gap-1 justify-self-start text-sm font-semibold text-ink-soft underline-offset-4 hover:underline"
            >
              <span aria-hidden="true">‹</span> {up.label}
            </Link>
          )}
          <h1 className="text-3xl font-bold tracking-tight text-balance sm:text-4xl">{title}</h1>
          {lead !== undefined && <p className="text-ink-soft">{lead}</p>}
        </div>
        {actions !== undefined && <div className="flex flex-wrap gap-3">{actions}</div>}
      </header>
      {children}
    </div>
  );
}

export interface SectionProps {
  readonly title: ReactNode;
  readonly id?: string;
  readonly lead?: ReactNode;
  readonly actions?: ReactNode;
  readonly children: ReactNode;
}

/** One subject of a screen under its own heading. */
export function Section({ title, id, lead, actions, children }: SectionProps) {
  return (
    <section id={id} className="grid min-w-0 content-start gap-4">
      <div className="flex flex-wrap items-end justify-between gap-x-6 gap-y-2 border-b-2 border-ink pb-2">
        <div className="grid max-w-3xl gap-0.5">
          <h2 className="text-xl font-bold sm:text-2xl">{title}</h2>
          {lead !== undefined && <p className="text-sm text-ink-soft">{lead}</p>}
        </div>
        {actions !== undefined && <div className="flex flex-wrap gap-2">{actions}</div>}
      </div>
      {children}
    </section>
  );
}

/** A sheet of paper on the bench: things that belong together. */
export function Card({ children, className = '' }: { readonly children: ReactNode; readonly className?: string }) {
  return <div className={`min-w-0 rounded-sheet border border-line bg-sheet p-4 sm:p-5 ${className}`}>{children}</div>;
}
