import type { Metadata, Viewport } from 'next';
import Link from 'next/link';
import { connection } from 'next/server';
import type { ReactNode } from 'react';
import './globals.css';
import { OutboxBar } from './_bench/outbox-bar';
import { chosenTheme } from './_server/device';
import { currentPeople, currentPerson } from './_server/shop';
import { NavigationBar } from './_ui/navigation-bar';
import { PersonChoice } from './_ui/person-choice';
import { ThemeChoice } from './_ui/theme-choice';

export const metadata: Metadata = {
  title: { default: 'Lurewright', template: '%s · Lurewright' },
  description: 'Batches, mixes, cure clocks and pull tests of a small wooden-lure workshop.',
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f5f1e8' },
    { media: '(prefers-color-scheme: dark)', color: '#071824' },
  ],
};

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  // Every page is made for its request: a prerendered one would carry no nonce, and the policy would stop its scripts.
  await connection();
  const [theme, people, person] = await Promise.all([chosenTheme(), currentPeople(), currentPerson()]);
  return (
    <html lang="en" data-theme={theme ?? undefined}>
      <body className="flex min-h-dvh flex-col max-md:pb-20">
        <a
          href="#content"
          className="absolute left-2 z-30 -translate-y-24 rounded-sheet bg-ink px-4 py-3 font-semibold text-ink-inverse focus:translate-y-2"
        >
          Skip to the content
        </a>
        <header className="border-b border-line bg-sheet print:hidden">
          <div className="mx-auto flex max-w-6xl items-center justify-between gap-x-6 px-4 max-md:min-h-15 sm:px-6">
            <Link href="/" prefetch={false} className="flex min-h-touch items-center text-lg font-bold tracking-tight">
              Lurewright
            </Link>
            <NavigationBar />
            <PersonChoice people={people} personId={person?.id ?? null} />
          </div>
        </header>
        <main id="content" tabIndex={-1} className="flex-1 outline-none">
          {children}
        </main>
        <footer className="border-t border-line text-sm print:hidden">
          <div className="mx-auto flex max-w-6xl flex-wrap items-center justify-between gap-x-6 gap-y-1 px-4 py-3 sm:px-6">
            <ThemeChoice theme={theme} />
            <p className="text-ink-soft">Times and strengths are estimates, never ratings.</p>
          </div>
        </footer>
        <OutboxBar />
      </body>
    </html>
  );
}
