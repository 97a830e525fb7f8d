'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';
import type { ScreenHref } from './navigation';
import { AT_THE_THUMB, SCREENS } from './navigation';

const SIGNS: { readonly [H in ScreenHref]: ReactNode } = {
  '/': <path d="M2 9h20M5 9v11M19 9v11M8 5h8v4H8zM5 15h14" />,
  '/batches': (
    <path d="M3 7c3-3 9-3 12 0-3 3-9 3-12 0ZM7 13c3-3 9-3 12 0-3 3-9 3-12 0ZM3 19c3-3 9-3 12 0-3 3-9 3-12 0Z" />
  ),
  '/plan': <path d="M2 5v16M22 5v16M5 8h7M8 13h9M13 18h6M2 3h20" />,
  '/models': <path d="M2 13c4-6 13-7 20-1-7 6-16 7-20 1ZM9 16.5V20M17 15.4V19M2 13H0" />,
  '/pull-tests': <path d="M12 21v-8M8.5 16.5 12 13l3.5 3.5M12 3a3 3 0 0 1 0 6v4M12 3a3 3 0 0 0 0 6M4 21h16" />,
  '/rules': <path d="M2 8h20v8H2zM6 8v4M10 8v3M14 8v4M18 8v3" />,
  '/stock': <path d="M7 3h6v4l3 3v11H4V10l3-3zM4 14h12M19 12v9M22 12v9" />,
  '/shop': <path d="M3 11 12 3l9 8M5 9.5V21h14V9.5M10 21v-6h4v6" />,
};

const LOOK =
  'flex min-h-14 flex-col items-center justify-center gap-0.5 border-y-4 border-transparent text-xs font-semibold text-ink-soft hover:text-ink aria-[current=page]:border-t-accent aria-[current=page]:text-ink md:min-h-16 md:px-2 md:text-base lg:px-4 md:aria-[current=page]:border-t-transparent md:aria-[current=page]:border-b-accent';

function Sign({ children }: { readonly children: ReactNode }) {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true" className="size-6 fill-none stroke-current stroke-[1.8] md:hidden">
      {children}
    </svg>
  );
}

/** Where to go. A bar at the thumb on a phone, a row in the header elsewhere. */
export function NavigationBar() {
  const path = usePathname();
  const isHere = (href: ScreenHref) => (href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`));
  const further = SCREENS.filter(({ href }) => !AT_THE_THUMB.has(href));
  const link = ({ href, label }: (typeof SCREENS)[number]) => (
    <Link href={href} prefetch={false} aria-current={isHere(href) ? 'page' : undefined} className={LOOK}>
      <Sign>{SIGNS[href]}</Sign>
      {label}
    </Link>
  );
  return (
    <nav
      aria-label="Screens"
      className="max-md:fixed max-md:inset-x-0 max-md:bottom-0 max-md:z-20 max-md:border-t-2 max-md:border-ink max-md:bg-sheet max-md:pb-[env(safe-area-inset-bottom)] print:hidden"
    >
      <ul className="grid auto-cols-fr grid-flow-col md:flex md:gap-1">
        {SCREENS.map((screen) => (
          <li key={screen.href} className={AT_THE_THUMB.has(screen.href) ? undefined : 'max-md:hidden'}>
            {link(screen)}
          </li>
        ))}
        <li className="md:hidden">
          {/* A new address closes it. */}
          <details key={path}>
            <summary
              aria-current={further.some(({ href }) => isHere(href)) ? 'page' : undefined}
              className={`${LOOK} cursor-pointer list-none [&::-webkit-details-marker]:hidden`}
            >
              <Sign>
                <path d="M4 6h16M4 12h16M4 18h16" />
              </Sign>
              More
            </summary>
            <ul className="absolute inset-x-0 bottom-full grid grid-cols-4 border-t-2 border-ink bg-sheet shadow-[0_-8px_24px_rgb(0_0_0/0.18)]">
              {further.map((screen) => (
                <li key={screen.href}>{link(screen)}</li>
              ))}
            </ul>
          </details>
        </li>
      </ul>
    </nav>
  );
}
